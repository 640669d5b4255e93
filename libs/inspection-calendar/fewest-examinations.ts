import type { VisitNeed } from './visit-needs.js';

export interface ExaminationCount {
  /** Examinations of single items over all chosen days. */
  readonly examinations: number;
  /** No plan of as few days needs fewer than this; equal to `examinations` where that is proven. */
  readonly examinationsAtLeast: number;
}

interface Search {
  readonly needs: readonly VisitNeed[];
  /** reach[u]: the last day that may follow a chosen day u. */
  readonly reach: readonly number[];
  /** The plan of fewest days with every day as late as possible. */
  readonly latest: readonly number[];
  readonly dayCount: number;
}

/** Needs that act alike, counted. */
interface Group {
  readonly last: number;
  readonly carries: readonly number[];
  /** fewest[r]: examinations still needed by an item that is in date up to place r, were every day chosen. */
  readonly fewest: readonly number[];
  readonly items: number;
}

const mostSteps = 4_000_000;

/**
 * Among all plans of the fewest days, one with the fewest examinations of single items, and of those the one whose first
 * day, then second day, ... is latest. Branch and bound from the first day on, later days tried first; the bound lets every item
 * be seen at its own best days. Where the search runs out of steps the best plan so far stands, with the bound beside it.
 */
export function findFewestExaminations(search: Search): ExaminationCount & { readonly chosen: readonly number[] } {
  const { reach, latest, dayCount } = search;
  const groups = groupNeeds(search.needs, dayCount);
  const daysAfter = countDaysAfter(reach, dayCount);
  const atLeast = groups.reduce((sum, each) => sum + each.items * each.fewest[each.last]!, 0);
  let best = { chosen: latest, examinations: Number.POSITIVE_INFINITY };
  let steps = 0;

  const extend = (chosen: readonly number[], limits: Int32Array, spent: number): void => {
    const at = chosen.at(-1)!;
    const furthest = reach[at]!;
    if (chosen.length === latest.length) {
      if (furthest === dayCount) finish(chosen, seeAt(groups, limits, at, dayCount, spent).spent);
      return;
    }
    for (let next = Math.min(furthest, dayCount - 1); next > at && steps < mostSteps; next--) {
      if (daysAfter[next]! > latest.length - chosen.length - 1) break;
      steps += groups.length;
      const seen = seeAt(groups, limits, at, next, spent);
      if (seen.atLeast < best.examinations) extend([...chosen, next], seen.limits, seen.spent);
    }
  };
  const finish = (chosen: readonly number[], examinations: number): void => {
    if (examinations < best.examinations) best = { chosen, examinations };
  };

  const start = Int32Array.from(groups, (each) => each.last);
  for (let first = latest[0]!; first >= 0 && steps < mostSteps && best.examinations > atLeast; first--) {
    if (daysAfter[first]! > latest.length - 1) break;
    extend([first], start, 0);
  }
  return { ...best, examinationsAtLeast: steps < mostSteps ? best.examinations : atLeast };
}

/** What happens when `next` follows `at`: items that do not last until `next` are seen at `at`. */
function seeAt(
  groups: readonly Group[],
  limits: Int32Array,
  at: number,
  next: number,
  before: number,
): { limits: Int32Array; spent: number; atLeast: number } {
  const after = limits.slice();
  let spent = before;
  let toCome = 0;
  groups.forEach((group, index) => {
    if (after[index]! < next) {
      spent += group.items;
      after[index] = group.carries[at]!;
    }
    toCome += group.items * group.fewest[after[index]!]!;
  });
  return { limits: after, spent, atLeast: spent + toCome };
}

function groupNeeds(needs: readonly VisitNeed[], dayCount: number): readonly Group[] {
  const fewestOf = new Map<readonly number[], readonly number[]>();
  const groups = new Map<readonly number[], Map<number, Group>>();
  for (const { last, carries } of needs) {
    const fewest = fewestOf.get(carries) ?? countFewest(carries, dayCount);
    fewestOf.set(carries, fewest);
    const byLast = groups.get(carries) ?? new Map<number, Group>();
    groups.set(carries, byLast);
    byLast.set(last, { last, carries, fewest, items: (byLast.get(last)?.items ?? 0) + 1 });
  }
  return [...groups.values()].flatMap((byLast) => [...byLast.values()]);
}

function countFewest(carries: readonly number[], dayCount: number): readonly number[] {
  const fewest = new Array<number>(dayCount + 1).fill(0);
  for (let at = dayCount - 1; at >= 0; at--) fewest[at] = carries[at]! > at ? 1 + fewest[carries[at]!]! : Number.POSITIVE_INFINITY;
  return fewest;
}

/** daysAfter[u]: fewest days that must follow a chosen day u; infinite where u leads nowhere. */
function countDaysAfter(reach: readonly number[], dayCount: number): readonly number[] {
  const after = new Array<number>(dayCount).fill(0);
  for (let at = dayCount - 1; at >= 0; at--) {
    const next = reach[at]!;
    after[at] = next === dayCount ? 0 : next > at ? 1 + after[next]! : Number.POSITIVE_INFINITY;
  }
  return after;
}
