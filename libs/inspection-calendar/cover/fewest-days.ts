import { type IntegerProgramSolver, invariant } from '#kernel';
import { daysNeeded } from './bound.js';
import type { Demand } from './demand.js';
import { daysByProgram, examinationsByProgram } from './by-program.js';
import { findFewestExaminations } from './fewest-seen.js';
import { type Mask, has, listOf, makeMask, withOne } from './masks.js';
import { listRows, withoutLesserDays } from './sets.js';

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

/** Counted steps of the search for fewest days: a step looks at one day of one set. */
const mostSteps = 3_000_000;

/**
 * The fewest days that serve every demand, and of those choices the one with the fewest examinations, then the latest days, as far as the counted work
 * goes. A minimum set cover: the demands as sets of days, of each of which one must be chosen. Depth by depth from a proven bound, branching over the
 * days of the smallest open set; a day that was tried stays out of the branches after it. What the counted work leaves open is asked of a solver of
 * integer programs where there is one.
 */
export function findFewestDays(demands: readonly Demand[], dayCount: number, solver?: IntegerProgramSolver): CoverAnswer {
  const rows = listRows(demands, dayCount);
  if (rows.length === 0) return { chosen: [], daysAtLeast: 0, examinations: 0, examinationsAtLeast: 0 };
  const { chosen, atLeast } = fewestOf(rows, dayCount, solver);
  const seen = findFewestExaminations(demands, rows, dayCount, chosen);
  const isOpen = solver !== undefined && atLeast === chosen.length && seen.examinationsAtLeast < seen.examinations;
  return { ...(isOpen ? examinationsByProgram(demands, dayCount, seen, solver) : seen), daysAtLeast: atLeast };
}

function fewestOf(rows: readonly Mask[], dayCount: number, solver?: IntegerProgramSolver): { chosen: readonly number[]; atLeast: number } {
  const narrow = withoutLesserDays(rows, dayCount);
  const greedy = takeGreedily(rows, dayCount);
  const search = { dayCount, steps: 0 };
  let depth = boundAt(narrow, dayCount);
  while (depth < greedy.length) {
    const found = extend(search, narrow, makeMask(dayCount), [], depth);
    if (found) return { chosen: found, atLeast: depth };
    if (search.steps >= mostSteps)
      return solver ? daysByProgram(narrow, dayCount, { chosen: greedy, atLeast: depth }, solver) : { chosen: greedy, atLeast: depth };
    depth++;
  }
  return { chosen: greedy, atLeast: greedy.length };
}

const boundAt = (rows: readonly Mask[], dayCount: number): number => {
  const none = makeMask(dayCount);
  return daysNeeded(
    rows.map((row) => listOf(row, none)),
    dayCount,
  );
};

/** A choice of at most `left` more days that serves all that is open; undefined where there is none, or the steps are used up. */
function extend(
  search: { readonly dayCount: number; steps: number },
  rows: readonly Mask[],
  barred: Mask,
  chosen: readonly number[],
  left: number,
): number[] | undefined {
  if (rows.length === 0) return [...chosen];
  if (left === 0 || search.steps >= mostSteps) return undefined;
  const open = rows.map((row) => listOf(row, barred));
  search.steps += open.reduce((sum, each) => sum + 1 + each.length, 0);
  const next = open.reduce((a, b) => (b.length < a.length ? b : a));
  if (next.length === 0 || daysNeeded(open, search.dayCount) > left) return undefined;
  let tried = barred;
  for (const day of next.reverse()) {
    const rest = rows.filter((row) => !has(row, day));
    const found = extend(search, rest, tried, [...chosen, day], left - 1);
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
