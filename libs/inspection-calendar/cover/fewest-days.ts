import { type IntegerProgramSolver, invariant } from '#kernel';
import { daysByProgram, examinationsByProgram } from './by-program.js';
import type { Demand } from './demand.js';
import { findFewestExaminations } from './fewest-seen.js';
import { type Mask, has, makeMask, withOne } from './masks.js';
import { partsOf } from './parts.js';
import { listRows, withoutLesserDays } from './sets.js';
import { type Cover, barMore, daysAtLeast, makeCover, smallestSet } from './weights.js';

export interface CoverAnswer {
  /** Places in the list of days, in order. */
  readonly chosen: readonly number[];
  /** No choice that serves all has fewer days than this; equal to their number where that is proven. */
  readonly daysAtLeast: number;
  /** Examinations of single items over all chosen days. */
  readonly examinations: number;
  /** No choice of so few days needs fewer examinations; equal to `examinations` where that is proven. */
  readonly examinationsAtLeast: number;
}

/** Counted steps of the search for fewest days of a part: a step looks at one day of one set. */
const mostSteps = 20_000_000;
/** Rounds of weighing at the start, and at each branch. */
const [firstRounds, rounds] = [150, 6];

/**
 * The fewest days that serve every demand, and of those choices the one with the fewest examinations, then the latest days, as far as the counted work
 * goes. A minimum set cover, part by part: the demands as sets of days, of each of which one must be chosen. Number by number from a proven bound,
 * branching over the days of the smallest open set; days that cannot be in so small a choice are barred by weights, and a day that was tried stays out of
 * the branches after it. What the counted work leaves open is asked of a solver of integer programs where there is one.
 */
export function findFewestDays(demands: readonly Demand[], dayCount: number, solver?: IntegerProgramSolver): CoverAnswer {
  const answers = partsOf(demands, dayCount).map((part) => {
    const { chosen, ...counts } = solvePart(part.demands, part.days.length, solver);
    return { chosen: chosen.map((place) => part.days[place]!), ...counts };
  });
  const sum = (of: (each: CoverAnswer) => number): number => answers.reduce((total, each) => total + of(each), 0);
  return {
    chosen: answers.flatMap((each) => each.chosen).sort((a, b) => a - b),
    daysAtLeast: sum((each) => each.daysAtLeast),
    examinations: sum((each) => each.examinations),
    examinationsAtLeast: sum((each) => each.examinationsAtLeast),
  };
}

function solvePart(demands: readonly Demand[], dayCount: number, solver?: IntegerProgramSolver): CoverAnswer {
  const rows = listRows(demands, dayCount);
  const { chosen, atLeast } = fewestOf(rows, dayCount, solver);
  const seen = findFewestExaminations(demands, rows, dayCount, chosen);
  const isOpen = solver !== undefined && atLeast === chosen.length && seen.examinationsAtLeast < seen.examinations;
  return { ...(isOpen ? examinationsByProgram(demands, dayCount, seen, solver) : seen), daysAtLeast: atLeast };
}

function fewestOf(rows: readonly Mask[], dayCount: number, solver?: IntegerProgramSolver): { chosen: readonly number[]; atLeast: number } {
  const narrow = withoutLesserDays(rows, dayCount);
  const greedy = takeGreedily(rows, dayCount);
  const cover = makeCover(narrow, dayCount);
  const open = narrow.map((_, row) => row);
  let depth = daysAtLeast(cover, firstRounds, greedy.length);
  while (depth < greedy.length) {
    const found = extend(cover, open, makeMask(dayCount), [], depth);
    if (found) return { chosen: found, atLeast: depth };
    if (cover.steps >= mostSteps)
      return solver ? daysByProgram(narrow, dayCount, { chosen: greedy, atLeast: depth }, solver) : { chosen: greedy, atLeast: depth };
    depth++;
  }
  return { chosen: greedy, atLeast: greedy.length };
}

/** A choice of at most `left` more days that serves all that is open; undefined where there is none, or the steps are used up. */
function extend(
  cover: Cover,
  open: readonly number[],
  barred: Mask,
  chosen: readonly number[],
  left: number,
): readonly number[] | undefined {
  if (open.length === 0) return chosen;
  if (left === 0 || cover.steps >= mostSteps) return undefined;
  let tried = barMore(cover, open, barred, left, rounds);
  if (tried === undefined) return undefined;
  for (const day of smallestSet(cover, open, tried).reverse()) {
    const rest = open.filter((row) => !has(cover.rows[row]!, day));
    const found = extend(cover, rest, tried, [...chosen, day], left - 1);
    if (found) return found;
    tried = withOne(tried, day);
  }
  return undefined;
}

/** The day that serves most, again and again; then days that are not needed after all are left out. */
function takeGreedily(rows: readonly Mask[], dayCount: number): number[] {
  const chosen: number[] = [];
  for (let open = rows; open.length > 0; open = open.filter((row) => !has(row, chosen.at(-1)!))) {
    const served = Array.from({ length: dayCount }, (_, day) => open.filter((row) => has(row, day)).length);
    const day = served.lastIndexOf(Math.max(...served));
    invariant(served[day]! > 0, 'every set holds a day');
    chosen.push(day);
  }
  return chosen.reduceRight((kept, day) => {
    const others = kept.filter((each) => each !== day);
    return rows.every((row) => others.some((each) => has(row, each))) ? others : kept;
  }, chosen);
}
