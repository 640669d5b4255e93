import { type BarredItem, barredItems } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { loadItems } from './kit-snapshot.js';
import { type Queryable, rowsOf } from './queryable.js';
import { loadTours } from './tour-places.js';

/** A tour with the examination rules in force: what the gate judges items by. */
export type RuledTour = Pick<TourFile, 'examinationRules' | 'tour'>;

/** Each of the tours as it stands now with the rules in force, by tour: two statements, however many tours. */
export async function loadRuledTours(db: Queryable, tourIds: readonly string[]): Promise<ReadonlyMap<string, RuledTour>> {
  if (tourIds.length === 0) return new Map();
  const tours = await loadTours(db, tourIds);
  const examinationRules = await rulesInForce(db);
  return new Map(tours.map((tour) => [tour.id, { examinationRules, tour }]));
}

/** Of each list of items what the gate bars on its days, wherever rules are on file: the strictest of all. */
export async function barredAnywhere(
  db: Queryable,
  wanted: readonly { readonly items: readonly string[]; readonly from: string; readonly to: string }[],
): Promise<readonly (readonly BarredItem[])[]> {
  const ids = [...new Set(wanted.flatMap((each) => each.items))];
  if (ids.length === 0) return wanted.map(() => []);
  const examinationRules = await rulesInForce(db);
  const items = await loadItems(db, ids);
  const ruling = examinationRules.filter((each) => each.intervals.length > 0);
  const jurisdictions = [...new Set(ruling.map((each) => each.jurisdiction))];
  return wanted.map(({ items: named, from, to }) => barredItems({ items, examinationRules, tour: { jurisdictions } }, named, { from, to }));
}

/** Examination rules that hold; those that wait for the safety officer ask nothing yet. */
export async function rulesInForce(db: Queryable): Promise<TourFile['examinationRules']> {
  const rules = await rowsOf<{ data: TourFile['examinationRules'][number] }>(
    db,
    `SELECT data FROM rule WHERE kind = 'examination' AND is_accepted ORDER BY place`,
  );
  return rules.map((each) => each.data);
}
