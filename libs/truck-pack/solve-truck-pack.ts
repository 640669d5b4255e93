import { seededRandom } from '#kernel';
import { boundOf, floorUse, mostPayloadKg } from './bound/index.js';
import { type Piece, type TruckCase, type TruckPackAnswer, couldRide, headroomOf, overWhenEmpty, tooLarge } from './case/index.js';
import { type Found, type Search, isShorter, searchRound } from './fleet/index.js';
import { freeInTruck, leaveOut, massOf, tryLoad } from './free/index.js';
import { type TruckRows, rowsInTruck } from './rows/index.js';
import { solveRows } from './solve-rows.js';
import { type LoadSpace, truckAnswer } from './space/index.js';

export interface PackLimits {
  readonly seed: number;
  /** Most tries; equal seed and work limit give the equal load. */
  readonly workLimit: number;
  readonly timeLimitSeconds: number;
  /** Milliseconds of any clock that does not go back. */
  readonly now: () => number;
}

interface Best {
  readonly trucks: TruckPackAnswer['trucks'];
  readonly left: readonly Piece[];
}

/**
 * Loads the pieces many times and keeps the best: least mass left over, fewest trucks, least length. Tries take turns: rows, towers set against the front of what stands, and
 * single pieces in falling order of `firstOff` with other orders and styles of placing, which also rest on several pieces. Where no try holds everything, the tries leave
 * pieces out that weigh little for the floor they need.
 */
export function solveTruckPack(problem: TruckCase, limits: PackLimits): TruckPackAnswer {
  const search = searchFor(problem, limits);
  const { pieces, floor, bound, random, isOver } = search;
  const seen = new Map<string, TruckRows>();
  let best: Best = { trucks: [], left: pieces };
  let known: Found | undefined;
  const note = (other: Best | undefined) => {
    if (!other || !isBetter(other, best)) return false;
    best = other;
    return true;
  };
  // Freight for many trucks: half of the time goes to rows alone, which deal it best.
  if (pieces.length > mostSingly && limits.timeLimitSeconds >= 2) {
    const rows = solveRows({ ...problem, pieces }, { ...limits, timeLimitSeconds: limits.timeLimitSeconds / 2 });
    if (rows && rows.leftOver.length === 0) note({ trucks: rows.trucks, left: [] });
  }
  const cannotHoldAll = isTooMuch(problem, pieces, floor.usedMm);
  let [round, general, leftOut, generalLeads] = [0, 0, 0, false];
  for (let attempt = 0; attempt < limits.workLimit && !isOptimal(best, bound); attempt++) {
    if (attempt > 0 && isOver()) break;
    seen.clear();
    // Single pieces are slow to place: they take a turn early, then seldom unless they did best.
    if (pieces.length <= mostSingly && attempt % (generalLeads ? 2 : 12) === 1) {
      const { spaces, left } = tryLoad(
        problem,
        pieces,
        general++,
        random,
        { left: best.left.length, trucks: best.trucks.length },
        bound.trucks,
        isOver,
      );
      generalLeads = note({ trucks: trucksOf(spaces), left }) || generalLeads;
    } else if (!known && (attempt > 2 || cannotHoldAll)) {
      if (note(leaveOut(search, round++, leftOut++ > 0, seen))) generalLeads = false;
    } else {
      const found = searchRound(search, round++, seen, known);
      if (!found) continue;
      const isBest = note({ trucks: found.answer.trucks, left: [] });
      if (isBest) generalLeads = false;
      if (isBest || !known || isShorter(found.answer, known.answer)) known = found;
    }
  }
  return answerFor(problem, best, bound);
}

function searchFor(problem: TruckCase, limits: PackLimits): Search {
  const deadline = limits.now() + limits.timeLimitSeconds * 1000;
  const isOver = () => limits.now() >= deadline;
  const pieces = problem.pieces.filter((piece) => couldRide(piece, problem.trucks));
  const floor = floorUse(problem, pieces);
  const bound = boundOf(problem, pieces, floor);
  const random = seededRandom(limits.seed);
  return {
    problem,
    pieces,
    tooLarge: [],
    floor,
    bound,
    keptOf: new Map(problem.trucks.map((truck) => [truck, []])),
    loaded: new Set(),
    waived: new Set(),
    random,
    isOver,
    pack: (task, round) => (round % 4 === 0 ? better(rowsInTruck(task), freeInTruck(task)) : freeInTruck(task)),
  };
}

/** More freight than this is not tried piece by piece. */
const mostSingly = 300;

/** Mass, volume or floor of the pieces beyond what all trucks together have. */
function isTooMuch({ trucks }: TruckCase, pieces: readonly Piece[], floorMm: number): boolean {
  const sum = <T>(values: readonly T[], of: (value: T) => number) => values.reduce((total, each) => total + of(each), 0);
  const volume = sum(pieces, (each) => each.lengthMm * each.widthMm * each.heightMm);
  return (
    massOf(pieces) > sum(trucks, mostPayloadKg) + 1e-6 ||
    volume > sum(trucks, (each) => each.innerLengthMm * each.innerWidthMm * headroomOf(each)) ||
    floorMm > sum(trucks, (each) => each.innerLengthMm) + 1e-6
  );
}

function better(a: TruckRows, b: TruckRows): TruckRows {
  if (a.over.length !== b.over.length) return a.over.length < b.over.length ? a : b;
  if (a.outsideKg !== b.outsideKg) return a.outsideKg < b.outsideKg ? a : b;
  return a.endMm <= b.endMm ? a : b;
}

const trucksOf = (spaces: readonly LoadSpace[]) => spaces.filter((space) => space.placed.length > 0).map((space) => truckAnswer(space));
const lengthOf = (best: Best): number => best.trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);

function isBetter(a: Best, b: Best): boolean {
  const [leftA, leftB] = [massOf(a.left), massOf(b.left)];
  if (Math.abs(leftA - leftB) > 1e-6) return leftA < leftB;
  if (a.left.length !== b.left.length) return a.left.length < b.left.length;
  if (a.trucks.length !== b.trucks.length) return a.trucks.length < b.trucks.length;
  return lengthOf(a) < lengthOf(b);
}

const isOptimal = (best: Best, bound: { trucks: number; usedLengthMm: number }): boolean =>
  best.left.length === 0 && best.trucks.length <= bound.trucks && lengthOf(best) <= bound.usedLengthMm;

function answerFor(problem: TruckCase, best: Best, bound: TruckPackAnswer['bound']): TruckPackAnswer {
  const left = new Set(best.left.map((each) => each.id));
  const isEmptyOver = problem.trucks.every((truck) => overWhenEmpty(truck).length > 0);
  return {
    status: best.left.length === 0 && isOptimal(best, bound) ? 'optimal' : 'feasible',
    trucks: best.trucks,
    leftOver: problem.pieces.flatMap((piece) => {
      if (!couldRide(piece, problem.trucks)) return [{ id: piece.id, reason: tooLarge(piece, problem.trucks) }];
      return left.has(piece.id)
        ? [
            {
              id: piece.id,
              reason: isEmptyOver
                ? 'every truck is over an axle limit when it is empty'
                : 'no place was found for it beside the others inside the limits',
            },
          ]
        : [];
    }),
    bound: best.left.length === 0 ? bound : { trucks: 0, usedLengthMm: 0, reason: 'not all pieces ride: no bound is claimed' },
  };
}
