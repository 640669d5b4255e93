import { type BarredItem, barredItems } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { loadItems } from './kit-snapshot.js';
import { type Queryable, rowsOf } from './queryable.js';
import { loadTours } from './tour-places.js';

/** What the gate judges items of a tour by. */
export type JudgedFile = Pick<TourFile, 'items' | 'examinationRules' | 'tour'>;

/** The items named, the rules in force and each of the tours as they stand now, by tour: three statements, however many tours. */
export async function loadJudged(
  db: Queryable,
  tourIds: readonly string[],
  ids: readonly string[],
): Promise<ReadonlyMap<string, JudgedFile>> {
  if (tourIds.length === 0) return new Map();
  const tours = await loadTours(db, tourIds);
  const examinationRules = await rulesInForce(db);
  const items = await loadItems(db, ids);
  return new Map(tours.map((tour) => [tour.id, { items, examinationRules, tour }]));
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
  const jurisdictions = [...new Set(examinationRules.map((each) => each.jurisdiction))];
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
