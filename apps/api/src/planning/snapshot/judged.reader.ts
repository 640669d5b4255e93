import type { Tour, TourFile } from '#tour-file';
import { loadItems } from './kit-snapshot.js';
import { type Queryable, rowsOf } from './queryable.js';
import { countriesOfVenues, withCountries } from './venue-countries.js';

/** What the gate judges items of a tour by. */
export type JudgedFile = Pick<TourFile, 'items' | 'examinationRules' | 'tour'>;

/** The items named, the rules in force and each of the tours as they stand now, by tour: three statements, however many tours. */
export async function loadJudged(
  db: Queryable,
  tourIds: readonly string[],
  ids: readonly string[],
): Promise<ReadonlyMap<string, JudgedFile>> {
  if (tourIds.length === 0) return new Map();
  const tours = await rowsOf<{ id: string; data: Tour; countries: string[] }>(
    db,
    `SELECT id, data, ${countriesOfVenues} AS countries FROM tour WHERE id = ANY($1)`,
    [tourIds],
  );
  const rules = await rowsOf<{ data: TourFile['examinationRules'][number] }>(
    db,
    `SELECT data FROM rule WHERE kind = 'examination' AND is_accepted ORDER BY place`,
  );
  const examinationRules = rules.map((each) => each.data);
  const items = await loadItems(db, ids);
  return new Map(tours.map((tour) => [tour.id, { items, examinationRules, tour: withCountries(tour) }]));
}
