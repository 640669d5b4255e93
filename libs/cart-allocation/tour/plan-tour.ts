import type { IntegerProgramSolver } from '#kernel';
import type { AllocationAnswer, AllocationCase } from '../case/index.js';
import { solveAllocation } from '../solve/index.js';
import { tourBound } from './tour-bound.js';
import { type Standing, type TourMoves, caseOfShow, standingAfter } from './tour-case.js';

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
}

export interface PlannedShow {
  readonly show: string;
  /** Loads of later shows that stand ready from here on; they count among the loads of its answer. */
  readonly ahead: readonly Load[];
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
  readonly tries: number;
}

/** From a show on, loads of a later one stand ready, until they are wanted. */
interface Ahead {
  readonly from: number;
  readonly until: number;
  readonly loads: readonly Load[];
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
    });
  const run = (ahead: readonly Ahead[], known: readonly PlannedShow[]) => carriedOut(tour, ahead, known, solve);
  const fixed = limits.fixed ?? [];
  let best = run([], fixed);
  if (!best) return { status: 'infeasible', shows: [], cost: 0, bound: 0, showByShow: 0, tries: 0 };
  const showByShow = costOf(tour, best);
  const fromStart = tour.shows.map(({ loads }) => boundFromStart(tour, loads, solve));
  const bound = Math.max(0, tourBound(tour, fromStart, limits.integerProgram, limits.timeLimitSeconds));
  let kept: readonly Ahead[] = [];
  let tries = 0;
  for (let isBetter = true; isBetter && costOf(tour, best) > bound + 1e-3; ) {
    isBetter = false;
    for (const next of candidates(tour, kept, fixed.length)) {
      if (tries >= limits.tries || isLate() || costOf(tour, best) <= bound + 1e-3) break;
      tries++;
      const found = run([...kept, next], best.slice(0, next.from));
      if (!found || costOf(tour, found) >= costOf(tour, best)) continue;
      [best, kept, isBetter] = [found, [...kept, next], true];
    }
  }
  const cost = costOf(tour, best);
  return { status: cost <= bound + 1e-3 ? 'optimal' : 'feasible', shows: best, cost, bound: Math.min(bound, cost), showByShow, tries };
}

type Solve = (problem: AllocationCase) => ReturnType<typeof solveAllocation>;

/** Every show in turn, those that are known taken as they are; undefined where one cannot be served. */
function carriedOut(
  tour: TourMoves,
  ahead: readonly Ahead[],
  known: readonly PlannedShow[],
  solve: Solve,
): readonly PlannedShow[] | undefined {
  let standing: Standing = tour.floor;
  const planned: PlannedShow[] = [];
  for (const [index, show] of tour.shows.entries()) {
    const ready = ahead.filter(({ from, until }) => from <= index && index < until).flatMap(({ loads }) => loads);
    let next = known[index];
    if (!next) {
      const problem = caseOfShow(tour, standing, [...show.loads, ...ready]);
      const answer = problem && solve(problem);
      if (!answer || answer.status === 'infeasible' || answer.mismatch.length > 0) return undefined;
      next = { show: show.id, ahead: ready, answer };
    }
    standing = standingAfter(standing, next.answer);
    planned.push(next);
  }
  return planned;
}

const costOf = ({ shows }: TourMoves, planned: readonly PlannedShow[]): number =>
  planned.reduce((sum, { answer }, index) => sum + shows[index]!.weight * answer.moves.length, 0);

function boundFromStart(tour: TourMoves, loads: readonly Load[], solve: Solve): number {
  const problem = caseOfShow(tour, tour.floor, loads);
  return problem ? solve(problem).bound : 0;
}

const shapeOf = ({ boxes }: Load): string => JSON.stringify(boxes);

/** What a later show wants and neither the show nor what stands ready at it has, all of it and load by load; the earliest first, for soon and for late. */
function* candidates({ shows }: TourMoves, kept: readonly Ahead[], first: number): Generator<Ahead> {
  for (let from = first; from < shows.length - 1; from++)
    for (let until = from + 1; until < shows.length; until++) {
      const ready = kept.filter((each) => each.from <= from && from < each.until).flatMap(({ loads }) => loads);
      const has = new Map<string, number>();
      for (const load of [...shows[from]!.loads, ...ready]) has.set(shapeOf(load), (has.get(shapeOf(load)) ?? 0) + 1);
      const lacking = shows[until]!.loads.filter((load) => {
        const left = has.get(shapeOf(load)) ?? 0;
        has.set(shapeOf(load), left - 1);
        return left <= 0;
      });
      // Named anew: the load keeps its own name at its own show.
      const named = lacking.map((load) => ({ ...load, id: `${load.id} ahead from ${from + 1} to ${until + 1}` }));
      if (named.length > 1) yield { from, until, loads: named };
      for (const load of named) yield { from, until, loads: [load] };
    }
}
