import type { Demand } from './demand.js';
import { type Mask, addTo, has, makeMask, maskOf, withOne } from './masks.js';
import { type Counted, countSeen, countable } from './seen-counts.js';
import { type Cover, barMore, makeCover, smallestSet } from './weights.js';

export interface SeenAnswer {
  readonly chosen: readonly number[];
  readonly examinations: number;
  readonly examinationsAtLeast: number;
}

interface Search {
  readonly cover: Cover;
  readonly demands: readonly Counted[];
  readonly spanCount: number;
  best: { readonly chosen: readonly number[]; readonly examinations: number };
}

/** Counted steps of each of the two searches: a step looks at one day of one set, or at one span of one demand. */
const mostSteps = 40_000_000;
const [firstRounds, rounds] = [80, 4];

/**
 * Among all choices of as many days as `first`, one with the fewest examinations, of those the one whose first day, then second day, ... is latest.
 * Branch and bound over the same sets; the bound lets every item be seen at its best days of those that are not barred, and bars every day that is in no
 * choice of so few. Fewest comes first and is what is proven; latest is looked for afterwards, from the first day on.
 */
export function findFewestExaminations(
  demands: readonly Demand[],
  rows: readonly Mask[],
  dayCount: number,
  first: readonly number[],
): SeenAnswer {
  const cover = makeCover(rows, dayCount);
  const counted = countable(demands, dayCount);
  const spanCount = demands.reduce((sum, each) => sum + each.spans.length, 0);
  const best = exchanged(rows, counted, dayCount, first);
  const search: Search = { cover, demands: counted, spanCount, best };
  const open = rows.map((_, row) => row);
  const barred = barMore(cover, open, makeMask(dayCount), first.length, firstRounds) ?? makeMask(dayCount);
  const none = makeMask(dayCount);
  const atLeast = countSeen(counted, barred);
  if (search.best.examinations > atLeast) extend(search, open, barred, none, first.length);
  const isProven = search.best.examinations === atLeast || cover.steps < mostSteps;
  cover.steps = 0;
  const latest = latestFrom(search, { at: -1, open, barred, chosen: [], left: first.length });
  return {
    chosen: latest ?? search.best.chosen,
    examinations: search.best.examinations,
    examinationsAtLeast: isProven ? search.best.examinations : atLeast,
  };
}

/** One day for another, as long as that makes fewer examinations. */
function exchanged(rows: readonly Mask[], demands: readonly Counted[], dayCount: number, first: readonly number[]): Search['best'] {
  const countOf = (chosen: readonly number[]): number =>
    rows.every((row) => chosen.some((day) => has(row, day)))
      ? countSeen(
          demands,
          maskOf(chosen, dayCount).map((word) => ~word),
        )
      : Number.POSITIVE_INFINITY;
  let best = { chosen: [...first].sort((a, b) => a - b), examinations: countOf(first) };
  for (let isBetter = true; isBetter; ) {
    isBetter = false;
    for (const day of best.chosen)
      for (let other = 0; other < dayCount; other++) {
        if (best.chosen.includes(other)) continue;
        const chosen = [...best.chosen.filter((each) => each !== day), other].sort((a, b) => a - b);
        const examinations = countOf(chosen);
        if (examinations < best.examinations) [best, isBetter] = [{ chosen, examinations }, true];
        if (isBetter) break;
      }
  }
  return best;
}

/** `chosen` may be counted although barred from being chosen again. */
function extend(search: Search, open: readonly number[], barred: Mask, chosen: Mask, left: number): void {
  const { cover, demands } = search;
  if (cover.steps >= mostSteps) return;
  if (open.length === 0) return tell(search, chosen);
  if (left === 0) return;
  let tried = barMore(cover, open, barred, left, rounds);
  if (tried === undefined || leastOf(search, tried, chosen) >= search.best.examinations) return;
  // The day that leaves the fewest examinations first.
  const days = smallestSet(cover, open, tried)
    .map((day) => ({ day, least: countSeen(demands, allowing(tried!, withOne(chosen, day))) }))
    .sort((a, b) => a.least - b.least || b.day - a.day);
  for (const { day } of days) {
    const rest = open.filter((row) => !has(cover.rows[row]!, day));
    extend(search, rest, tried, withOne(chosen, day), left - 1);
    tried = withOne(tried, day);
  }
}

const allowing = (barred: Mask, chosen: Mask): Mask => barred.map((word, index) => word & ~chosen[index]!);

function leastOf({ cover, demands, spanCount, best }: Search, barred: Mask, chosen: Mask): number {
  cover.steps += spanCount;
  return countSeen(demands, allowing(barred, chosen), best.examinations);
}

function tell(search: Search, chosen: Mask): void {
  search.cover.steps += search.spanCount;
  const shut = chosen.map((word) => ~word);
  const examinations = countSeen(search.demands, shut);
  if (examinations < search.best.examinations) search.best = { chosen: daysIn(chosen, search.cover.dayCount), examinations };
}

const daysIn = (mask: Mask, dayCount: number): number[] =>
  Array.from({ length: dayCount }, (_, day) => day).filter((day) => has(mask, day));

interface Begun {
  readonly at: number;
  readonly open: readonly number[];
  readonly barred: Mask;
  readonly chosen: readonly number[];
  readonly left: number;
}

/** The latest choice of no more examinations than the best: day by day from the first on, each as late as it can be. undefined: none, or out of steps. */
function latestFrom(search: Search, { at, open, barred, chosen, left }: Begun): readonly number[] | undefined {
  const { cover, best } = search;
  if (cover.steps >= mostSteps) return undefined;
  const mask = maskOf(chosen, cover.dayCount);
  if (open.length === 0)
    return leastOf(
      search,
      mask.map((word) => ~word),
      mask,
    ) <= best.examinations
      ? chosen
      : undefined;
  if (left === 0) return undefined;
  const shut = barMore(cover, open, barred, left, rounds);
  if (shut === undefined || leastOf(search, shut, mask) > best.examinations) return undefined;
  const days = Array.from({ length: cover.dayCount - at - 1 }, (_, index) => at + 1 + index).filter((day) => !has(shut, day));
  for (let place = days.length - 1; place >= 0; place--) {
    const day = days[place]!;
    const passed = shut.slice();
    for (const earlier of days.slice(0, place + 1)) addTo(passed, earlier);
    const rest = open.filter((row) => !has(cover.rows[row]!, day));
    const found = latestFrom(search, { at: day, open: rest, barred: passed, chosen: [...chosen, day], left: left - 1 });
    if (found) return found;
  }
  return undefined;
}
