import type { PlaceAnswer, Tour } from '#tour-file';
import { type Queryable, rowsOf } from './queryable.js';

/** Countries of the venues on record of a tour's shows (`tour`). SQL. */
const countriesOfVenues = `ARRAY(SELECT DISTINCT venue.country FROM show_venue JOIN venue ON venue.id = show_venue.venue_id
  WHERE tour_id = tour.id AND venue.country IS NOT NULL AND tour.data->'shows' @> jsonb_build_array(jsonb_build_object('id', show_id)) ORDER BY venue.country)`;

/** The day of an answer at the depot of its tour, in the zone of the place of that name on record; without one the day of UTC. SQL. */
const dayOfAnswer = `coalesce((SELECT max((decided_at AT TIME ZONE time_zone)::date) FROM venue WHERE name = tour.data->>'depot'), (decided_at AT TIME ZONE 'UTC')::date)::text`;

/** The newest answer for each place of a tour (`tour`), without those that were taken back. SQL. */
const answersInForce = `(SELECT coalesce(jsonb_agg(jsonb_build_object('place', place, 'rulesOf', rules_of, 'because', because, 'decidedBy', decided_by,
    'decidedOn', ${dayOfAnswer}) ORDER BY place), '[]')
  FROM (SELECT DISTINCT ON (place) * FROM place_answer WHERE tour_id = tour.id ORDER BY place, id DESC) newest WHERE rules_of IS NOT NULL)`;

/** What is on file of a tour beside what its file says: where its venues are, and whose rules hold where a place has none. SQL columns. */
const placesBeside = `${countriesOfVenues} AS countries, ${answersInForce} AS answers`;

interface TourWithPlaces {
  readonly data: Tour;
  readonly countries: readonly string[];
  readonly answers: readonly PlaceAnswer[];
}

/** Where a venue on record says that it is, its law holds, whatever the tour names; an answer of the safety officer stands beside. */
const withPlaces = ({ data, countries, answers }: TourWithPlaces): Tour => ({
  ...data,
  jurisdictions: [...new Set([...data.jurisdictions, ...countries])],
  ...(answers.length === 0 ? {} : { placeAnswers: answers }),
});

/** Tours with where they go and whose rules hold there, as they stand now; one that is not on file is left out. */
export async function loadTours(db: Queryable, ids: readonly string[]): Promise<readonly Tour[]> {
  const rows = await rowsOf<TourWithPlaces>(db, `SELECT data, ${placesBeside} FROM tour WHERE id = ANY($1)`, [ids]);
  return rows.map(withPlaces);
}
