import { boundOf } from '../bound/index.js';
import type { PlacementAnswer, TruckCaseData } from '../case/index.js';
import { type NodeBudget, fitWithin } from './fit-within.js';
import { smallFloor } from './small-floor.js';

export interface SmallAnswer {
  /** The shortest load found, in an order in which it can go in; undefined where nothing shorter than `below` was. */
  readonly placements: readonly PlacementAnswer[] | undefined;
  readonly usedLengthMm: number;
  /** No load of these pieces on the floor is shorter; equal to the length where that is proved to be the least. */
  readonly bound: number;
  readonly nodes: number;
}

/** Part of the nodes for shorter loads; the rest is for the bound where those end without a proof. */
const shareForLoads = 0.7;

/**
 * The shortest load of pieces on the floor of one truck, in any arrangement that keeps the unloading order; mass, axles and stacking are not looked at, so
 * it bounds the loads that keep them. `below`: the length of a load that is known.
 */
export function solveSmall(problem: Pick<TruckCaseData, 'trucks' | 'pieces' | 'minSupport'>, below: number, nodes: number): SmallAnswer {
  const [truck] = problem.trucks;
  if (!truck || problem.trucks.length !== 1 || truck.blocked.length > 0 || problem.pieces.some((each) => !each.floorOnly))
    throw new RangeError('a small load is of one truck without blocked places and of pieces that stand on the floor');
  const floor = smallFloor(truck, problem.pieces);
  const least = boundOf({ trucks: [truck], minSupport: problem.minSupport }, problem.pieces).usedLengthMm;
  const lengths = floor.lengths.filter((each) => each >= least && each < below);
  const forLoads: NodeBudget = { left: Math.round(shareForLoads * nodes) };
  let placements: readonly PlacementAnswer[] | undefined;
  let used = below;
  let isLeast = lengths.length === 0;
  // Down from what is known, length by length, until one is proved to hold nothing.
  while (lengths.length > 0 && !isLeast) {
    const found = fitWithin(floor, lengths.at(-1)!, forLoads);
    if (found === undefined) break;
    if (found === null) isLeast = true;
    else {
      placements = found;
      used = endOf(problem, found);
      while (lengths.length > 0 && lengths.at(-1)! >= used) lengths.pop();
      isLeast = lengths.length === 0;
    }
  }
  const forBound: NodeBudget = { left: nodes - Math.round(shareForLoads * nodes) };
  const bound = isLeast ? used : raisedBound(floor, lengths, Math.min(least, used), used, forBound);
  return { placements, usedLengthMm: used, bound, nodes: nodes - Math.max(0, forLoads.left) - Math.max(0, forBound.left) };
}

/** Up from the bound, halving: what holds nothing within its share of the nodes raises it. */
function raisedBound(
  floor: ReturnType<typeof smallFloor>,
  lengths: readonly number[],
  least: number,
  used: number,
  budget: NodeBudget,
): number {
  let [low, high] = [0, lengths.length];
  while (low < high && budget.left > 0) {
    const middle = Math.floor((low + high) / 2);
    const own: NodeBudget = { left: Math.max(1, Math.floor(budget.left / 3)) };
    const given = own.left;
    const found = fitWithin(floor, lengths[middle]!, own);
    budget.left -= given - Math.max(0, own.left);
    if (found === null) low = middle + 1;
    else high = middle;
  }
  return low === 0 ? least : low < lengths.length ? lengths[low]! : used;
}

function endOf({ pieces }: Pick<TruckCaseData, 'pieces'>, placements: readonly PlacementAnswer[]): number {
  const byId = new Map(pieces.map((each) => [each.id, each]));
  return placements.reduce((most, { id, xMm, turned }) => {
    const piece = byId.get(id)!;
    return Math.max(most, xMm + (turned ? piece.widthMm : piece.lengthMm));
  }, 0);
}
