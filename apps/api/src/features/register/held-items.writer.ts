import type { EntityManager } from 'typeorm';
import { decideNewItem } from '#editions';
import type { Item, Kit } from '#tour-file';
import { intervalsOfRules } from '#trade';
import { type NewProposal, proposedRecord } from '../edition/edition.writer.js';
import { datesNotKept } from './item-dates.writer.js';

/** An item that waits as a whole, with what the safety officer looks at. */
export const proposedItem = ({ id, kind, model, state, count, intervals }: Item): NewProposal => ({
  kind: 'item',
  subject: id,
  field: '',
  wanted: { kind, model, state, count, intervals },
});

/** New items as they come on file from somebody other than the safety officer, and what of them waits. */
export async function holdNewItems(
  manager: EntityManager,
  { examinationRules }: Pick<Kit, 'examinationRules'>,
  items: readonly Item[],
  day: string,
): Promise<{ readonly items: readonly Item[]; readonly waits: readonly NewProposal[] }> {
  if (items.length === 0) return { items, waits: [] };
  const outOfUse = await modelsOutOfUse(manager, day);
  const held = items.map((item) =>
    decideNewItem(item, {
      intervals: intervalsOfRules(examinationRules.filter((rule) => rule.kinds.includes(item.kind) && rule.check === undefined)),
      isModelOutOfUse: outOfUse.has(`${item.kind} ${item.model}`),
    }),
  );
  return {
    items: held.map((each) => each.inForce),
    waits: held.flatMap(({ inForce, waitsWhole, declaredOn, examinations }): NewProposal[] => [
      ...(waitsWhole ? [proposedItem(inForce)] : []),
      ...(declaredOn === null ? [] : [{ kind: 'item' as const, subject: inForce.id, field: 'declaredOn', wanted: declaredOn }]),
      ...examinations.map((each) => proposedRecord(inForce.id, each)),
    ]),
  };
}

/** Kind and model of everything that is out of service, failed, blocked or run out. */
async function modelsOutOfUse(manager: EntityManager, day: string): Promise<ReadonlySet<string>> {
  const rows: { kind: string; model: string }[] = await manager.query(
    `SELECT DISTINCT kind, model FROM item WHERE state <> 'in service' OR NOT is_accepted
       OR due_known AND coalesce(due_holds_through >= $1, true) AND (due_state IN ('failed', 'blocked') OR due_on < $1)`,
    [day],
  );
  const worked = await datesNotKept(manager, day);
  const out = worked.filter(({ state, dueOn }) => state === 'failed' || state === 'blocked' || (dueOn !== null && dueOn < day));
  return new Set([...rows, ...out].map(({ kind, model }) => `${kind} ${model}`));
}
