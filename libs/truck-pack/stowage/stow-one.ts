import { boundOf } from '../bound/index.js';
import type { Piece, Truck, TruckAnswer } from '../case/index.js';
import { makeContainerCase, solveContainer } from '../container/index.js';
import { type Placed, asPlaced, loadingOrderOf, truckAnswer } from '../space/index.js';
import { piecesAt, stowageCase } from './stowage-case.js';

export interface Stowed {
  readonly load: TruckAnswer;
  readonly pieces: ReadonlySet<Piece>;
  /** Greedy completions that were made. */
  readonly work: number;
}

/** Halvings of the length in which everything still goes. */
const shortenings = 6;

/**
 * As much as one container or pallet holds. Where everything goes in, the load is kept short: it stands together from the nose, in the least length in which
 * the search still finds room, and is moved back only as far as its centre asks for.
 */
export function stowOne(truck: Truck, pieces: readonly Piece[], work: number): Stowed | undefined {
  const whole = stowWithin(truck, pieces, truck.innerLengthMm, work);
  if (!whole || whole.pieces.size < pieces.length || truck.blocked.length > 0) return whole;
  // No load is shorter than the bound: that is tried first.
  let [least, most] = [boundOf({ trucks: [truck], minSupport: 1 }, pieces).usedLengthMm, whole.load.usedLengthMm];
  let best = whole;
  let spent = whole.work;
  for (let round = 0; round < shortenings && least < most; round++) {
    const length = round === 0 ? least : Math.floor((least + most) / 2);
    const found = stowWithin(truck, pieces, length, work);
    spent += found?.work ?? 0;
    if (found?.pieces.size === pieces.length) [best, most] = [found, Math.min(length, found.load.usedLengthMm)];
    else least = length + 1;
  }
  return { ...best, work: spent };
}

function stowWithin(truck: Truck, pieces: readonly Piece[], lengthMm: number, work: number): Stowed | undefined {
  const given = stowageCase(truck, pieces, lengthMm);
  const problem = makeContainerCase(given.input);
  if (!problem.ok) return undefined;
  // No clock: equal freight is stowed equally.
  const answer = solveContainer(problem.value, { workLimit: work, timeLimitSeconds: 1, now: () => 0 });
  const placed = piecesAt(given, answer.placements).map((each) => asPlaced(each.piece, each));
  const centred = moveToMiddle(truck, placed);
  if (!centred) return undefined;
  const order = orderOf(centred);
  return { load: carried(truck, order), pieces: new Set(order.map((each) => each.piece)), work: answer.completions };
}

function carried(truck: Truck, placed: readonly Placed[]): TruckAnswer {
  const sum = (of: (each: Placed) => number) => placed.reduce((total, each) => total + each.piece.massKg * of(each), 0);
  return truckAnswer({
    truck,
    placed,
    massKg: sum(() => 1),
    momentKgMm: sum((each) => each.x + each.along / 2),
    sideMomentKgMm: sum((each) => each.y + each.across / 2 - truck.innerWidthMm / 2),
  });
}

/** Back from the nose as far as the centre asks for; undefined where that is further than there is room. */
function moveToMiddle(truck: Truck, placed: readonly Placed[]): readonly Placed[] | undefined {
  const massKg = placed.reduce((sum, each) => sum + each.piece.massKg, 0);
  if (truck.maxEndOffsetMm === undefined || massKg === 0) return placed;
  const centre = placed.reduce((sum, each) => sum + each.piece.massKg * (each.x + each.along / 2), 0) / massKg;
  const back = Math.ceil(truck.innerLengthMm / 2 - truck.maxEndOffsetMm - centre);
  if (back <= 0) return placed;
  const end = Math.max(...placed.map((each) => each.x + each.along));
  return end + back > truck.innerLengthMm ? undefined : placed.map((each) => ({ ...each, x: each.x + back }));
}

/** What can go in one after another; where pieces would have to pass one another, the highest stays out. */
function orderOf(placed: readonly Placed[]): readonly Placed[] {
  const left = [...placed];
  for (;;) {
    const order = loadingOrderOf(left, new Set());
    if (order) return order;
    const highest = left.reduce((best, each) => (each.z > best.z ? each : best));
    left.splice(left.indexOf(highest), 1);
  }
}
