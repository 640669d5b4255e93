import type { BadInput } from '#kernel';
import type { Clock } from '../config/config.js';
import { BadInputError } from '../faults/fault.js';
import { isCommonPassword } from '../config/common-passwords.js';
import { hashPassword } from './password.js';
import type { AccountRow } from './rows.js';

const leastPassword = 10;
const uncommonWanted =
  'a password that is not guessed among the first: no common word with digits around it, no run of keys, no repetition';

/** How long a password from another person waits to be used. */
export const givenFor = 24 * 3_600_000;

/** A password from another person, as it is kept: it lets in once, to choose the own one. */
export async function givenPassword(
  password: string,
  clock: Clock,
): Promise<() => Pick<AccountRow, 'passwordHash' | 'mustChange' | 'passwordUntil'>> {
  const faults = passwordFaults('password', password);
  if (faults.length > 0) throw new BadInputError(faults);
  const passwordHash = await hashPassword(password);
  return () => ({ passwordHash, mustChange: true, passwordUntil: new Date(clock.now().getTime() + givenFor) });
}

export function passwordFaults(field: string, password: string): BadInput[] {
  const fault = (wanted: string): BadInput[] => [{ field, value: '(not shown)', wanted }];
  if (password.length < leastPassword || password.length > 200) return fault(`a password of ${leastPassword} to 200 characters`);
  return isCommonPassword(password) ? fault(uncommonWanted) : [];
}
