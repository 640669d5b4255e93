import type { EntityManager } from 'typeorm';
import type { BadInput } from '#kernel';
import type { CartModel, Examination, Item, ModelKind } from '#tour-file';
import type { NewEvent } from '../../platform/event-log.js';
import { type Author, authorId } from '../../platform/sign-in/person.js';
import { itemColumns } from './kit.reader.js';
import { ExaminationRow, IncidentRow, ItemRow, ModelRow } from './rows.js';

/** Writes models whole; a known one keeps its place, and stays accepted or not as it is. */
export async function putModels(manager: EntityManager, kind: ModelKind, models: readonly { readonly model: string }[]): Promise<void> {
  for (const data of models) await manager.getRepository(ModelRow).upsert({ kind, model: data.model, data }, ['kind', 'model']);
}

/** Nothing of these models is used until the safety officer accepts them. */
export async function leaveToAccept(manager: EntityManager, kind: ModelKind, models: readonly string[]): Promise<void> {
  await manager.query('UPDATE model SET is_accepted = false WHERE kind = $1 AND model = ANY($2)', [kind, models]);
}

/** Puts items on file, however many: one statement a table, with lists as parameters. */
export async function insertItems(manager: EntityManager, items: readonly Item[], recordedBy: Author, at: Date): Promise<void> {
  const stacks = items.flatMap((cart) => (cart.stack ?? []).map((serial, slot) => [serial, { cart: cart.id, slot: slot + 1 }] as const));
  const standsOn = new Map(stacks);
  const rows = items.map(itemColumns);
  await manager.query(
    `INSERT INTO item (id, kind, model, state, depot, count, in_item, stack_cart, stack_slot, rest, is_accepted)
     SELECT id, kind, model, state, depot, count, in_item, stack_cart, stack_slot, rest, is_accepted FROM
       unnest($1::text[], $2::text[], $3::text[], $4::text[], $5::text[], $6::int[], $7::text[], $8::text[], $9::int[], $10::jsonb[], $11::boolean[])
       WITH ORDINALITY AS given (id, kind, model, state, depot, count, in_item, stack_cart, stack_slot, rest, is_accepted, number) ORDER BY number`,
    [
      ...(['id', 'kind', 'model', 'state', 'depot', 'count', 'inItem'] as const).map((column) => rows.map((row) => row[column])),
      rows.map((row) => standsOn.get(row.id)?.cart ?? null),
      rows.map((row) => standsOn.get(row.id)?.slot ?? null),
      rows.map((row) => JSON.stringify(row.rest)),
      items.map((item) => item.unaccepted !== 'item'),
    ],
  );
  await insertExaminations(
    manager,
    items.flatMap((item) => item.examinations.map((data) => ({ item: item.id, data }))),
    recordedBy,
    at,
  );
  const incidents = items.flatMap((item) => item.events.map((event) => ({ item: item.id, ...event })));
  await manager.query(
    `INSERT INTO incident (item_id, on_day, what)
     SELECT item_id, on_day, what FROM unnest($1::text[], $2::date[], $3::text[]) WITH ORDINALITY AS given (item_id, on_day, what, number) ORDER BY number`,
    [incidents.map((each) => each.item), incidents.map((each) => each.on), incidents.map((each) => each.what)],
  );
}

/** An examination of an item; of a correction also the record that it corrects, and why. */
interface NewExamination {
  readonly item: string;
  readonly data: Examination;
  readonly supersedes?: string | null;
  readonly reason?: string | null;
}

/** Puts examinations on record in the order given; gives their ids. */
export async function insertExaminations(
  manager: EntityManager,
  examinations: readonly NewExamination[],
  recordedBy: Author,
  at: Date,
): Promise<readonly string[]> {
  const rows: { id: string }[] = await manager.query(
    `INSERT INTO examination (item_id, data, recorded_by, recorded_by_id, recorded_at, supersedes, reason)
     SELECT item_id, data, $3, $4, $5, supersedes, reason FROM unnest($1::text[], $2::jsonb[], $6::bigint[], $7::text[])
       WITH ORDINALITY AS given (item_id, data, supersedes, reason, number) ORDER BY number RETURNING id`,
    [
      examinations.map((each) => each.item),
      examinations.map((each) => JSON.stringify(each.data)),
      recordedBy.name,
      authorId(recordedBy),
      at,
      examinations.map((each) => each.supersedes ?? null),
      examinations.map((each) => each.reason ?? null),
    ],
  );
  return rows.map((row) => row.id);
}

/** Writes the items' own columns; where they stand and their examinations are written by their own acts. */
export async function changeItems(manager: EntityManager, items: readonly Item[]): Promise<void> {
  const rows = items.map(itemColumns);
  await manager.query(
    `UPDATE item SET kind = given.kind, model = given.model, state = given.state, depot = given.depot, count = given.count, in_item = given.in_item, rest = given.rest
     FROM unnest($1::text[], $2::text[], $3::text[], $4::text[], $5::text[], $6::int[], $7::text[], $8::jsonb[])
       AS given (id, kind, model, state, depot, count, in_item, rest) WHERE item.id = given.id`,
    [
      ...(['id', 'kind', 'model', 'state', 'depot', 'count', 'inItem'] as const).map((column) => rows.map((row) => row[column])),
      rows.map((row) => JSON.stringify(row.rest)),
    ],
  );
}

/** Takes a box off the top of a cart (or the floor) and sets it on top of another (or the floor); tells why it cannot be done. */
export async function moveBox(manager: EntityManager, box: string, from: string, to: string): Promise<BadInput | undefined> {
  const rows = manager.getRepository(ItemRow);
  const stackOf = async (cart: string) =>
    (await rows.find({ where: { stackCart: cart }, order: { stackSlot: 'ASC' } })).map((each) => each.id);
  const row = await rows.findOneBy({ id: box, kind: 'box' });
  const standsOn = row?.stackCart ?? 'floor';
  if (!row || standsOn !== from) return { field: 'box', value: box, wanted: `a box on ${from}; ${box} is on ${standsOn}` };
  const source = from === 'floor' ? [] : await stackOf(from);
  if (from !== 'floor' && source[0] !== box) return { field: 'box', value: box, wanted: `the top box of ${from}, which is ${source[0]}` };
  const target = to === 'floor' ? [] : await stackOf(to);
  const cart = to === 'floor' ? null : await rows.findOneBy({ id: to, kind: 'cart' });
  if (to !== 'floor') {
    if (!cart) return { field: 'to', value: to, wanted: 'a cart on file or the floor' };
    const { capacity, carries } = (await manager.getRepository(ModelRow).findOneByOrFail({ kind: 'carts', model: cart.model }))
      .data as CartModel;
    if (target.length >= capacity) return { field: 'to', value: to, wanted: `a cart with room; ${to} holds ${capacity}` };
    if (carries && !carries.includes(row.model)) return { field: 'to', value: to, wanted: `a cart that may carry ${row.model}` };
  }
  await rows.update({ id: box }, { stackCart: null, stackSlot: null });
  if (from !== 'floor') await writeStack(manager, from, source.slice(1));
  if (to !== 'floor') await writeStack(manager, to, [box, ...target]);
  return undefined;
}

/** Out of service from now on; the caller records who did it. */
export async function quarantineItem(manager: EntityManager, id: string, reason: string): Promise<void> {
  const rows = manager.getRepository(ItemRow);
  const row = await rows.findOneByOrFail({ id });
  await rows.update({ id }, { state: 'quarantined', rest: { ...row.rest, reason } });
}

/** Blocks an item until it is examined; the caller records who said so. */
export async function insertIncident(manager: EntityManager, itemId: string, onDay: string, what: string): Promise<void> {
  const [newest] = await manager.getRepository(ExaminationRow).find({ where: { itemId }, order: { id: 'DESC' }, take: 1 });
  await manager.getRepository(IncidentRow).insert({ itemId, onDay, what, afterExamination: newest?.id ?? '0' });
}

/** A box that stands elsewhere now; null is the floor. */
export interface PlaceChange {
  readonly box: string;
  readonly from: string | null;
  readonly to: { readonly cart: string; readonly slot: number } | null;
}

/** Writes which boxes stand on a cart, top first; what stood there before stands on the floor unless it is in the list. Gives every box that moved. */
export const writeStack = (manager: EntityManager, cart: string, serials: readonly string[]): Promise<readonly PlaceChange[]> =>
  writeStacks(manager, [{ cart, serials }]);

/** The same for many carts at once. */
export async function writeStacks(
  manager: EntityManager,
  stacks: readonly { readonly cart: string; readonly serials: readonly string[] }[],
): Promise<readonly PlaceChange[]> {
  const concerned = [stacks.map((each) => each.cart), stacks.flatMap((each) => each.serials)];
  const before = await manager.query<{ id: string; cart: string; slot: number }[]>(
    `SELECT id, stack_cart AS cart, stack_slot AS slot FROM item WHERE stack_cart = ANY($1) OR id = ANY($2) AND stack_cart IS NOT NULL ORDER BY id`,
    concerned,
  );
  await manager.query(
    `UPDATE item SET stack_cart = NULL, stack_slot = NULL WHERE stack_cart = ANY($1) OR id = ANY($2) AND stack_cart IS NOT NULL`,
    concerned,
  );
  const places = stacks.flatMap(({ cart, serials }) => serials.map((id, slot) => ({ id, cart, slot: slot + 1 })));
  await manager.query(
    `UPDATE item SET stack_cart = given.cart, stack_slot = given.slot
     FROM unnest($1::text[], $2::text[], $3::int[]) AS given (id, cart, slot) WHERE item.id = given.id`,
    [places.map((each) => each.id), places.map((each) => each.cart), places.map((each) => each.slot)],
  );
  return changesOf(before, places);
}

interface Stands {
  readonly id: string;
  readonly cart: string;
  readonly slot: number;
}

function changesOf(before: readonly Stands[], after: readonly Stands[]): readonly PlaceChange[] {
  const was = new Map(before.map((each) => [each.id, each]));
  const is = new Map(after.map((each) => [each.id, each]));
  const moved = after
    .filter(({ id, cart, slot }) => was.get(id)?.cart !== cart || was.get(id)?.slot !== slot)
    .map(({ id, cart, slot }) => ({ box: id, from: was.get(id)?.cart ?? null, to: { cart, slot } }));
  const takenOff = before.filter(({ id }) => !is.has(id)).map(({ id, cart }) => ({ box: id, from: cart, to: null }));
  return [...moved, ...takenOff];
}

/** What each box has on its record of a change of place. */
export const eventOfPlace = ({ box, from, to }: PlaceChange): NewEvent =>
  to === null
    ? { what: 'stacked', itemId: box, sentence: `Taken off ${from}: stands on the floor.`, place: 'floor' }
    : { what: 'stacked', itemId: box, sentence: `Stands on ${to.cart}, slot ${to.slot}.`, place: `${to.cart} ${to.slot}` };
