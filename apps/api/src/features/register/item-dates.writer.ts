import { Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { type CaseExamination, type ExaminedItem, findDueDate, lastDayOfDeclaration, withDecidingRecords } from '#inspection-calendar';
import { type Item, itemKinds } from '#tour-file';
import { intervalsOfItem, intervalsOfRules } from '#trade';
import { asAnswered } from '../../planning/snapshot/kit-snapshot.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { rulesInForce } from './records/rules-in-force.reader.js';

/** How many items are worked out at once. */
const atOnce = 5000;

const anyUnknown = `SELECT EXISTS (SELECT FROM item WHERE NOT due_known) OR EXISTS (SELECT FROM item WHERE due_holds_through < $1) AS unknown`;

// Locked, so that a record which is being written now makes the date unknown again after this one is kept.
const isUnknown = `(NOT due_known OR due_holds_through < $1)`;
const lockUnknown = `SELECT id FROM item WHERE ${isUnknown} ORDER BY id LIMIT ${atOnce} FOR UPDATE`;
const lockUnknownOf = `SELECT id FROM item WHERE ${isUnknown} AND id = ANY($2) ORDER BY id FOR UPDATE`;

// By joins and not item by item: in the middle of a large import the database knows nothing yet of how much there is.
const factsOf = `SELECT item.id, item.kind, item.model, item.rest->'intervals' AS intervals, item.rest->>'declaredOn' AS "declaredOn",
  coalesce(made.examinations, '[]') AS examinations, coalesce(happened.events, '[]') AS events
FROM item
LEFT JOIN (SELECT item_id, jsonb_agg((${asAnswered}) - '{particulars,examiner,report,reportFile}'::text[] ORDER BY id) AS examinations FROM examination
  WHERE item_id = ANY($1) AND NOT EXISTS (SELECT FROM examination later WHERE later.supersedes = examination.id) GROUP BY item_id) made ON made.item_id = item.id
LEFT JOIN (SELECT item_id, jsonb_agg(jsonb_build_object('on', on_day, 'what', what) ORDER BY id) AS events FROM incident
  WHERE item_id = ANY($1) GROUP BY item_id) happened ON happened.item_id = item.id
WHERE item.id = ANY($1)`;

const keep = `UPDATE item SET due_on = kept.due_on, due_state = kept.due_state, due_holds_through = kept.holds_through, due_known = true
FROM unnest($1::text[], $2::date[], $3::text[], $4::date[]) AS kept (id, due_on, due_state, holds_through) WHERE item.id = kept.id`;

const keepRecords = `INSERT INTO item_record (item_id, facts) SELECT id, facts FROM unnest($1::text[], $2::jsonb[]) AS kept (id, facts)
ON CONFLICT (item_id) DO UPDATE SET facts = excluded.facts WHERE item_record.facts IS DISTINCT FROM excluded.facts`;

/** What the dates of an item follow from, without the records that set none. */
export type DatingFacts = Omit<ExaminedItem, 'id' | 'seenOn'>;

interface Facts {
  readonly id: string;
  readonly kind: Item['kind'];
  readonly model: string;
  readonly intervals: string[] | null;
  readonly declaredOn: string | null;
  readonly examinations: CaseExamination[];
  readonly events: { on: string; what: string }[];
}

/** Dates of the items, worked out before they are read. */
@Injectable()
export class ItemDates {
  constructor(
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
  ) {}

  /** Works out what is not known as of `today`; one look at two indexes where all is. */
  async workOut(today: string): Promise<void> {
    if (!(await isSomeUnknown(this.dataSource.manager, today))) return;
    const some = async () => {
      const outcome = await this.unitOfWork.run<number>(
        async (manager) => ({ ok: true, value: await workOutSome(manager, today, await intervalsOnFile(manager)) }),
        'READ COMMITTED',
      );
      return outcome.ok && outcome.value === atOnce;
    };
    while (await some());
  }
}

/** The same at the end of a large write, in its transaction; with `only`, those, so that no other item is locked. `tell` hears how many are worked out. */
export async function workOutDates(
  manager: EntityManager,
  today: string,
  { only, tell }: { readonly only?: readonly string[]; readonly tell?: (workedOut: number) => void } = {},
): Promise<void> {
  if (!(await isSomeUnknown(manager, today))) return;
  const intervalsOf = await intervalsOnFile(manager);
  for (let at = 0; only === undefined || at < only.length; at += atOnce) {
    const some = await workOutSome(manager, today, intervalsOf, only?.slice(at, at + atOnce));
    tell?.(Math.min(at + atOnce, only?.length ?? Infinity));
    if (only === undefined && some < atOnce) return;
  }
}

/** Kind, model and dates of the items that are not known as of `today`, worked out and not kept: nobody waits for it. */
export async function datesNotKept(
  manager: EntityManager,
  today: string,
): Promise<readonly (Dates & Pick<Facts, 'kind'> & { readonly model: string })[]> {
  if (!(await isSomeUnknown(manager, today))) return [];
  const intervalsOf = await intervalsOnFile(manager);
  const unknown: { id: string }[] = await manager.query(`SELECT id FROM item WHERE ${isUnknown}`, [today]);
  const items = await factsOfItems(
    manager,
    unknown.map((each) => each.id),
  );
  return items.map((item) => ({
    ...datesOf(item, intervalsOfItem(item.intervals, intervalsOf(item.kind)), today),
    kind: item.kind,
    model: item.model,
  }));
}

async function isSomeUnknown(manager: EntityManager, today: string): Promise<boolean> {
  const asked: { unknown: boolean }[] = await manager.query(anyUnknown, [today]);
  return asked[0]!.unknown;
}

const factsOfItems = (manager: EntityManager, ids: readonly string[]): Promise<Facts[]> => manager.query(factsOf, [ids]);

async function workOutSome(
  manager: EntityManager,
  today: string,
  intervalsOf: (kind: Item['kind']) => readonly string[],
  only?: readonly string[],
): Promise<number> {
  const locked: { id: string }[] = await (only ? manager.query(lockUnknownOf, [today, only]) : manager.query(lockUnknown, [today]));
  if (locked.length === 0) return 0;
  const items = await factsOfItems(
    manager,
    locked.map((each) => each.id),
  );
  const kept = items.map((item) => ({ id: item.id, ...datesOf(item, intervalsOfItem(item.intervals, intervalsOf(item.kind)), today) }));
  await manager.query(keep, [
    kept.map((each) => each.id),
    kept.map((each) => each.dueOn),
    kept.map((each) => each.state),
    kept.map((each) => each.holdsThrough),
  ]);
  const dated = kept.filter((each) => each.state !== null);
  await manager.query(keepRecords, [dated.map((each) => each.id), dated.map((each) => JSON.stringify(each.facts))]);
  return locked.length;
}

interface Dates {
  readonly dueOn: string | null;
  readonly state: 'due' | 'failed' | 'blocked' | 'no record' | null;
  readonly holdsThrough: string | null;
  readonly facts: DatingFacts;
}

function datesOf({ id, declaredOn, examinations, events }: Facts, intervals: readonly string[], today: string): Dates {
  const facts = { intervals: [...intervals], examinations, events, ...(declaredOn === null ? {} : { declaredOn }) };
  const item = { id, ...facts };
  const due = findDueDate(item, today);
  const state = due.dueOn !== null ? 'due' : due.state === 'no interval' ? null : due.state;
  return { dueOn: due.dueOn, state, holdsThrough: lastDayOfDeclaration(item, today), facts: withDecidingRecords(facts) };
}

/** The intervals of all countries on file for a kind of item. */
async function intervalsOnFile(manager: EntityManager): Promise<(kind: Item['kind']) => readonly string[]> {
  const rules = await rulesInForce(manager);
  const known = new Map(itemKinds.map((kind) => [kind, intervalsOfRules(rules.filter((each) => each.kinds.includes(kind)))]));
  return (kind) => known.get(kind) ?? [];
}
