import { seededRandom } from '#kernel';
import { boundOf, floorUse, mostPayloadKg } from './bound/index.js';
import {
  type Piece,
  type TruckCase,
  type TruckCaseData,
  type TruckPackAnswer,
  Work,
  type WorkLimits,
  cannotRide,
  couldRide,
  headroomOf,
  isLarge,
  leftOver,
  overWhenEmpty,
} from './case/index.js';
import { onDuty } from './check/index.js';
import { type Found, type Search, ended, isShorter, likeBesideLike, noBound, quickLoad, repeatedFrom, searchRound } from './fleet/index.js';
import { floorOfPieces, freeInTruck, leaveOut, massOf, tryLoad } from './free/index.js';
import { type TruckRows, rowsInTruck } from './rows/index.js';
import { searchInRows } from './solve-rows.js';
import { type LoadSpace, truckAnswer } from './space/index.js';

export interface PackLimits extends WorkLimits {
  readonly seed: number;
  /** Most tries; equal seed, rounds and work give the equal load. */
  readonly rounds?: number;
}

interface Best {
  readonly trucks: TruckPackAnswer['trucks'];
  readonly left: readonly Piece[];
}

/**
 * Loads the pieces many times and keeps the best: least mass left over, fewest trucks, least length. First a quick load that any size allows. Then tries take turns: rows, towers
 * set against the front of what stands, and single pieces in falling order of `firstOff` with other orders and styles of placing, which also rest on several pieces. Where no try
 * holds everything, the tries leave pieces out that weigh little for the floor they need.
 */
export function solveTruckPack(problem: TruckCase, limits: PackLimits): TruckPackAnswer {
  const search = searchFor(problem, limits);
  const { pieces, floor, work } = search;
  const cannotHoldAll = isTooMuch(problem, pieces, floor.usedMm);
  const tries = new Tries(search);
  tries.note(quickLoad(search, inOrder(search, cannotHoldAll), floorOfPieces(search)));
  // Freight for many trucks: half of the work goes to rows alone, which deal it best.
  if (isLarge({ pieces }) && !work.isOver)
    work.within(0.5, () => {
      const rows = searchInRows({ ...problem, pieces }, { seed: limits.seed, rounds: 20 }, work, search);
      if (rows && rows.leftOver.length === 0) tries.note({ trucks: rows.trucks, left: [] });
    });
  for (let attempt = 0; attempt < (limits.rounds ?? Infinity) && !isOptimal(tries.best, search) && !work.isOver; attempt++)
    tries.next(attempt, cannotHoldAll);
  return onDuty(problem, answerFor(problem, tries.best, search));
}

/** Tries of several kinds in turns, and the best load of them. */
class Tries {
  best: Best;
  private known: Found | undefined;
  private round = 0;
  private general = 0;
  private leftOut = 0;
  private generalLeads = false;

  constructor(private readonly search: Search) {
    this.best = { trucks: [], left: search.pieces };
  }

  note(other: Best): boolean {
    if (!isBetter(other, this.best)) return false;
    this.best = other;
    return true;
  }

  next(attempt: number, cannotHoldAll: boolean): void {
    const { search } = this;
    const seen = new Map<string, TruckRows>();
    // Single pieces are slow to place: they take a turn early, then seldom unless they did best.
    if (!isLarge(search) && attempt % (this.generalLeads ? 2 : 12) === 1) this.bySinglePieces();
    else if (!this.known && (attempt > 2 || cannotHoldAll)) {
      if (this.note(leaveOut(search, this.round++, this.leftOut++ > 0, seen))) this.generalLeads = false;
    } else {
      const atHand = this.best.left.length === 0 ? this.best.trucks.length : undefined;
      const found = searchRound(search, this.round++, seen, this.known, atHand);
      if (!found) return;
      const isBest = this.note({ trucks: found.answer.trucks, left: [] });
      if (isBest) this.generalLeads = false;
      if (isBest || !this.known || isShorter(found.answer, this.known.answer)) this.known = found;
    }
  }

  private bySinglePieces(): void {
    const { problem, pieces, random, bound, work } = this.search;
    const known = { left: this.best.left.length, trucks: this.best.trucks.length };
    const { spaces, left } = tryLoad(problem, pieces, this.general++, random, known, bound.trucks, work);
    this.generalLeads = this.note({ trucks: trucksOf(spaces), left }) || this.generalLeads;
  }
}

function searchFor(problem: TruckCaseData, limits: PackLimits): Search {
  const work = new Work(limits);
  const pieces = problem.pieces.filter((piece) => couldRide(piece, problem.trucks));
  const floor = floorUse(problem, pieces);
  let bound: Search['bound'] | undefined;
  return {
    problem,
    pieces,
    tooLarge: [],
    floor,
    // Worked out when it is asked for: a large case may have no time for more than a part of its pieces, for which it proves nothing.
    get bound() {
      return (bound ??= boundOf(problem, pieces, floor));
    },
    keptOf: new Map(problem.trucks.map((truck) => [truck, []])),
    loaded: new Set(),
    waived: new Set(),
    random: seededRandom(limits.seed),
    work,
    pack: (task, round) => (round % 4 === 0 ? better(rowsInTruck(task), freeInTruck(task)) : freeInTruck(task)),
  };
}

/** What a quick load takes first: where all may ride what comes off last, so that each truck has few stops; else what weighs most for its floor. */
function inOrder(search: Search, cannotHoldAll: boolean): Piece[] {
  const floorOf = floorOfPieces(search);
  const worth = (piece: Piece) => (cannotHoldAll ? piece.massKg / floorOf(piece) : piece.firstOff);
  if (search.pieces.length > repeatedFrom) return likeBesideLike(search.pieces, worth);
  return [...search.pieces].sort((a, b) => worth(b) - worth(a) || (a.id < b.id ? -1 : 1));
}

/** Mass, volume or floor of the pieces beyond what all trucks together have. */
function isTooMuch({ trucks }: TruckCaseData, pieces: readonly Piece[], floorMm: number): boolean {
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

const isOptimal = (best: Best, search: Pick<Search, 'bound'>): boolean =>
  best.left.length === 0 && best.trucks.length <= search.bound.trucks && lengthOf(best) <= search.bound.usedLengthMm;

function answerFor(problem: TruckCaseData, best: Best, search: Search): TruckPackAnswer {
  const left = new Set(best.left);
  const isEmptyOver = problem.trucks.every((truck) => overWhenEmpty(truck).length > 0);
  const isLeast = isOptimal(best, search);
  return {
    status: isLeast ? 'optimal' : 'feasible',
    trucks: best.trucks,
    leftOver: problem.pieces.flatMap((piece) => {
      const impossible = cannotRide(piece, problem.trucks);
      if (impossible) return [impossible];
      return left.has(piece) ? [leftOver(piece, { code: isEmptyOver ? 'trucks-over-empty' : 'no-place' })] : [];
    }),
    ...ended(search.work, isLeast),
    bound: best.left.length === 0 ? search.bound : noBound,
  };
}
