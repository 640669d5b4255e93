import type { Demand } from './cover/index.js';
import type { VisitNeed } from './visit-needs.js';

/**
 * Needs as sets of days. An item that is in date up to place L and no further is examined at a place up to L which carries it beyond; that holds for
 * every L from its last possible first visit to the end, whatever else is chosen, and is enough: seen at one place of each set it never stops.
 */
export function listDemands(needs: readonly VisitNeed[], dayCount: number): Demand[] {
  const alike = new Map<string, { need: VisitNeed; items: number }>();
  const numbers = new Map<readonly number[], number>();
  for (const need of needs) {
    const { first, last, carries, seen } = need;
    if (!numbers.has(carries)) numbers.set(carries, numbers.size);
    const key = `${numbers.get(carries)} ${first} ${last} ${seen?.join() ?? 'all'}`;
    const known = alike.get(key);
    if (known) known.items++;
    else alike.set(key, { need, items: 1 });
  }
  return [...alike.values()].map(({ need, items }) => ({
    items,
    ...(need.seen ? { seen: need.seen } : {}),
    spans: spansOf(need, dayCount),
  }));
}

function spansOf({ first, last, carries }: VisitNeed, dayCount: number): [number, number][] {
  const spans: [number, number][] = [];
  let from = first;
  for (let limit = last; limit < dayCount; limit++) {
    while (from < dayCount && carries[from]! <= limit) from++;
    spans.push([from, limit]);
  }
  return spans;
}
