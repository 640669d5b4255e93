import type { ExaminationCount } from './fewest-examinations.js';
import type { VisitNeed } from './visit-needs.js';

/** A limit that some item does not yet pass, and the days of which one must be chosen for it. */
interface Open {
  readonly days: readonly number[];
}

interface Search {
  readonly needs: readonly VisitNeed[];
  readonly dayCount: number;
  steps: number;
}

interface Found extends ExaminationCount {
  readonly chosen: readonly number[];
}

/** Steps of the search for fewer examinations; the number of days is always proven. */
const mostSteps = 200_000;

/**
 * The fewest visit days where items are not on every day where the examiner is: a hitting set, since every item that has come to a limit needs one of the
 * days not after that limit which carry it beyond. Any plan that holds the chosen days holds one of these as well, so branching over them misses none.
 * Depth by depth from the bound of limits that share no day; among the plans of fewest days the one with fewest examinations of single items, of those the
 * one with the latest days, as far as the steps go. Each need is served when every day is chosen.
 */
export function findFewestSeen(needs: readonly VisitNeed[], dayCount: number): Found {
  const search: Search = { needs, dayCount, steps: 0 };
  for (let depth = boundOf(openLimits(search, new Set(), new Set())); ; depth++) {
    const found: { best: Found | undefined } = { best: undefined };
    const atLeast = needs.reduce((sum, need) => sum + examinationsOf(need, allOf(dayCount), dayCount), 0);
    search.steps = 0;
    extend(search, new Set(), new Set(), depth, (chosen) => {
      const examinations = needs.reduce((sum, need) => sum + examinationsOf(need, chosen, dayCount), 0);
      const days = [...chosen].sort((a, b) => a - b);
      const { best } = found;
      if (!best || examinations < best.examinations || (examinations === best.examinations && isLater(days, best.chosen)))
        found.best = { chosen: days, examinations, examinationsAtLeast: atLeast };
      return search.steps >= mostSteps;
    });
    if (found.best) return search.steps < mostSteps ? { ...found.best, examinationsAtLeast: found.best.examinations } : found.best;
  }
}

/** Tries every plan of at most `left` more days; `tell` says whether to end. True when ended. */
function extend(
  search: Search,
  chosen: ReadonlySet<number>,
  barred: ReadonlySet<number>,
  left: number,
  tell: (chosen: ReadonlySet<number>) => boolean,
): boolean {
  search.steps++;
  const open = openLimits(search, chosen, barred);
  if (open.length === 0) return tell(chosen);
  if (boundOf(open) > left) return false;
  const next = open.reduce((a, b) => (b.days.length < a.days.length ? b : a));
  const tried = new Set(barred);
  for (const day of [...next.days].reverse()) {
    if (extend(search, new Set([...chosen, day]), tried, left - 1, tell)) return true;
    tried.add(day);
  }
  return false;
}

/** Where every item stands that does not yet reach the end, with the days that carry it on; days barred are not among them. */
function openLimits({ needs, dayCount }: Search, chosen: ReadonlySet<number>, barred: ReadonlySet<number>): Open[] {
  return needs.flatMap((need) => {
    const limit = limitOf(need, chosen, dayCount);
    if (limit >= dayCount) return [];
    const days: number[] = [];
    for (let at = need.first; at <= limit; at++)
      if (!barred.has(at) && (need.seen?.includes(at) ?? true) && need.carries[at]! > limit) days.push(at);
    return [{ days }];
  });
}

/** How far the chosen days carry an item: each time seen as late as possible. */
function limitOf(need: VisitNeed, chosen: ReadonlySet<number>, dayCount: number): number {
  let limit = need.last;
  while (limit < dayCount) {
    const at = lastChosen(need, chosen, limit);
    if (at === undefined || need.carries[at]! <= limit) return limit;
    limit = need.carries[at]!;
  }
  return limit;
}

function examinationsOf(need: VisitNeed, chosen: ReadonlySet<number>, dayCount: number): number {
  let count = 0;
  for (let limit = need.last; limit < dayCount; count++) limit = need.carries[lastChosen(need, chosen, limit)!]!;
  return count;
}

function lastChosen(need: VisitNeed, chosen: ReadonlySet<number>, limit: number): number | undefined {
  for (let at = limit; at >= need.first; at--) if (chosen.has(at) && (need.seen?.includes(at) ?? true)) return at;
  return undefined;
}

/** Limits that share no day need a day each; taken greedily, those with fewest days first. */
function boundOf(open: readonly Open[]): number {
  const used = new Set<number>();
  let count = 0;
  for (const { days } of [...open].sort((a, b) => a.days.length - b.days.length)) {
    if (days.length === 0) return Number.POSITIVE_INFINITY;
    if (days.some((each) => used.has(each))) continue;
    for (const each of days) used.add(each);
    count++;
  }
  return count;
}

const allOf = (dayCount: number): ReadonlySet<number> => new Set(Array.from({ length: dayCount }, (_, at) => at));

/** The first day that differs is the later one. */
const isLater = (days: readonly number[], other: readonly number[]): boolean => {
  const at = days.findIndex((each, index) => each !== other[index]);
  return at >= 0 && days[at]! > other[at]!;
};
