import { invariant } from '#kernel';
import { daysNeeded } from './bound.js';
import { type Demand, daysOf } from './demand.js';
import { type Mask, has, listOf, makeMask, withOne } from './masks.js';

export interface SeenAnswer {
  readonly chosen: readonly number[];
  readonly examinations: number;
  readonly examinationsAtLeast: number;
}

interface Search {
  readonly demands: readonly Demand[];
  readonly dayCount: number;
  readonly most: number;
  /** Spans of all demands. */
  readonly spanCount: number;
  /** Choices that are only later, not fewer, are looked for as well. */
  readonly wantsLater: boolean;
  best: { readonly chosen: readonly number[]; readonly examinations: number };
  steps: number;
}

/** Counted steps of each of the two searches: a step looks at one day of one set, or at one span of one demand. */
const mostSteps = 2_000_000;

/**
 * Among all choices of as many days as `first`, one with the fewest examinations, of those the one whose first day, then second day, ... is latest.
 * Branch and bound over the same sets; the bound lets every item be seen at its best days of those that are not barred. Fewest comes first and is what
 * is proven; latest is looked for with what is left of the steps.
 */
export function findFewestExaminations(
  demands: readonly Demand[],
  rows: readonly Mask[],
  dayCount: number,
  first: readonly number[],
): SeenAnswer {
  const start = [...first].sort((a, b) => a - b);
  const best = { chosen: start, examinations: countExaminations(demands, start) };
  const atLeast = leastExaminations(demands, dayCount, makeMask(dayCount));
  const spanCount = demands.reduce((sum, each) => sum + each.spans.length, 0);
  const search: Search = { demands, dayCount, most: first.length, spanCount, wantsLater: false, best, steps: 0 };
  if (best.examinations > atLeast) extend(search, rows, makeMask(dayCount), []);
  const isProven = search.steps < mostSteps;
  const later: Search = { ...search, wantsLater: true, steps: 0 };
  extend(later, rows, makeMask(dayCount), []);
  const isProvenLater = isProven || later.steps < mostSteps;
  return { ...later.best, examinationsAtLeast: isProvenLater ? later.best.examinations : atLeast };
}

function extend(search: Search, rows: readonly Mask[], barred: Mask, chosen: readonly number[]): void {
  if (search.steps >= mostSteps) return;
  if (rows.length === 0) return tell(search, chosen);
  const left = search.most - chosen.length;
  if (left === 0) return;
  const open = rows.map((row) => listOf(row, barred));
  search.steps += open.reduce((sum, each) => sum + 1 + each.length, 0);
  const next = open.reduce((a, b) => (b.length < a.length ? b : a));
  if (next.length === 0 || daysNeeded(open, search.dayCount) > left) return;
  search.steps += search.spanCount;
  const least = leastExaminations(search.demands, search.dayCount, barred);
  if (least > search.best.examinations || (least === search.best.examinations && !search.wantsLater)) return;
  let tried = barred;
  for (const day of next.reverse()) {
    const rest = rows.filter((row) => !has(row, day));
    extend(search, rest, tried, [...chosen, day]);
    tried = withOne(tried, day);
  }
}

function tell(search: Search, chosen: readonly number[]): void {
  const sorted = [...chosen].sort((a, b) => a - b);
  const examinations = countExaminations(search.demands, sorted);
  search.steps += search.spanCount;
  const { best } = search;
  const isBetter = sorted.length < best.chosen.length || examinations < best.examinations;
  if (isBetter || (search.wantsLater && examinations === best.examinations && isLater(sorted, best.chosen)))
    search.best = { chosen: sorted, examinations };
}

/** As many as there would be were every day chosen that is not barred: no choice of those needs fewer. */
function leastExaminations(demands: readonly Demand[], dayCount: number, barred: Mask): number {
  const all = Array.from({ length: dayCount }, (_, at) => at).filter((at) => !has(barred, at));
  let sum = 0;
  for (const demand of demands) {
    const days = daysOf(demand, all);
    if (!days) return Number.POSITIVE_INFINITY;
    sum += demand.items * days.length;
  }
  return sum;
}

function countExaminations(demands: readonly Demand[], chosen: readonly number[]): number {
  return demands.reduce((sum, demand) => {
    const days = daysOf(demand, chosen);
    invariant(days, 'a choice that serves all sets serves every demand');
    return sum + demand.items * days.length;
  }, 0);
}

/** The first day that differs is the later one. */
const isLater = (days: readonly number[], other: readonly number[]): boolean => {
  const at = days.findIndex((each, index) => each !== other[index]);
  return at >= 0 && days[at]! > other[at]!;
};
