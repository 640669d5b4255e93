/** Items that need days alike, in places of a sorted list of days. */
export interface Demand {
  /** How many items they are. */
  readonly items: number;
  /** The places on which they are where the examiner is, sorted; left out: all. */
  readonly seen?: readonly number[];
  /** One place of each span must be chosen; both ends rise from span to span, and each span holds a place that is seen. */
  readonly spans: readonly (readonly [from: number, to: number])[];
}

/** The chosen places on which such an item is examined: as few as the choice allows, each as late as it can be. undefined: it is not served. */
export function daysOf({ seen, spans }: Demand, chosen: readonly number[]): number[] | undefined {
  const days: number[] = [];
  for (const [from, to] of spans) {
    if (days.length > 0 && days.at(-1)! >= from) continue;
    const at = chosen.findLast((each) => each <= to && (seen === undefined || seen.includes(each)));
    if (at === undefined || at < from) return undefined;
    days.push(at);
  }
  return days;
}
