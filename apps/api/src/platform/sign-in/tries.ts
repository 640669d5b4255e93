import { createHash } from 'node:crypto';
import { isIPv6 } from 'node:net';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { CLOCK, type Clock } from '../config/config.js';

/**
 * How many tries may fail before everybody who is counted there waits, and when the count is forgotten, in minutes from its first try. The wait is a
 * minute, then two, four, eight, fifteen, one more try after each.
 */
const bounds = {
  /** Of one person from a device that has signed in as that person: whatever others do, it waits for its own tries alone. */
  device: { most: 5, minutes: 15 },
  /** Of one person from one address. */
  pair: { most: 5, minutes: 15 },
  /** From one address, whoever is tried: a whole house may share one. */
  address: { most: 100, minutes: 10 },
  /** Of one person from addresses at which that person has not been: no stranger locks anybody out of where they work. */
  elsewhere: { most: 30, minutes: 60 },
  /** The own password, asked for again of somebody who is signed in. */
  own: { most: 5, minutes: 15 },
  /** The code of the set-up, from one address; nothing else is counted with it. */
  code: { most: 5, minutes: 15 },
} as const;

/** Longest wait, minutes. */
const longestWait = 15;

type Bound = keyof typeof bounds;

/** What a try is counted as: a bound, and of whom. */
export type Counted = readonly [bound: Bound, of: string];

/** A try that was counted; given back when it was right. */
export interface Try {
  /** Null: it may go on. Otherwise how many minutes to wait. */
  readonly waitMinutes: number | null;
  readonly keys: readonly string[];
}

/** Somebody at the door, and what is known of where they stand. */
export interface Comer {
  readonly name: string;
  readonly address: string;
  /** Hash of the cookie of a device that has signed in as this person. */
  readonly knownDevice: string | null;
  /** Whether this person has signed in from this address. */
  readonly isKnownThere: boolean;
}

/** A known device is counted by itself: strangers who share its address or try its name do not shut it out. */
export const countedAtTheDoor = ({ name, address, knownDevice, isKnownThere }: Comer): readonly Counted[] =>
  knownDevice === null
    ? [['address', networkOf(address)], ['pair', `${name} ${networkOf(address)}`], ...(isKnownThere ? [] : [['elsewhere', name] as const])]
    : [['device', `${name} ${knownDevice}`]];

export const waitInWords = (minutes: number): string => (minutes === 1 ? 'a minute' : `${minutes} minutes`);

/**
 * Tries at the door, counted before the costly hash and by single statements, so that tries at the same moment and at several APIs are all seen. A
 * count goes by its time alone.
 */
@Injectable()
export class SignInTries {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async begin(wanted: readonly Counted[]): Promise<Try> {
    const keys: string[] = [];
    for (const [bound, of] of wanted) {
      const key = `${bound} ${createHash('sha256').update(of).digest('base64url')}`;
      if (!(await this.count(key, bounds[bound]))) return { waitMinutes: await this.waitOf(key), keys };
      keys.push(key);
    }
    return { waitMinutes: null, keys };
  }

  /** It was the right one: nothing of it is held against anybody. */
  async forgive({ keys }: Try): Promise<void> {
    await this.dataSource.query(
      `UPDATE sign_in_try SET wait_until = NULL, count = CASE WHEN key ~ '^(address|elsewhere) ' THEN greatest(count - 1, 0) ELSE 0 END WHERE key = ANY($1)`,
      [keys],
    );
  }

  /** Removes what is past its time, so many rows at a time. */
  async forget(): Promise<number> {
    const gone: unknown[] = await this.dataSource.query(
      `WITH gone AS (DELETE FROM sign_in_try WHERE key IN (SELECT key FROM sign_in_try WHERE until < $1 LIMIT 1000) RETURNING 1) SELECT * FROM gone`,
      [this.clock.now()],
    );
    return gone.length;
  }

  /** False, and nothing counted, while everybody counted there waits. */
  private async count(key: string, { most, minutes }: (typeof bounds)[Bound]): Promise<boolean> {
    const now = this.clock.now();
    const over = `sign_in_try.count + 1 - $4::int`;
    const counted: unknown[] = await this.dataSource.query(
      `INSERT INTO sign_in_try (key, count, until) VALUES ($1, 1, $2) ON CONFLICT (key) DO UPDATE SET
         count = CASE WHEN sign_in_try.until <= $3 THEN 1 ELSE sign_in_try.count + 1 END,
         until = CASE WHEN sign_in_try.until <= $3 THEN $2 ELSE sign_in_try.until END,
         wait_until = CASE WHEN sign_in_try.until <= $3 OR ${over} < 0 THEN NULL
           ELSE $3::timestamptz + least(2 ^ least(${over}, 10), $5) * interval '1 minute' END
       WHERE sign_in_try.wait_until IS NULL OR sign_in_try.wait_until <= $3 OR sign_in_try.until <= $3 RETURNING count`,
      [key, new Date(now.getTime() + minutes * 60_000), now, most, longestWait],
    );
    return counted.length > 0;
  }

  /** Minutes, begun ones whole. */
  private async waitOf(key: string): Promise<number> {
    const [row]: { waits: Date | null }[] = await this.dataSource.query(
      'SELECT least(wait_until, until) AS waits FROM sign_in_try WHERE key = $1',
      [key],
    );
    return Math.max(1, Math.ceil(((row?.waits?.getTime() ?? 0) - this.clock.now().getTime()) / 60_000));
  }
}

/** One household of IPv6 has 2^64 addresses: it counts as one. */
export function networkOf(address: string): string {
  const plain = address.replace(/^::ffff:(?=\d+\.)/, '');
  if (!isIPv6(plain)) return plain;
  const [head = '', tail = ''] = plain.split('::');
  const left = head.split(':').filter(Boolean);
  const right = tail.split(':').filter(Boolean);
  const whole = plain.includes('::') ? [...left, ...Array<string>(Math.max(0, 8 - left.length - right.length)).fill('0'), ...right] : left;
  return whole.slice(0, 4).join(':');
}
