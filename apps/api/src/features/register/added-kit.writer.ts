import type { EntityManager } from 'typeorm';
import { type BadInput, canonicalJson } from '#kernel';
import { guardOf, isNewRuleCautious } from '#editions';
import { examinationFaults } from '#records';
import type { Catalogue, ExaminationRule, Item, Kit } from '#tour-file';
import type { Author } from '../../platform/sign-in/person.js';
import { type NewProposal, handOf, propose, subjectOfModel } from '../edition/edition.writer.js';
import { holdNewItems } from './held-items.writer.js';
import { insertItems } from './kit.writer.js';
import { ModelRow, RuleRow } from './rows.js';

/** What became of a kit: nothing with faults, else what of it waits. */
export interface AddedKit {
  readonly faults: readonly BadInput[];
  readonly waits: readonly NewProposal[];
  /** Items that were not on file before. */
  readonly added: readonly string[];
}

/**
 * Adds a kit to the register: what is new comes in, what is on file already must be the same, or the whole is refused by name, with the fields that differ.
 * Where an item stands and how often it was used is not for a file to say: the register keeps it.
 * `existing` is the register as it stands. What a kit says for itself waits for the safety officer unless it is the house's own set-up.
 */
export async function addKit(
  manager: EntityManager,
  existing: Kit,
  kit: Kit,
  recordedBy: Author,
  { at, day, latest }: { readonly at: Date; readonly day: string; readonly latest: string },
): Promise<AddedKit> {
  const faults: BadInput[] = [];
  const waits: NewProposal[] = [];
  const isHeld = handOf(recordedBy) === 'other';
  const differs = (field: string, name: string, here: readonly unknown[], there: unknown): boolean => {
    if (here.every((each) => each === undefined)) return false;
    const given = normal(there);
    const apart = here.flatMap((each) => (each === undefined ? [] : [fieldsApart(normal(each), given)]));
    if (apart.every((fields) => fields.length > 0))
      faults.push({ field, value: name, wanted: `the same ${name} as is on file (${apart[0]?.join(', ')} differs), or another name` });
    return true;
  };
  for (const kind of Object.keys(kit.catalogue) as (keyof Catalogue)[]) {
    const known = new Map(existing.catalogue[kind].map((each) => [each.model, each] as const));
    const fresh = kit.catalogue[kind].filter(
      (each, index) => !differs(`catalogue.${kind}[${index}]`, each.model, [known.get(each.model)], each),
    );
    const isGuarded = isHeld && guardOf(kind) !== null;
    if (fresh.length > 0)
      await manager
        .getRepository(ModelRow)
        .insert(fresh.map((data) => ({ kind, model: data.model, data: withoutMarks(data), isAccepted: !isGuarded })));
    if (isGuarded)
      for (const data of fresh)
        waits.push({ kind: 'model', subject: subjectOfModel(kind, data.model), field: '', wanted: withoutMarks(data) });
  }
  waits.push(...(await addRules(manager, existing, kit, isHeld, (id, here, there) => differs('rules', id, [here], there))));
  const items = new Map(existing.items.map((each) => [each.id, each]));
  const proposed = isHeld ? await asProposed(manager, existing.items) : new Map<string, Item>();
  const freshItems = kit.items.filter(
    (each, index) => !differs(`items[${index}]`, each.id, [items.get(each.id), proposed.get(each.id)], each),
  );
  if (isHeld) faults.push(...recordFaults(freshItems, kit.items, latest));
  if (faults.length > 0) return { faults, waits: [], added: [] };
  const held = isHeld ? await holdNewItems(manager, existing, freshItems, day) : { items: freshItems.map(withoutMarks), waits: [] };
  await insertItems(manager, held.items, recordedBy, at);
  waits.push(...held.waits);
  await propose(manager, recordedBy, at, '', waits);
  return { faults, waits, added: freshItems.map((each) => each.id) };
}

/** What a record needs to be looked at by anybody. */
function recordFaults(items: readonly Item[], all: readonly Item[], latest: string): BadInput[] {
  const at = new Map(all.map((each, index) => [each.id, index]));
  return items.flatMap((item) =>
    item.examinations.flatMap((record, index) =>
      examinationFaults(record, latest, null)
        .filter((fault) => record.outcome === 'pass' || fault.field === 'on')
        .map((fault) => ({ ...fault, field: `items[${at.get(item.id)}].examinations[${index}].${fault.field}` })),
    ),
  );
}

type Differs = (id: string, here: unknown, there: unknown) => boolean;

/** Rules that are new. A system waits by itself: nobody but the safety officer approves one. */
async function addRules(manager: EntityManager, existing: Kit, kit: Kit, isHeld: boolean, differs: Differs): Promise<NewProposal[]> {
  const rules = [
    ...kit.systems.map((data) => ({ kind: 'system' as const, id: data.id, data: isHeld ? withoutMarks(data) : data })),
    ...kit.examinationRules.map((data) => ({ kind: 'examination' as const, id: idOfRule(data), data })),
    ...kit.loadRules.map((data) => ({ kind: 'load' as const, id: data.id, data: withoutMarks(data) })),
  ];
  const onFile = new Map((await manager.getRepository(RuleRow).find()).map((each) => [`${each.kind} ${each.id}`, each.data]));
  const fresh = rules
    .filter((each) => !differs(each.id, onFile.get(`${each.kind} ${each.id}`), each.data))
    .map((each) => ({ ...each, isAccepted: !isHeld || each.kind === 'system' || isCautious(each.data, existing) }));
  if (fresh.length > 0) await manager.getRepository(RuleRow).insert(fresh);
  if (!isHeld) return [];
  return fresh
    .filter((each) => !each.isAccepted || each.kind === 'system')
    .map(({ kind, id, data }) => ({
      kind: kind === 'system' ? 'system' : (`${kind} rule` as const),
      subject: id,
      field: '',
      wanted: data,
    }));
}

const isCautious = (data: object, { examinationRules }: Kit): boolean =>
  'intervals' in data && isNewRuleCautious(data as ExaminationRule, examinationRules);

/** Rules of one jurisdiction for the same kinds and intervals are one rule. */
export const idOfRule = ({ jurisdiction, kinds, intervals, basis, check }: ExaminationRule): string =>
  `${jurisdiction}: ${kinds.join(', ')}: ${intervals.join(', ')}${basis === undefined || basis === 'time' ? '' : basis}${check === undefined ? '' : ` (${check})`}`;

/** Items with what waits of them, as the file that brought them has them. */
async function asProposed(manager: EntityManager, items: readonly Item[]): Promise<ReadonlyMap<string, Item>> {
  const rows: { kind: string; subject: string; field: string; wanted: unknown }[] = await manager.query(
    `SELECT kind, subject, field, wanted FROM proposal WHERE state = 'proposed' AND kind IN ('item', 'record') AND subject = ANY($1) ORDER BY id`,
    [items.map((each) => each.id)],
  );
  const all = new Map(items.map((each) => [each.id, each]));
  const waiting = new Map<string, Item>();
  for (const { kind, subject, field, wanted } of rows) {
    const item = waiting.get(subject) ?? all.get(subject);
    if (!item || field === '') continue;
    waiting.set(
      subject,
      kind === 'record'
        ? { ...item, examinations: [...item.examinations, wanted as Item['examinations'][number]] }
        : { ...item, [field]: wanted },
    );
  }
  return waiting;
}

const withoutMarks = <T extends object>(data: T): T => {
  const { approved: _approved, unaccepted: _unaccepted, ...rest } = data as { approved?: unknown; unaccepted?: unknown };
  return rest as T;
};

/** Who approved or accepted is of this house, and so is where an item stands, how often it was used, and how kit of others was handed over; records come in any order. */
function normal(value: unknown): Readonly<Record<string, unknown>> {
  const { stack: _stack, in: _in, uses: _uses, lent: _lent, examinations, ...rest } = withoutMarks(value as Partial<Item>);
  return { ...rest, ...(examinations ? { examinations: examinations.map((each) => canonicalJson(each)).sort() } : {}) };
}

const fieldsApart = (a: Readonly<Record<string, unknown>>, b: Readonly<Record<string, unknown>>): string[] =>
  [...new Set([...Object.keys(a), ...Object.keys(b)])].filter(
    (field) => canonicalJson(a[field] ?? null) !== canonicalJson(b[field] ?? null),
  );
