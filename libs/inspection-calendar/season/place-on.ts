import type { PlainDate } from '#kernel';
import type { PossibleVisit, SeasonItem, SeasonStay, SeasonTour, VisitPlace } from './season-case.js';

/** Where an item is on a day: at a depot, at a show, or away where no examiner comes (on the road, or with somebody known by name alone). */
export type ItemPlace = VisitPlace | { readonly kind: 'away' };

type Tours = ReadonlyMap<string, SeasonTour>;

/**
 * Between promises at its own depot. Of a tour: from the first prep day to the day before the first show at the depot of the tour, at a show on its days,
 * on the road between shows, after the last show on the return days again at the depot. Common practice, no published source. A batch that is promised to
 * several at once is where the first of them is, as a lot is examined whole.
 */
export function placeOn(item: Pick<SeasonItem, 'depot' | 'stays'>, on: PlainDate, tours: Tours): ItemPlace {
  const stays = item.stays.filter((each) => each.from <= on && on <= each.to && !each.isHold);
  const stay = stays.reduce<SeasonStay | undefined>(
    (first, each) => (first === undefined || each.from < first.from ? each : first),
    undefined,
  );
  if (!stay) return { kind: 'depot', depot: item.depot };
  const tour = stay.tour === null ? undefined : tours.get(stay.tour);
  if (!tour) return { kind: 'away' };
  const show = tour.shows.find((each) => each.from <= on && on <= each.to);
  if (show) return { kind: 'show', tour: tour.id, show: show.id };
  const isOut = tour.shows.some((each) => each.from <= on) && tour.shows.some((each) => each.to >= on);
  return isOut ? { kind: 'away' } : { kind: 'depot', depot: tour.depot };
}

export function isAt(place: ItemPlace, { at }: PossibleVisit): boolean {
  if (place.kind === 'depot' && at.kind === 'depot') return place.depot === at.depot;
  return place.kind === 'show' && at.kind === 'show' && place.tour === at.tour && place.show === at.show;
}
