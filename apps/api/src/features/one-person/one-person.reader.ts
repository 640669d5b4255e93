import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { OnePersonTime } from './one-person.types.js';

export { OnePersonTime };

const times = `SELECT began.set_at AS since, "end".set_at AS until, account.name AS by, began.reason, "end".reason AS "endedBecause"
FROM (SELECT *, lag(is_on) OVER (ORDER BY id) AS before FROM one_person) began JOIN account ON account.id = began.set_by_id
LEFT JOIN LATERAL (SELECT set_at, reason FROM one_person later WHERE later.id > began.id AND NOT later.is_on ORDER BY later.id LIMIT 1) "end" ON true
WHERE began.is_on AND began.before IS NOT TRUE ORDER BY began.id DESC LIMIT 100`;

const alone = `SELECT FROM account WHERE id = $1 AND role = 'safety' AND disabled_at IS NULL AND (SELECT is_on FROM one_person ORDER BY id DESC LIMIT 1)
  AND NOT EXISTS (SELECT FROM account other WHERE other.role = 'safety' AND other.disabled_at IS NULL AND other.id <> account.id)`;

/** When one person judged alone in this house, the newest time first; the first is open while it holds. */
export async function onePersonTimes(manager: EntityManager): Promise<OnePersonTime[]> {
  const rows: (Omit<OnePersonTime, 'since' | 'until'> & { since: Date; until: Date | null })[] = await manager.query(times);
  return rows.map((each) => ({ ...each, since: each.since.toISOString(), until: each.until?.toISOString() ?? null }));
}

/** Whether this person judges alone: the only safety officer of a house that says so; never a deputy. */
export async function judgesAlone(manager: EntityManager, me: SignedIn): Promise<boolean> {
  if (me.role !== 'safety' || me.deputyOf !== undefined) return false;
  return (await manager.query<unknown[]>(alone, [me.id])).length > 0;
}

/** What is written behind an act in which one person was both. */
export const byOnePerson = ' One person only judged it.';
