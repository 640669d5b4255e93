import { type Demand } from './demand.js';
import { type Mask, lastOf, makeMask, maskOf } from './masks.js';

/** Demands with their days as a mask, for counting again and again. */
export interface Counted {
  readonly items: number;
  readonly seen: Mask;
  readonly from: Int32Array;
  readonly to: Int32Array;
}

export function countable(demands: readonly Demand[], dayCount: number): readonly Counted[] {
  const all = makeMask(dayCount).fill(-1);
  return demands.map(({ items, seen, spans }) => ({
    items,
    seen: seen ? maskOf(seen, dayCount) : all,
    from: Int32Array.from(spans, ([from]) => from),
    to: Int32Array.from(spans, ([, to]) => to),
  }));
}

/**
 * Examinations were every day chosen that is not shut: no choice of those days needs fewer. Infinite where some demand is not served; past `most` the
 * count may be cut short.
 */
export function countSeen(demands: readonly Counted[], shut: Mask, most = Number.POSITIVE_INFINITY): number {
  let sum = 0;
  for (const { items, seen, from, to } of demands) {
    let last = -1;
    for (let span = 0; span < from.length; span++) {
      if (last >= from[span]!) continue;
      last = lastOf(seen, shut, to[span]!);
      if (last < from[span]!) return Number.POSITIVE_INFINITY;
      sum += items;
    }
    if (sum > most) return sum;
  }
  return sum;
}
