import {
  type Catalogue,
  type Examination,
  type Item,
  type ItemKind,
  type ItemState,
  type Kit,
  type TourFile,
  modelKinds,
} from '#tour-file';
import { type Queryable, rowsOf } from './queryable.js';

interface ItemOnFile {
  readonly id: string;
  readonly kind: ItemKind;
  readonly model: string;
  readonly state: ItemState;
  readonly depot: string;
  readonly count: number | null;
  readonly inItem: string | null;
  readonly rest: object;
  readonly unaccepted: Item['unaccepted'] | null;
  readonly examinations: Examination[] | null;
  readonly incidents: Item['events'] | null;
  readonly stack: string[] | null;
}

/** The register in the shape of a tour file: what every plan is made from. With `ids` only those items. */
export async function loadKit(db: Queryable, ids?: readonly string[]): Promise<Kit> {
  const models = await rowsOf<{ kind: string; data: object }>(
    db,
    `SELECT kind, CASE WHEN is_accepted THEN data ELSE data || '{"unaccepted": true}' END AS data FROM model ORDER BY place`,
  );
  // Nobody is judged by an examination rule that waits; a load rule that waits is known as that.
  const rules = await rowsOf<{ kind: string; data: object }>(
    db,
    `SELECT kind, CASE WHEN kind = 'load' AND NOT is_accepted THEN data || '{"unaccepted": true}' ELSE data END AS data
     FROM rule WHERE kind <> 'examination' OR is_accepted ORDER BY place`,
  );
  const ofKind = <T>(kind: string) => rules.filter((each) => each.kind === kind).map((each) => each.data as T);
  return {
    catalogue: Object.fromEntries(
      modelKinds.map((kind) => [kind, models.filter((each) => each.kind === kind).map((each) => each.data)]),
    ) as unknown as Catalogue,
    systems: ofKind<TourFile['systems'][number]>('system'),
    examinationRules: ofKind<TourFile['examinationRules'][number]>('examination'),
    loadRules: ofKind<TourFile['loadRules'][number]>('load'),
    items: await loadItems(db, ids),
  };
}

/** The record of an examination without the days of incidents that were recorded after it: it cannot have answered those. */
export const asAnswered = `CASE WHEN data ? 'answers' THEN jsonb_set(data, '{answers}', (SELECT coalesce(jsonb_agg(day), '[]') FROM jsonb_array_elements(data->'answers') day
  WHERE NOT EXISTS (SELECT FROM incident later WHERE later.item_id = examination.item_id AND later.on_day::text = day #>> '{}' AND later.after_examination >= examination.id)))
  ELSE data END`;

/** What keeps an item from being used until the safety officer accepts it. */
const unaccepted = `CASE WHEN NOT item.is_accepted THEN 'item'
  WHEN (CASE item.kind WHEN 'box' THEN 'boxes' ELSE item.kind || 's' END, item.model) IN (SELECT kind, model FROM model WHERE NOT is_accepted) THEN 'model' END`;

/** All items, or those named, in the order in which they came on file; examinations that were corrected are left out. */
export async function loadItems(db: Queryable, ids?: readonly string[]): Promise<Item[]> {
  const rows = await rowsOf<ItemOnFile>(
    db,
    `SELECT item.id, item.kind, item.model, item.state, item.depot, item.count, item.in_item AS "inItem", item.rest, ${unaccepted} AS unaccepted,
       made.examinations, happened.incidents, stands.stack
     FROM item
     LEFT JOIN (SELECT item_id, jsonb_agg(${asAnswered} ORDER BY id) AS examinations FROM examination
                WHERE ($1::text[] IS NULL OR item_id = ANY($1))
                  AND NOT EXISTS (SELECT 1 FROM examination AS later WHERE later.supersedes = examination.id)
                GROUP BY item_id) AS made ON made.item_id = item.id
     LEFT JOIN (SELECT item_id, jsonb_agg(jsonb_build_object('on', on_day, 'what', what) ORDER BY id) AS incidents FROM incident
                WHERE ($1::text[] IS NULL OR item_id = ANY($1)) GROUP BY item_id) AS happened ON happened.item_id = item.id
     LEFT JOIN (SELECT stack_cart, array_agg(id ORDER BY stack_slot) AS stack FROM item
                WHERE stack_cart IS NOT NULL AND ($1::text[] IS NULL OR stack_cart = ANY($1)) GROUP BY stack_cart) AS stands ON stands.stack_cart = item.id
     WHERE $1::text[] IS NULL OR item.id = ANY($1)
     ORDER BY item.place`,
    [ids ?? null],
  );
  return rows.map(itemOf);
}

function itemOf({
  id,
  kind,
  model,
  state,
  depot,
  count,
  inItem,
  rest,
  unaccepted: waits,
  examinations,
  incidents,
  stack,
}: ItemOnFile): Item {
  return {
    id,
    kind,
    model,
    ...(count === null ? {} : { count }),
    state,
    depot,
    ...(inItem === null ? {} : { in: inItem }),
    ...(kind === 'cart' ? { stack: stack ?? [] } : {}),
    ...rest,
    ...(waits === null ? {} : { unaccepted: waits }),
    examinations: examinations ?? [],
    events: incidents ?? [],
  };
}
