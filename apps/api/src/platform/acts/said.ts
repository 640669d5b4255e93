import type { EntityManager } from 'typeorm';
import { currentAct } from './current-act.js';

/** Transactions in which it was said what was done. */
const said = new WeakSet<EntityManager>();

export const noteSaid = (manager: EntityManager): void => void said.add(manager);

/** Last of a transaction: where rows were changed and nobody said what was done, the operation says it. */
export async function sayWhatWasDone(
  manager: EntityManager,
  at: Date,
  doneAt: Date | null,
  words: (operation: string) => string,
): Promise<void> {
  const act = currentAct();
  if (said.has(manager) || !act) return;
  await manager.query(
    `INSERT INTO event (at, who, person_id, via, done_at, what, sentence)
     SELECT $1, $2, $3::uuid, $4, $5::timestamptz, 'did', $6 WHERE nullif(current_setting('cartwright.act', true), '') IS NOT NULL`,
    [at, act.who?.name ?? '', act.who?.id ?? null, act.via, doneAt, words(act.via)],
  );
}
