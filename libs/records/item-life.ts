import type { LifeStation } from '#trade';
import type { InspectedItem } from './inspected-item.js';

/** Everything that is on file of an item with a day, in the order of the days. */
export function itemLife(item: InspectedItem): readonly LifeStation[] {
  const { boughtOn, firstUsedOn, declaredOn } = item;
  const stations: LifeStation[] = [
    ...(boughtOn === null ? [] : [{ code: 'bought' as const, on: boughtOn }]),
    ...(declaredOn === null ? [] : [{ code: 'declared' as const, on: declaredOn }]),
    ...(firstUsedOn === null ? [] : [{ code: 'first-used' as const, on: firstUsedOn }]),
    ...item.records.map(
      ({ examination, reason }): LifeStation => ({
        ...{ code: 'examined', on: examination.on, passed: examination.outcome === 'pass' },
        ...{ report: examination.report ?? null, corrected: reason !== null },
      }),
    ),
    ...item.incidents.map(({ on, what }): LifeStation => ({ code: 'happened', on, what })),
    ...item.outs.map(({ on, what, sentence }): LifeStation => ({ code: 'out', on, what, sentence })),
    ...item.flown.map(({ tour, from, to }): LifeStation => ({ code: 'flown', on: from, until: to, tour })),
  ];
  return stations
    .map((each, index) => ({ each, index }))
    .sort((a, b) => (a.each.on < b.each.on ? -1 : a.each.on > b.each.on ? 1 : a.index - b.index))
    .map(({ each }) => each);
}
