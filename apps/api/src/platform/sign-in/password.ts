import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';

const derive = promisify(scrypt) as (password: string, salt: Buffer, length: number, options: object) => Promise<Buffer>;
const cost = { N: 32_768, r: 8, p: 1, maxmem: 64 * 1024 * 1024 };

/** scrypt (RFC 7914) with a salt of its own: `salt$hash`, both hex. */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(16);
  return `${salt.toString('hex')}$${(await derive(password, salt, 32, cost)).toString('hex')}`;
}

const spentMark = 'spent ';

/** A password that let in once: kept to know it again, signed in with by nobody. */
export const spent = (stored: string): string => `${spentMark}${stored}`;
export const isSpent = (stored: string): boolean => stored.startsWith(spentMark);

/** Whether it is the one that let in once. */
export const wasPassword = (password: string, stored: string): Promise<boolean> =>
  isSpent(stored) ? checkPassword(password, stored.slice(spentMark.length)) : Promise.resolve(false);

export async function checkPassword(password: string, stored: string): Promise<boolean> {
  const [salt, hash] = stored.split('$').map((each) => Buffer.from(each, 'hex'));
  if (!salt || !hash || hash.length !== 32) return false;
  return timingSafeEqual(await derive(password, salt, 32, cost), hash);
}
