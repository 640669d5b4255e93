import type { EntityManager } from 'typeorm';
import { type Clock, dayIn } from '../../platform/config/config.js';

/** The zone of a show (`show` of `tour`): that of its venue on record, else the one that the tour names. SQL. */
export const zoneOfShow = `coalesce((SELECT venue.time_zone FROM show_venue JOIN venue ON venue.id = show_venue.venue_id
  WHERE show_venue.tour_id = tour.id AND show_venue.show_id = show->>'id'), show->>'timeZone')`;

/** Which day it is at the venue of a show. */
export async function dayOfShow(manager: EntityManager, clock: Clock, tourId: string, showId: string): Promise<string> {
  const [row]: { zone: string }[] = await manager.query(
    `SELECT ${zoneOfShow} AS zone FROM tour CROSS JOIN LATERAL jsonb_array_elements(tour.data->'shows') show WHERE tour.id = $1 AND show->>'id' = $2`,
    [tourId, showId],
  );
  return dayIn(clock, row?.zone ?? '');
}
