import type { PossibleVisit, SeasonCase, SeasonItem, SeasonTour } from '#inspection-calendar';
import { addDays, daysBetween, seededRandom } from '#kernel';

export interface SeasonSize {
  readonly tours: number;
  readonly items: number;
  readonly visits: number;
  readonly from: string;
  readonly to: string;
}

const depots = ['Ferry Lane', 'Northgate'];
const intervals = [['P6M'], ['P6M'], ['P1Y'], ['P3M'], ['P1Y', 'P6M']];

/**
 * A season by a seed: tours of two to eight weeks from two depots, items that go with tours that do not overlap, records of the half year before,
 * examiners who may come to a depot, and now and then to a show.
 */
export function madeSeason(seed: number, { tours: tourCount, items: itemCount, visits: visitCount, from, to }: SeasonSize): SeasonCase {
  const random = seededRandom(seed);
  const upTo = (most: number): number => Math.floor(random() * most);
  const length = daysBetween(from, to);
  const tours = Array.from({ length: tourCount }, (_, number): SeasonTour & { from: string; to: string } => {
    const days = Math.min(14 + upTo(43), length - 1);
    const start = addDays(from, upTo(length - days));
    const shows = Array.from({ length: 1 + upTo(3) }, (_show, index) => {
      const on = addDays(start, 2 + Math.floor((index * (days - 4)) / 3));
      return { id: `S${index + 1}`, from: on, to: addDays(on, Math.min(upTo(2), Math.max(0, Math.floor((days - 4) / 3) - 1))) };
    });
    return { id: `T${number + 1}`, depot: depots[upTo(2)]!, shows, from: start, to: addDays(start, days) };
  });
  const items = Array.from({ length: itemCount }, (_, number): SeasonItem => {
    const stays: SeasonItem['stays'][number][] = [];
    const depot = depots[upTo(2)]!;
    for (let tries = 0; tries < 6; tries++) {
      const tour = tours[upTo(tours.length)]!;
      if (tour.depot !== depot || stays.some((each) => each.from <= tour.to && tour.from <= each.to)) continue;
      stays.push({ from: tour.from, to: tour.to, tour: tour.id, isHold: false });
    }
    const last = addDays(from, -1 - upTo(200));
    return {
      ...{ id: `I-${String(number + 1).padStart(3, '0')}`, depot, stays, intervals: intervals[upTo(intervals.length)]! },
      examinations: random() < 0.05 ? [] : [{ on: last, outcome: random() < 0.02 ? 'fail' : 'pass' }],
      events: random() < 0.03 ? [{ on: addDays(last, 1 + upTo(20)), what: 'shock load' }] : [],
    };
  });
  const visits = Array.from({ length: visitCount }, (_, number): PossibleVisit => {
    const tour = tours[upTo(tours.length)]!;
    const show = tour.shows[upTo(tour.shows.length)]!;
    return random() < 0.2
      ? { id: `V${number + 1}`, on: show.from, at: { kind: 'show', tour: tour.id, show: show.id } }
      : { id: `V${number + 1}`, on: addDays(from, upTo(length) - 10), at: { kind: 'depot', depot: depots[upTo(2)]! } };
  });
  return { window: { from, to }, tours: tours.map(({ id, depot, shows }) => ({ id, depot, shows })), items, visits };
}
