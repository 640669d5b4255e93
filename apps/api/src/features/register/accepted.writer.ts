import type { EntityManager } from 'typeorm';
import type { Examination, Item } from '#tour-file';
import { loadItems } from '../../planning/snapshot/kit-snapshot.js';
import type { Author } from '../../platform/sign-in/person.js';
import { changeItems, insertExaminations } from './kit.writer.js';
import { ModelRow, RuleRow } from './rows.js';

/** A field with the value that was accepted; undefined: it says nothing from now on. An empty field is the thing as a whole. */
export interface AcceptedField {
  readonly field: string;
  readonly wanted: unknown;
}

const isWhole = ({ field }: AcceptedField): boolean => field === '';

function withFields<T extends object>(data: T, fields: readonly AcceptedField[]): T {
  const next = { ...data } as Record<string, unknown>;
  for (const { field, wanted } of fields.filter((each) => !isWhole(each))) {
    if (wanted === undefined || wanted === null) delete next[field];
    else next[field] = wanted;
  }
  return next as T;
}

/** The model from now on with what was accepted of it. */
export async function acceptModel(manager: EntityManager, subject: string, fields: readonly AcceptedField[]): Promise<void> {
  const at = subject.indexOf('/');
  const key = { kind: subject.slice(0, at), model: subject.slice(at + 1) };
  const rows = manager.getRepository(ModelRow);
  const row = await rows.findOneByOrFail(key);
  await rows.update(key, { data: withFields(row.data, fields), isAccepted: row.isAccepted || fields.some(isWhole) });
}

export async function acceptRule(
  manager: EntityManager,
  kind: 'load' | 'examination',
  id: string,
  fields: readonly AcceptedField[],
): Promise<void> {
  const rows = manager.getRepository(RuleRow);
  const row = await rows.findOneByOrFail({ kind, id });
  await rows.update({ kind, id }, { data: withFields(row.data, fields), isAccepted: row.isAccepted || fields.some(isWhole) });
}

/** The data of a system, approved as they are. */
export async function approveSystem(manager: EntityManager, id: string, data: object | null, by: string, on: string): Promise<void> {
  const rows = manager.getRepository(RuleRow);
  const row = await rows.findOneByOrFail({ kind: 'system', id });
  await rows.update({ kind: 'system', id }, { data: { ...(data ?? row.data), approved: { by, on } } });
}

/** Items from now on with what was accepted of each. */
export async function acceptItems(manager: EntityManager, accepted: ReadonlyMap<string, readonly AcceptedField[]>): Promise<void> {
  const changed = [...accepted].filter(([, fields]) => !fields.every(isWhole)).map(([id]) => id);
  const items = changed.length === 0 ? [] : await loadItems(manager, changed);
  await changeItems(
    manager,
    items.map((item) => backInService(withFields<Item>(item, accepted.get(item.id) ?? []), item)),
  );
  const whole = [...accepted].filter(([, fields]) => fields.some(isWhole)).map(([id]) => id);
  await manager.query('UPDATE item SET is_accepted = true WHERE id = ANY($1) AND NOT is_accepted', [whole]);
}

/** What a person wrote of the state before goes with it. */
function backInService(item: Item, was: Item): Item {
  if (item.state === was.state || item.state !== 'in service') return item;
  const { reason: _reason, ...rest } = item;
  return rest;
}

/** A record that cannot be accepted in this way. */
export interface ContradictedRecord {
  readonly item: string;
  readonly on: string;
}

/** Records that a failed one of the same day on file contradicts: which came last that day, the safety officer says by hand. */
export async function contradicted(
  manager: EntityManager,
  records: readonly { readonly item: string; readonly data: Examination }[],
): Promise<readonly ContradictedRecord[]> {
  return manager.query(
    `SELECT DISTINCT given.item, given.day AS "on" FROM unnest($1::text[], $2::text[]) AS given (item, day) JOIN examination failed
       ON failed.item_id = given.item AND failed.data->>'on' = given.day AND failed.data->>'outcome' = 'fail'
       AND NOT EXISTS (SELECT FROM examination later WHERE later.supersedes = failed.id)`,
    [records.map((each) => each.item), records.map((each) => each.data.on)],
  );
}

export async function acceptRecords(
  manager: EntityManager,
  records: readonly { readonly item: string; readonly data: Examination }[],
  who: Author,
  at: Date,
): Promise<void> {
  await insertExaminations(
    manager,
    records.map(({ item, data }) => ({ item, data })),
    who,
    at,
  );
}
