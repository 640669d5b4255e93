import type { EntityManager } from 'typeorm';
import { type BadInput, canonicalJson } from '#kernel';
import type { CartModel, Catalogue, Item, Kit, ModelKind } from '#tour-file';
import { itemColumns } from './kit.reader.js';
import { ExaminationRow, IncidentRow, ItemRow, ModelRow, RuleRow } from './rows.js';

/**
 * Adds a kit to the register: what is new comes in, what is on file already must be the same, or the whole is refused by name.
 * `existing` is the register as it stands.
 */
export async function addKit(manager: EntityManager, existing: Kit, kit: Kit, recordedBy: string, at: Date): Promise<readonly BadInput[]> {
  const faults: BadInput[] = [];
  const differs = (field: string, name: string, here: unknown, there: unknown): boolean => {
    if (here === undefined) return false;
    if (canonicalJson(normal(here)) !== canonicalJson(normal(there)))
      faults.push({ field, value: name, wanted: `the same ${name} as is on file, or another name` });
    return true;
  };
  for (const kind of Object.keys(kit.catalogue) as (keyof Catalogue)[]) {
    const known = new Map(existing.catalogue[kind].map((each) => [each.model, each] as const));
    const fresh = kit.catalogue[kind].filter(
      (each, index) => !differs(`catalogue.${kind}[${index}]`, each.model, known.get(each.model), each),
    );
    if (fresh.length > 0) await manager.getRepository(ModelRow).insert(fresh.map((data) => ({ kind, model: data.model, data })));
  }
  const rules = [
    ...kit.systems.map((data) => ({ kind: 'system' as const, id: data.id, data })),
    ...kit.examinationRules.map((data) => ({
      kind: 'examination' as const,
      id: `${data.jurisdiction}: ${data.kinds.join(', ')}: ${data.intervals.join(', ')}`,
      data,
    })),
    ...kit.loadRules.map((data) => ({ kind: 'load' as const, id: data.id, data })),
  ];
  const onFile = new Map((await manager.getRepository(RuleRow).find()).map((each) => [`${each.kind} ${each.id}`, each.data]));
  const freshRules = rules.filter((each) => !differs(`rules`, each.id, onFile.get(`${each.kind} ${each.id}`), each.data));
  if (freshRules.length > 0) await manager.getRepository(RuleRow).insert(freshRules);
  const items = new Map(existing.items.map((each) => [each.id, each]));
  const freshItems = kit.items.filter((each, index) => !differs(`items[${index}]`, each.id, items.get(each.id), each));
  if (faults.length === 0) await insertItems(manager, freshItems, recordedBy, at);
  return faults;
}

/** Writes models whole; a known one keeps its place. */
export async function putModels(manager: EntityManager, kind: ModelKind, models: readonly { readonly model: string }[]): Promise<void> {
  for (const data of models) await manager.getRepository(ModelRow).upsert({ kind, model: data.model, data }, ['kind', 'model']);
}

/** A cart without boxes may say so or not. */
function normal(value: unknown): unknown {
  const { stack, ...rest } = value as { stack?: string[] };
  return stack === undefined || stack.length === 0 ? rest : value;
}

export async function insertItems(manager: EntityManager, items: readonly Item[], recordedBy: string, at: Date): Promise<void> {
  const place = new Map(
    items.flatMap((cart) => (cart.stack ?? []).map((serial, slot) => [serial, { stackCart: cart.id, stackSlot: slot + 1 }] as const)),
  );
  for (let start = 0; start < items.length; start += 1000) {
    const part = items.slice(start, start + 1000);
    await manager
      .getRepository(ItemRow)
      .insert(part.map((item) => ({ ...itemColumns(item), stackCart: null, stackSlot: null, ...place.get(item.id) })) as object[]);
    const examinations = part.flatMap((item) =>
      item.examinations.map((data) => ({ itemId: item.id, data, recordedBy, recordedAt: at, supersedes: null })),
    );
    if (examinations.length > 0) await manager.getRepository(ExaminationRow).insert(examinations);
    const incidents = part.flatMap((item) => item.events.map(({ on, what }) => ({ itemId: item.id, onDay: on, what })));
    if (incidents.length > 0) await manager.getRepository(IncidentRow).insert(incidents);
  }
}

/** Writes the item's own columns; where it stands and its examinations are written by their own acts. */
export async function changeItem(manager: EntityManager, item: Item): Promise<void> {
  await manager.getRepository(ItemRow).update({ id: item.id }, itemColumns(item) as object);
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

/** Writes which boxes stand on a cart, top first; what stood there before stands on the floor unless it is in the list. */
export async function writeStack(manager: EntityManager, cart: string, serials: readonly string[]): Promise<void> {
  const rows = manager.getRepository(ItemRow);
  await rows.update({ stackCart: cart }, { stackCart: null, stackSlot: null });
  for (const [slot, id] of serials.entries()) await rows.update({ id }, { stackCart: cart, stackSlot: slot + 1 });
}
