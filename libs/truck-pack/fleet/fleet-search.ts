import type { FloorUse, PackBound } from '../bound/index.js';
import {
  type Piece,
  type StoppedBy,
  type Truck,
  type TruckCaseData,
  type TruckPackAnswer,
  type Work,
  cannotRide,
  sharesInTowers,
  waysIn,
} from '../case/index.js';
import type { LengthCauses, RowTask, TruckRows } from '../rows/index.js';
import { type Placed, truckAnswer } from '../space/index.js';
import { fillFleet } from './fill-fleet.js';

/** A load in rows, and where its length goes beyond the bound. */
export type RowsAnswer = TruckPackAnswer & {
  /** Of all trucks; `stacksMm`: floor of the towers as built beyond the least that any stacking could need. */
  readonly causes?: LengthCauses & { readonly stacksMm: number };
};

export interface Search {
  readonly problem: TruckCaseData;
  readonly pieces: readonly Piece[];
  readonly tooLarge: readonly Piece[];
  readonly floor: FloorUse;
  readonly bound: TruckPackAnswer['bound'];
  readonly keptOf: ReadonlyMap<Truck, readonly Placed[]>;
  readonly loaded: ReadonlySet<string>;
  readonly waived: ReadonlySet<string>;
  readonly random: () => number;
  readonly work: Work;
  /** How one truck is packed, by the round. */
  readonly pack: (task: RowTask, round: number) => TruckRows;
}

/** A load of all pieces, and how each truck was packed. */
export interface Found {
  readonly answer: RowsAnswer;
  readonly filled: ReadonlyMap<Truck, TruckRows>;
}

/**
 * A round of search: the fewest trucks that hold all pieces, each packed with a beam that grows with the round. Later rounds mostly change a known load a little. `seen` remembers
 * trucks packed before. `fewerThan`: a load of that many trucks is at hand. Undefined where none was found, or the work was used up before.
 */
export function searchRound(
  search: Search,
  round: number,
  seen: Map<string, TruckRows>,
  known?: Found,
  fewerThan?: number,
): Found | undefined {
  if (known && known.answer.trucks.length > 1 && round > 1 && round % 6 !== 0) {
    const trucks = [...known.filled].filter(([, rows]) => rows.space && rows.space.placed.length > 0).map(([truck]) => truck);
    const filled = fill(search, trucks, round, seen, false, known.filled);
    return filled && { answer: answerOf(search, filled), filled };
  }
  const most = known?.answer.trucks.length ?? Math.min(search.problem.trucks.length, fewerThan ?? Infinity);
  for (const trucks of fleets(search, most, known !== undefined)) {
    if (search.work.isOver) return undefined;
    const found = (trucks.length > 1 ? [false, true] : [false]).flatMap((byStops): Found[] => {
      const filled = fill(search, trucks, round, seen, byStops);
      return filled ? [{ answer: answerOf(search, filled), filled }] : [];
    });
    if (found.length > 0) return found.reduce((a, b) => (isShorter(b.answer, a.answer) ? b : a));
  }
  return undefined;
}

/** Beams of the first rounds; later rounds take chances instead, with one of them. */
const beams = [6, 24, 64, 160];
const beamOf = (round: number): number => beams[round] ?? beams[1 + (round % 3)]!;

/** What setting out to pack a truck costs at the least: small loads are packed many times. */
const stepsToBegin = 300;

/** Lanes tried for a row. */
const nodesOfRow = 250;

/** Sets of trucks to try, fewest first: those with something kept, then the largest. */
function* fleets({ problem, bound, keptOf }: Search, most: number, isKnown: boolean): Generator<readonly Truck[]> {
  const holds = (truck: Truck) => Number(keptOf.get(truck)!.length > 0);
  const size = (truck: Truck) => truck.innerLengthMm * truck.innerWidthMm;
  const sorted = [...problem.trucks].sort((a, b) => holds(b) - holds(a) || size(b) - size(a));
  const least = Math.max(1, bound.trucks, sorted.filter((each) => holds(each) > 0).length);
  // With many trucks a count is tried that usually does; fewer only once a load is known.
  const first = isKnown && most > 6 ? most - 1 : most > 6 ? Math.ceil(1.2 * least) : least;
  for (let count = Math.min(Math.max(least, first), most); count <= most; count++) yield sorted.slice(0, count);
}

function fill(
  search: Search,
  trucks: readonly Truck[],
  round: number,
  seen: Map<string, TruckRows>,
  byStops: boolean,
  from?: ReadonlyMap<Truck, TruckRows>,
): ReadonlyMap<Truck, TruckRows> | undefined {
  const { problem, pieces, floor, keptOf, loaded, waived, random, work } = search;
  const floorOf = estimate(search, pieces);
  const [beam, shake] = [Math.max(1, Math.round(beamOf(round) * Math.min(1, 400 / pieces.length))), round >= beams.length];
  return fillFleet({
    trucks,
    pieces,
    floorOf,
    takenMm: (truck) => keptOf.get(truck)!.reduce((sum, { piece }) => sum + floorOf(piece), 0),
    takenKg: (truck) => keptOf.get(truck)!.reduce((sum, { piece }) => sum + piece.massKg, 0),
    random,
    shake: round > 0,
    byStops,
    isOver: () => work.isOver,
    ...(from ? { from } : {}),
    pack: (truck, own) => {
      const ids = own.map((each) => each.id).sort();
      const key = `${round} ${truck.id} ${ids.join(' ')}`;
      let rows = seen.get(key);
      if (!rows) {
        const [kept, { prices }] = [keptOf.get(truck)!, floor];
        work.add(stepsToBegin);
        const task = { problem, truck, pieces: own, kept, loaded, waived, prices, beam, nodes: nodesOfRow, work, random, shake };
        rows = search.pack(task, round);
        seen.set(key, rows);
      }
      return rows;
    },
  });
}

/** Floor that each piece needs; what may ride on top counts a part, so that all of them sum to what the bound says. */
function estimate({ problem, floor }: Search, pieces: readonly Piece[]): (piece: Piece) => number {
  const [lengthMm, widthMm] = [
    Math.max(...problem.trucks.map((each) => each.innerLengthMm)),
    Math.max(...problem.trucks.map((each) => each.innerWidthMm)),
  ];
  const alone = new Map(pieces.map((each) => [each, floor.prices.lengthOf(waysIn(each, lengthMm, widthMm))]));
  const sum = (of: readonly Piece[]) => of.reduce((total, each) => total + alone.get(each)!, 0);
  const fixed = sum(pieces.filter((each) => each.floorOnly));
  const loose = sum(pieces.filter((each) => !each.floorOnly));
  const part = loose === 0 ? 1 : Math.min(1, Math.max(0.1, (floor.usedMm - fixed) / loose));
  const shareOf = sharesInTowers(problem);
  return (piece) => (alone.get(piece) ?? 0) * (piece.floorOnly ? 1 : part) || shareOf(piece);
}

export const noBound: PackBound = { trucks: 0, usedLengthMm: 0, why: { code: 'not-all-ride' } };

export function answerOf(search: Search, filled: ReadonlyMap<Truck, TruckRows>): RowsAnswer {
  const used = [...filled.values()].filter((each) => each.space && each.space.placed.length > 0);
  const trucks = used.map((each) => truckAnswer(each.space!, each.order));
  const leftOver = search.tooLarge.map((each) => cannotRide(each, search.problem.trucks)!);
  const bound = leftOver.length === 0 ? search.bound : noBound;
  const isLeast = leftOver.length === 0 && trucks.length <= bound.trucks && usedLength(trucks) <= bound.usedLengthMm;
  const total = (of: (causes: LengthCauses) => number) => used.reduce((sum, each) => sum + (each.causes ? of(each.causes) : 0), 0);
  const causes = {
    inRowsMm: total((each) => each.inRowsMm),
    atStopsMm: total((each) => each.atStopsMm),
    freeMm: total((each) => each.freeMm),
    floorMm: total((each) => each.floorMm),
    stacksMm: total((each) => each.floorMm) - search.floor.usedMm,
  };
  return { status: isLeast ? 'optimal' : 'feasible', trucks, leftOver, ...ended(search.work, isLeast), bound, causes };
}

/** How the search ended, as an answer says it. */
export const ended = (work: Work, isProven: boolean): { stoppedBy: StoppedBy; work: number } => ({
  stoppedBy: work.stoppedBy(isProven),
  work: work.steps,
});

const usedLength = (trucks: TruckPackAnswer['trucks']): number => trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);

export const isShorter = (a: TruckPackAnswer, b: TruckPackAnswer): boolean =>
  a.trucks.length < b.trucks.length || (a.trucks.length === b.trucks.length && usedLength(a.trucks) < usedLength(b.trucks));
