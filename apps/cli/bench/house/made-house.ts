import { randomUUID } from 'node:crypto';
import type { DataSource } from 'typeorm';
import { seededRandom } from '#kernel';
import { type Item, type Tour, shiftDates } from '#tour-file';
import { workOutDates } from '../../../api/src/features/register/item-dates.writer.js';
import { insertItems } from '../../../api/src/features/register/kit.writer.js';

const depots = ['Ferry Lane', 'Northgate', 'Saltmarsh'];
const madeModels = 30;

/** Shares of the kinds in a made-up house, and the model of those that the demo tour brings. */
const shares: readonly (readonly [Item['kind'], number, string])[] = [
  ['box', 0.5, ''],
  ['cart', 0.12, 'Cart of four'],
  ['shackle', 0.12, 'Bow shackle 3.25'],
  ['case', 0.08, 'Workbox'],
  ['hoist', 0.08, 'Chain hoist 2.5 t'],
  ['sling', 0.06, 'Round sling 1 m'],
  ['grid', 0.02, 'Grid 14'],
  ['pin', 0.02, 'Link pin 12'],
];

/** So many items of a made-up house by a seed; every fourth cart carries four boxes. Their examinations are written by `fillHouse`. */
export function madeItems(count: number, seed: number): Item[] {
  const random = seededRandom(seed);
  const items = shares.flatMap(([kind, share, model]) =>
    Array.from({ length: Math.round(count * share) }, (_, index): Item => {
      const state = random() < 0.97 ? 'in service' : random() < 0.7 ? 'quarantined' : 'retired';
      return {
        ...{ id: `${kind.toUpperCase()}-${String(index + 1).padStart(6, '0')}`, kind, state, examinations: [], events: [] },
        model: model || `Made box ${String(1 + Math.floor(random() * madeModels)).padStart(2, '0')}`,
        depot: depots[Math.floor(random() * depots.length)]!,
        ...(kind === 'pin' ? { count: 40 + Math.floor(random() * 400) } : {}),
        ...(state === 'in service' ? {} : { reason: ['driver open', 'handle bent', 'label gone', 'cable cut'][Math.floor(random() * 4)]! }),
      };
    }),
  );
  const boxes = items.filter((item) => item.kind === 'box');
  let next = 0;
  return items.map((item, index) =>
    item.kind === 'cart' && index % 4 === 0 && next + 4 <= boxes.length
      ? { ...item, stack: boxes.slice(next, (next += 4)).map((box) => box.id) }
      : item,
  );
}

/** The ten years are written in so many statements: one for all would outlast what a statement may take. */
const parts = 20;

/** Ten years of examinations at the interval of each kind (days), the newest up to one interval ago; every fiftieth item has missed its last. */
const tenYears = `INSERT INTO examination (item_id, data, recorded_by, recorded_at)
SELECT item.id, jsonb_build_object('on', day::text, 'outcome', 'pass', 'examiner', 'Northgate Inspection (invented)', 'report', 'NI-' || number || '-' || item.id), 'Ines Aldous', day
FROM item JOIN (VALUES ('hoist', 365), ('grid', 182), ('shackle', 182), ('sling', 182), ('pin', 182)) rule (kind, step) ON rule.kind = item.kind
CROSS JOIN LATERAL generate_series(3650 / step, CASE WHEN place % 50 = 0 THEN 2 ELSE 1 END, -1) number
CROSS JOIN LATERAL (SELECT $1::date - ((number - 1) * step + (place % step)::int) AS day) dated
WHERE item.place % ${parts} = $2 AND NOT EXISTS (SELECT FROM examination old WHERE old.item_id = item.id)`;

const tenYearsOfEvents = `INSERT INTO event (at, who, what, sentence, item_id)
SELECT $1::date - ((9 - number) * 400 || ' days')::interval, 'Wren Castellan', 'changed', 'Came back and was looked at.', item.id FROM item, generate_series(1, 8) number WHERE item.place % ${parts} = $2`;

/** Fills a house in which the demo tour is on file with `count` items, their ten years, and a tour a thousand items with what it holds and its plans. */
export async function fillHouse(dataSource: DataSource, count: number, today: string): Promise<void> {
  const { manager } = dataSource;
  await manager.query(
    `INSERT INTO model (kind, model, data) SELECT 'boxes', name, data || jsonb_build_object('model', name) FROM model,
     (SELECT 'Made box ' || lpad(number::text, 2, '0') AS name FROM generate_series(1, ${madeModels}) number) made WHERE kind = 'boxes' AND model.model = 'Plover'`,
  );
  const items = madeItems(count, 1);
  for (let start = 0; start < items.length; start += 20_000)
    await insertItems(
      manager,
      items.slice(start, start + 20_000).map(({ stack: _stack, ...item }) => item),
      { name: 'made' },
      new Date(`${today}T00:00:00Z`),
    );
  const stacks = items.flatMap((cart) => (cart.stack ?? []).map((box, slot) => ({ box, cart: cart.id, slot: slot + 1 })));
  await manager.query(
    `UPDATE item SET stack_cart = given.cart, stack_slot = given.slot FROM unnest($1::text[], $2::text[], $3::int[]) AS given (id, cart, slot) WHERE item.id = given.id`,
    [stacks.map((each) => each.box), stacks.map((each) => each.cart), stacks.map((each) => each.slot)],
  );
  for (let part = 0; part < parts; part++) {
    await manager.query(tenYears, [today, part]);
    await manager.query(tenYearsOfEvents, [today, part]);
  }
  await workOutDates(manager, today);
  await addTours(
    dataSource,
    Math.max(1, Math.round(count / 1000)),
    items.filter((item) => item.kind === 'box').map((item) => item.id),
  );
  await manager.query('DELETE FROM input_change');
  await manager.query(
    `INSERT INTO plan_freshness (plan_id, cluster, seen, changes, floor_fits) SELECT id, this_cluster(), pg_current_snapshot(), '[]', true FROM pack_plan ON CONFLICT DO NOTHING`,
  );
  await manager.query('VACUUM ANALYZE');
}

/** Copies of the demo tour with its plans, spread from nine years ago to a year ahead; each holds a hundred boxes. */
async function addTours(dataSource: DataSource, count: number, boxes: readonly string[]): Promise<void> {
  const [demo]: { id: string; data: Tour }[] = await dataSource.query(`SELECT id, data FROM tour ORDER BY prep_from LIMIT 1`);
  for (let index = 0; index < count; index++) {
    const id = `made-${index + 1}`;
    const days = Math.round(-9 * 365 + ((index + 1) * 10 * 365) / count);
    const data = { ...(shiftDates(demo!.data as never, days) as unknown as Tour), id, name: `Made tour ${index + 1}` };
    await dataSource.query(`INSERT INTO tour (id, name, prep_from, return_to, version, data) VALUES ($1, $2, $3, $4, 1, $5)`, [
      ...[id, data.name, data.prepFrom, data.returnTo, JSON.stringify(data)],
    ]);
    await dataSource.query(
      `INSERT INTO pack_plan (id, tour_id, show_id, state, revision, made_at, made_by, released_at, released_by, plan)
       SELECT gen_random_uuid(), $1, show_id, 'released', 'A', now(), made_by, now(), made_by, plan FROM pack_plan WHERE tour_id = $2 AND state <> 'superseded'`,
      [id, demo!.id],
    );
    const own = boxes.slice((index * 100) % Math.max(1, boxes.length - 100)).slice(0, 100);
    await dataSource.query(
      `INSERT INTO booking (id, item_id, holder_kind, holder_id, tour_name, period) SELECT id, item, 'tour', $6, $3, daterange($4, $5, '[]') FROM unnest($1::uuid[], $2::text[]) held (id, item)`,
      [own.map(() => randomUUID()), own, data.name, data.prepFrom, data.returnTo, id],
    );
  }
}
