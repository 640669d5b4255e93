import { createHash } from 'node:crypto';
import { isIPv6 } from 'node:net';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { CLOCK, type Clock } from '../config/config.js';

/** How many tries may fail in how many minutes. */
const bounds = {
  /** Of one person from one address. */
  pair: { most: 5, minutes: 1 },
  /** From one address, whoever is tried. */
  address: { most: 100, minutes: 10 },
  /** Of one person from addresses at which that person has not been: no stranger locks anybody out of where they work. */
  elsewhere: { most: 30, minutes: 60 },
} as const;

type Bound = keyof typeof bounds;

/** A try that was counted; given back when it was right. */
export interface Try {
  readonly mayGoOn: boolean;
  readonly keys: readonly string[];
}

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

  async begin(name: string, address: string, isKnownThere: boolean): Promise<Try> {
    const place = networkOf(address);
    const wanted: [Bound, string][] = [
      ['address', place],
      ['pair', `${name} ${place}`],
      ...(isKnownThere ? [] : [['elsewhere', name] as [Bound, string]]),
    ];
    const keys: string[] = [];
    for (const [bound, of] of wanted) {
      const key = `${bound} ${createHash('sha256').update(of).digest('base64url')}`;
      keys.push(key);
      if ((await this.count(key, bounds[bound].minutes)) > bounds[bound].most) return { mayGoOn: false, keys };
    }
    return { mayGoOn: true, keys };
  }

  /** It was the right one: nothing of it is held against anybody. */
  async forgive({ keys }: Try): Promise<void> {
    await this.dataSource.query(
      `UPDATE sign_in_try SET count = CASE WHEN key LIKE 'pair %' THEN 0 ELSE greatest(count - 1, 0) END WHERE key = ANY($1)`,
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

  private async count(key: string, minutes: number): Promise<number> {
    const now = this.clock.now();
    const [row]: { count: number }[] = await this.dataSource.query(
      `INSERT INTO sign_in_try (key, count, until) VALUES ($1, 1, $2) ON CONFLICT (key) DO UPDATE SET
         count = CASE WHEN sign_in_try.until <= $3 THEN 1 ELSE sign_in_try.count + 1 END,
         until = CASE WHEN sign_in_try.until <= $3 THEN $2 ELSE sign_in_try.until END RETURNING count`,
      [key, new Date(now.getTime() + minutes * 60_000), now],
    );
    return row?.count ?? 0;
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
