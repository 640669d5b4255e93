import { type EntityManager, IsNull } from 'typeorm';
import { recordEvents } from '../../platform/event-log.js';
import { givenFor } from '../../platform/sign-in/given-password.js';
import { AccountRow } from '../../platform/sign-in/rows.js';

/**
 * A password for one sign-in within a day from whoever holds the database's own login; every session of that person ends, and the log says where it was
 * done. Gives the name; null where nobody who may sign in has the address.
 */
export async function renewAtTheMachine(manager: EntityManager, email: string, passwordHash: string, at: Date): Promise<string | null> {
  const accounts = manager.getRepository(AccountRow);
  const person = await accounts.findOneBy({ email: email.trim().toLowerCase(), disabledAt: IsNull(), leftNumber: IsNull() });
  if (!person) return null;
  await accounts.update(
    { id: person.id },
    { passwordHash, mustChange: true, passwordUntil: new Date(at.getTime() + givenFor), passwordByOfficer: false },
  );
  await manager.query('UPDATE session SET ended_at = $2 WHERE account_id = $1 AND ended_at IS NULL', [person.id, at]);
  await recordEvents(manager, { name: 'At the machine' }, at, [
    { what: 'person', sentence: `${person.name} has a password for one sign-in, given with the login of the database.` },
  ]);
  return person.name;
}
