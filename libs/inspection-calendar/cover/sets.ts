import type { Demand } from './demand.js';
import { type Mask, addTo, has, isWithin, listOf, makeMask, maskOf } from './masks.js';

/** Every set of days of which one must be chosen, without those that hold another whole; smallest first. */
export function listRows(demands: readonly Demand[], dayCount: number): Mask[] {
  const rows = new Map<string, Mask>();
  for (const { seen, spans } of demands) {
    const own = seen ? maskOf(seen, dayCount) : undefined;
    for (const [from, to] of spans) {
      const row = makeMask(dayCount);
      for (let at = from; at <= to; at++) if (own === undefined || has(own, at)) addTo(row, at);
      rows.set(row.join(), row);
    }
  }
  return withoutWider([...rows.values()]);
}

/** A set that holds another whole is served with it. */
function withoutWider(rows: readonly Mask[]): Mask[] {
  const none = makeMask(rows[0] ? rows[0].length * 32 : 1);
  const sized = rows.map((row) => ({ row, size: listOf(row, none).length })).sort((a, b) => a.size - b.size);
  const kept: Mask[] = [];
  for (const { row } of sized) if (!kept.some((each) => isWithin(each, row))) kept.push(row);
  return kept;
}

/** The same question without days that another day serves in every set; only the count of days stays the same. */
export function withoutLesserDays(rows: readonly Mask[], dayCount: number): Mask[] {
  let left = [...rows];
  for (;;) {
    const served = Array.from({ length: dayCount }, () => makeMask(left.length));
    const none = makeMask(dayCount);
    left.forEach((row, index) => {
      for (const day of listOf(row, none)) addTo(served[day]!, index);
    });
    const lesser = makeMask(dayCount);
    served.forEach((mine, day) => {
      const isLess = served.some((other, at) => at !== day && isWithin(mine, other) && (at > day || !isWithin(other, mine)));
      if (isLess) addTo(lesser, day);
    });
    const narrower = withoutWider([
      ...new Map(left.map((row) => row.map((word, index) => word & ~lesser[index]!)).map((row) => [row.join(), row])).values(),
    ]);
    if (narrower.length === left.length && narrower.every((row, index) => row.join() === left[index]!.join())) return narrower;
    left = narrower;
  }
}
