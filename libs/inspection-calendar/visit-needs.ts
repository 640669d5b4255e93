import { type Period, type PlainDate, addDays } from '#kernel';
import { dueAfterExamination, findLastRecordOn, getPeriod } from './dates/index.js';
import type { ExaminationsCase, ExaminedItem } from './dates/index.js';
import type { ItemState } from './dates/index.js';

/**
 * An item that needs visits, in places of the sorted list of useful visit days (0 the first; `days.length` = the end of
 * the window is reached). Its first visit lies from `first` to `last`; a visit at u carries it to `carries[u]`: the last
 * visit day that is on or before its new due date. `seen`: the places on which the item is where the examiner is; left out: all.
 */
export interface VisitNeed {
  readonly id: string;
  readonly first: number;
  readonly last: number;
  readonly carries: readonly number[];
  readonly seen?: readonly number[];
}

export interface VisitNeeds {
  /** Visit days before the window's last day, sorted, each once: a visit on that day or later changes nothing in it. */
  readonly days: readonly PlainDate[];
  readonly needs: readonly VisitNeed[];
  readonly cannotBeSaved: readonly string[];
}

/** Which items need a visit and on which days it can help; those that no choice of days saves are named. */
export function listVisitNeeds({ window, items, visitDays }: ExaminationsCase, states: readonly ItemState[]): VisitNeeds {
  const days = [...new Set(visitDays)].filter((on) => on < window.to).sort();
  const carriesOf = carriesByIntervals(days, window.to);
  const needs: VisitNeed[] = [];
  const cannotBeSaved: string[] = [];
  items.forEach((item, index) => {
    const { state, dueOn } = states[index]!;
    if (state === 'in date throughout' || state === 'failed' || state === 'no interval') return;
    const latest = state === 'falls due' && dueOn !== null ? dueOn : addDays(window.from, -1);
    const after = findLastRecordOn(item);
    const need = {
      id: item.id,
      first: after === undefined ? 0 : countUpTo(days, after),
      last: countUpTo(days, latest) - 1,
      carries: carriesOf(item),
      ...(item.seenOn ? { seen: placesOf(days, item.seenOn) } : {}),
    };
    if (canBeSaved(need, days.length)) needs.push(need);
    else cannotBeSaved.push(item.id);
  });
  return { days, needs, cannotBeSaved };
}

/** Later visits carry further (month arithmetic keeps the order of days), so going as late as possible decides it. */
function canBeSaved(need: VisitNeed, end: number): boolean {
  let limit = need.last;
  while (limit < end) {
    const at = lastSeenBy(need, limit);
    if (at === undefined || need.carries[at]! <= limit) return false;
    limit = need.carries[at]!;
  }
  return true;
}

/** The last place not after `limit` on which a visit reaches the item and counts for it. */
function lastSeenBy({ first, seen }: VisitNeed, limit: number): number | undefined {
  const at = seen ? seen.findLast((each) => each <= limit) : limit;
  return at !== undefined && at >= first ? at : undefined;
}

const placesOf = (days: readonly PlainDate[], seenOn: readonly PlainDate[]): number[] => {
  const seen = new Set(seenOn);
  return days.flatMap((on, place) => (seen.has(on) ? [place] : []));
};

/** Items of equal intervals share one table. */
function carriesByIntervals(days: readonly PlainDate[], to: PlainDate): (item: ExaminedItem) => readonly number[] {
  const tables = new Map<string, readonly number[]>();
  return ({ intervals }) => {
    const key = [...new Set(intervals)].sort().join(' ');
    const known = tables.get(key);
    if (known) return known;
    const periods: readonly Period[] = intervals.map(getPeriod);
    const table = days.map((on) => {
      const due = dueAfterExamination(on, periods);
      return due === undefined || due >= to ? days.length : countUpTo(days, due) - 1;
    });
    tables.set(key, table);
    return table;
  };
}

/** How many of the sorted days are on or before a day. */
function countUpTo(days: readonly PlainDate[], limit: PlainDate): number {
  let [low, high] = [0, days.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (days[middle]! <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
