import type { Demand } from './demand.js';

/** Demands that share no day with others, with their days numbered anew: `days` are the places that they had. */
export interface Part {
  readonly demands: readonly Demand[];
  readonly days: readonly number[];
}

/**
 * Demands and days fall apart where no demand reaches across: the fewest days, the fewest examinations on so many and the latest of those days are found
 * part by part. (Of two choices of equally many days the one whose first day that differs is later stays the later one whatever is added to both.)
 */
export function partsOf(demands: readonly Demand[], dayCount: number): Part[] {
  const heads = Int32Array.from({ length: dayCount }, (_, day) => day);
  const headOf = (day: number): number => {
    let head = day;
    while (heads[head] !== head) head = heads[head]!;
    heads[day] = head;
    return head;
  };
  const own = demands.map(ownDays);
  for (const days of own) for (const day of days) heads[headOf(day)] = headOf(days[0]!);
  const parts = new Map<number, { demands: Demand[]; days: Set<number> }>();
  demands.forEach((demand, index) => {
    const days = own[index]!;
    if (days.length === 0) return;
    const head = headOf(days[0]!);
    const part = parts.get(head) ?? { demands: [], days: new Set() };
    parts.set(head, part);
    part.demands.push(demand);
    for (const day of days) part.days.add(day);
  });
  return [...parts.values()].map((part) => {
    const days = [...part.days].sort((a, b) => a - b);
    return { days, demands: part.demands.map((demand) => numberAnew(demand, days)) };
  });
}

/** The days on which some span of the demand can be served. */
function ownDays({ seen, spans }: Demand): number[] {
  const days: number[] = [];
  const all = seen ?? spans.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, at) => from + at));
  let span = 0;
  for (const day of seen ? all : [...new Set(all)].sort((a, b) => a - b)) {
    while (span < spans.length && spans[span]![1] < day) span++;
    if (span < spans.length && spans[span]![0] <= day) days.push(day);
  }
  return days;
}

function numberAnew({ items, seen, spans }: Demand, days: readonly number[]): Demand {
  const placeOf = new Map(days.map((day, place) => [day, place]));
  const upTo = (day: number): number => {
    let [low, high] = [0, days.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (days[middle]! <= day) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  return {
    items,
    ...(seen ? { seen: seen.flatMap((day) => placeOf.get(day) ?? []) } : {}),
    spans: spans.map(([from, to]) => [upTo(from - 1), upTo(to) - 1]),
  };
}
