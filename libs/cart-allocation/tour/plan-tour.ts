import type { IntegerProgramSolver } from '#kernel';
import type { AllocationAnswer, AllocationCase, Preferences } from '../case/index.js';
import { solveAllocation } from '../solve/index.js';
import { tourBound } from './tour-bound.js';
import { type Standing, type TourMoves, type TourShow, caseOfShow, standingAfter } from './tour-case.js';

type Load = AllocationCase['loads'][number];

export interface TourLimits {
  readonly integerProgram: IntegerProgramSolver;
  /** Units of work for a show, each time it is planned (`solveAllocation`). */
  readonly workPerShow: number;
  /** Other tours that are worked out at most. */
  readonly tries: number;
  readonly timeLimitSeconds: number;
  readonly now: () => number;
  /** The plan up to a show that stays as it is: "fixed until show N". */
  readonly fixed?: readonly PlannedShow[];
  /** Ties after the number of moves. */
  readonly prefer?: Preferences;
  /** Told the part of the other tours that have been worked out, 0 to 1. */
  readonly onProgress?: (part: number) => void;
}

/** A load of a later show that stands ready. `load` has a name of its own; its own show calls it `of`. */
export interface AheadLoad {
  readonly load: Load;
  readonly show: string;
  readonly of: string;
}

export interface PlannedShow {
  readonly show: string;
  /** Loads of later shows that stand ready from here on; they count among the loads of its answer. */
  readonly ahead: readonly AheadLoad[];
  readonly answer: AllocationAnswer;
}

export interface TourPlan {
  readonly status: 'optimal' | 'feasible' | 'infeasible';
  readonly shows: readonly PlannedShow[];
  /** Moves, each at the weight of its show. */
  readonly cost: number;
  readonly bound: number;
  /** What it costs where each show knows nothing of the next. */
  readonly showByShow: number;
  /** The same as moves, show by show. */
  readonly movesApart: readonly number[];
  readonly tries: number;
  /** Infeasible: the first show that cannot be served, and what it lacks where its solver says so. */
  readonly cannot?: {
    readonly show: string;
    readonly short: AllocationAnswer['short'];
    readonly cartsShort: AllocationAnswer['cartsShort'];
  };
}

/** From a show on, loads of a later one stand ready, until they are wanted. */
interface Ahead {
  readonly from: number;
  readonly until: number;
  readonly loads: readonly AheadLoad[];
}

/**
 * Prep and all load-ins together. Show by show first; then loads that a later show wants are made ready earlier, where that is cheaper or spares building twice:
 * all that a show lacks at once, then load by load, from the earliest show on. Whatever lowers the sum is kept. Each show is planned by the solver of one
 * floor with what is to stand ready among its loads, so ahead loads are kept and built like its own.
 */
export function planTour(tour: TourMoves, limits: TourLimits): TourPlan {
  const deadline = limits.now() + limits.timeLimitSeconds * 1000;
  const isLate = () => limits.now() >= deadline;
  const solve = (problem: AllocationCase) =>
    solveAllocation(problem, {
      work: limits.workPerShow,
      timeLimitSeconds: Math.max(0.1, (deadline - limits.now()) / 1000),
      now: limits.now,
      integerProgram: limits.integerProgram,
      ...(limits.prefer ? { prefer: limits.prefer } : {}),
    });
  const run = (ahead: readonly Ahead[], known: readonly PlannedShow[]) => carriedOut(tour, ahead, known, solve);
  const fixed = limits.fixed ?? [];
  const apart = run([], fixed);
  if ('show' in apart)
    return { status: 'infeasible', shows: [], cost: 0, bound: 0, showByShow: 0, movesApart: [], tries: 0, cannot: apart };
  let best = apart;
  const showByShow = costOf(tour, best);
  const fromStart = tour.shows.map((show) => boundFromStart(tour, show, solve));
  const bound = Math.max(0, tourBound(tour, fromStart, limits.integerProgram, limits.timeLimitSeconds));
  let kept: readonly Ahead[] = [];
  let tries = 0;
  for (let isBetter = true; isBetter && costOf(tour, best) > bound + 1e-3; ) {
    isBetter = false;
    for (const next of candidates(tour, kept, fixed.length)) {
      if (tries >= limits.tries || isLate() || costOf(tour, best) <= bound + 1e-3) break;
      tries++;
      limits.onProgress?.(tries / limits.tries);
      const found = run([...kept, next], best.slice(0, next.from));
      if ('show' in found || costOf(tour, found) >= costOf(tour, best)) continue;
      [best, kept, isBetter] = [found, [...kept, next], true];
    }
  }
  const cost = costOf(tour, best);
  const movesApart = apart.map(({ answer }) => answer.moves.length);
  const status = cost <= bound + 1e-3 ? 'optimal' : 'feasible';
  return { status, shows: best, cost, bound: Math.min(bound, cost), showByShow, movesApart, tries };
}

type Solve = (problem: AllocationCase) => ReturnType<typeof solveAllocation>;

/** Every show in turn, those that are known taken as they are; or the first that cannot be served. */
function carriedOut(
  tour: TourMoves,
  ahead: readonly Ahead[],
  known: readonly PlannedShow[],
  solve: Solve,
): readonly PlannedShow[] | NonNullable<TourPlan['cannot']> {
  let standing: Standing = tour.floor;
  const planned: PlannedShow[] = [];
  for (const [index, show] of tour.shows.entries()) {
    const ready = ahead.filter(({ from, until }) => from <= index && index < until).flatMap(({ loads }) => loads);
    let next = known[index];
    if (!next) {
      const problem = caseOfShow(tour, show, standing, [...show.loads, ...ready.map(({ load }) => load)]);
      const answer = problem && solve(problem);
      if (!answer || answer.status === 'infeasible' || answer.mismatch.length > 0)
        return { show: show.id, short: answer?.short, cartsShort: answer?.cartsShort };
      next = { show: show.id, ahead: ready, answer };
    }
    standing = standingAfter(standing, next.answer);
    planned.push(next);
  }
  return planned;
}

const costOf = ({ shows }: TourMoves, planned: readonly PlannedShow[]): number =>
  planned.reduce((sum, { answer }, index) => sum + shows[index]!.weight * answer.moves.length, 0);

function boundFromStart(tour: TourMoves, show: TourShow, solve: Solve): number {
  const problem = caseOfShow(tour, show, tour.floor, show.loads);
  return problem ? solve(problem).bound : 0;
}

const shapeOf = ({ boxes }: Load): string => JSON.stringify(boxes);

/** What a later show wants and neither the show nor what stands ready at it has, all of it and load by load; the earliest first, for soon and for late. */
function* candidates({ shows }: TourMoves, kept: readonly Ahead[], first: number): Generator<Ahead> {
  for (let from = first; from < shows.length - 1; from++)
    for (let until = from + 1; until < shows.length; until++) {
      const ready = kept.filter((each) => each.from <= from && from < each.until).flatMap(({ loads }) => loads);
      const has = new Map<string, number>();
      for (const load of [...shows[from]!.loads, ...ready.map((each) => each.load)])
        has.set(shapeOf(load), (has.get(shapeOf(load)) ?? 0) + 1);
      const lacking = shows[until]!.loads.filter((load) => {
        const left = has.get(shapeOf(load)) ?? 0;
        has.set(shapeOf(load), left - 1);
        return left <= 0;
      });
      // Named anew: the load keeps its own name at its own show.
      const named = lacking.map((load) => ({
        load: { ...load, id: `${load.id} ahead from ${from + 1} to ${until + 1}` },
        show: shows[until]!.id,
        of: load.id,
      }));
      if (named.length > 1) yield { from, until, loads: named };
      for (const one of named) yield { from, until, loads: [one] };
    }
}
