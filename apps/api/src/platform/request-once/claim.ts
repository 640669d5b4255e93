import type { EntityManager } from 'typeorm';
import { BadInputError } from '../faults/fault.js';
import type { CurrentRequest } from './current-request.js';
import type { RequestRow } from './rows.js';
import { readAnswer, writeAnswer } from './stored-answer.js';

/** A request seen for the first time is ours to carry out; one that was carried out before has its answer. */
export type Claim = { readonly isNew: true; readonly place: string } | { readonly isNew: false; readonly answer: unknown };

/**
 * First statement of a write: takes the request id inside its transaction. The same id at the same moment waits here for the other's end; where
 * that committed, a SERIALIZABLE transaction is told 40001 and finds the answer when it is tried again.
 */
export async function claimRequest(manager: EntityManager, request: CurrentRequest, at: Date): Promise<Claim> {
  const inserted: { ctid: string }[] = await manager.query(
    `INSERT INTO request (id, step, person_id, operation, values_hash, state, done_at, at)
     VALUES ($1, $2, $3, $4, $5, 'saved', $6, $7) ON CONFLICT DO NOTHING RETURNING ctid::text`,
    [request.id, request.step, request.personId, request.operation, request.valuesHash, request.doneAt, at],
  );
  if (inserted[0]) return { isNew: true, place: inserted[0].ctid };
  const [before]: { person_id: string; operation: string; values_hash: string; state: RequestRow['state']; answer: object | null }[] =
    await manager.query('SELECT person_id, operation, values_hash, state, answer FROM request WHERE id = $1 AND step = $2', [
      request.id,
      request.step,
    ]);
  if (!before) throw new Error('a request id that is taken has no row');
  const wrong = (wanted: string) => new BadInputError([{ field: 'Idempotency-Key', value: request.id, wanted }]);
  if (before.person_id !== request.personId) throw wrong('a new id for each write; this one is somebody else’s');
  if (before.state === 'given up') throw wrong('a new id: you were told that nothing was saved for this one');
  if (before.operation !== request.operation || before.values_hash !== request.valuesHash)
    throw wrong('a new id for each write; this one stands for another write or for other values');
  return { isNew: false, answer: readAnswer(before.answer) };
}

/** Last statement of a write. By the row's place: a look-up by key would read the index page that all other writers insert into. */
export async function keepAnswer(manager: EntityManager, place: string, answer: unknown): Promise<void> {
  await manager.query('UPDATE request SET answer = $2 WHERE ctid = $1::tid', [place, writeAnswer(answer)]);
}
