import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { Request } from 'express';
import { DataSource, type EntityManager } from 'typeorm';
import { CLOCK, CONFIG, type Clock, type Config } from '../config/config.js';
import type { Deputyship } from './deputyship.js';
import type { SignedIn } from './person.js';
import { SessionRow } from './rows.js';
import { deviceTokenOf, sessionTokenOf } from './session-cookie.js';
import { type Comer, networkOf } from './tries.js';

const hours = 3_600_000;
/** A session ends so long after it was opened, or so long after it was last used. */
const longest = 14 * 24 * hours;
const longestUnused = 4 * 24 * hours;
/** That it is used is written down no more often than this. */
const notedEvery = hours / 6;
/** Sessions that ended are kept for a while: they say where a person has been. */
const keptAfter = 90 * 24 * hours;

/** Told there when sessions end: whose, as the id of the account. */
export const sessionChannel = 'session_end';

interface Found {
  id: string;
  name: string;
  email: string;
  role: SignedIn['role'];
  mustChange: boolean;
  sessionId: string;
  seenAt: Date;
  deputyships: Deputyship[] | null;
}

/**
 * Deputyships of an account (`account`) that hold now ($2), each by its own calendar: as long as the officer is one, and nobody has withdrawn it. One
 * that waits for a second signature holds nothing. SQL.
 */
const deputyships = `(SELECT jsonb_agg(jsonb_build_object('id', deputy.id, 'officerId', officer.id, 'officer', officer.name, 'until', deputy.until_day, 'depot', deputy.depot,
    'tourId', deputy.tour_id) ORDER BY deputy.depot NULLS FIRST, deputy.named_at) FROM deputy JOIN account officer ON officer.id = deputy.officer_id
  WHERE deputy.account_id = account.id AND account.role <> 'safety' AND deputy.signed_at IS NOT NULL AND deputy.withdrawn_at IS NULL
    AND officer.role = 'safety' AND officer.disabled_at IS NULL
    AND ($2::timestamptz AT TIME ZONE deputy.time_zone)::date BETWEEN deputy.from_day AND deputy.until_day)`;

/** Sessions live in the database as hashes of their tokens, so that every copy of the API knows them. */
@Injectable()
export class SessionStore {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  async open(accountId: string, request: Request): Promise<{ token: string; deviceToken: string; expiresAt: Date }> {
    const deviceToken = (await this.knownToken(request)) ?? randomBytes(32).toString('base64url');
    const token = randomBytes(32).toString('base64url');
    const now = this.clock.now();
    const expiresAt = new Date(now.getTime() + longest);
    await this.dataSource.getRepository(SessionRow).insert({
      tokenHash: hashOf(token),
      id: randomUUID(),
      accountId,
      openedAt: now,
      seenAt: now,
      expiresAt,
      endedAt: null,
      address: networkOf(request.ip ?? ''),
      device: String(request.headers['user-agent'] ?? '').slice(0, 200),
      deviceHash: hashOf(deviceToken),
    });
    return { token, deviceToken, expiresAt };
  }

  /** The cookie of a device that somebody has signed in on: several people may share one. */
  private async knownToken(request: Request): Promise<string | undefined> {
    const token = deviceTokenOf(request, this.config.secureCookies);
    if (!token) return undefined;
    return (await this.dataSource.getRepository(SessionRow).existsBy({ deviceHash: hashOf(token) })) ? token : undefined;
  }

  async close(request: Request): Promise<void> {
    const token = sessionTokenOf(request, this.config.secureCookies);
    if (!token) return;
    await this.dataSource.query(
      `WITH ended AS (UPDATE session SET ended_at = $2 WHERE token_hash = $1 RETURNING account_id) SELECT pg_notify($3, account_id::text) FROM ended`,
      [hashOf(token), this.clock.now(), sessionChannel],
    );
  }

  /** Ends all of a person, or the one of this id. */
  async end(manager: EntityManager, accountId: string, id?: string): Promise<number> {
    const ended: [unknown, number] = await manager.query(
      'UPDATE session SET ended_at = $2 WHERE account_id = $1 AND ended_at IS NULL AND ($3::uuid IS NULL OR id = $3::uuid)',
      [accountId, this.clock.now(), id ?? null],
    );
    await manager.query('SELECT pg_notify($1, $2)', [sessionChannel, accountId]);
    return ended[1];
  }

  async find(request: Request): Promise<SignedIn | undefined> {
    const token = sessionTokenOf(request, this.config.secureCookies);
    if (!token) return undefined;
    const now = this.clock.now();
    const [found]: Found[] = await this.dataSource.query(
      `SELECT account.id, account.name, account.email, account.role, account.must_change AS "mustChange", session.id AS "sessionId", session.seen_at AS "seenAt", ${deputyships} AS deputyships
       FROM session JOIN account ON account.id = session.account_id
       WHERE token_hash = $1 AND ended_at IS NULL AND expires_at > $2 AND seen_at > $3 AND disabled_at IS NULL`,
      [hashOf(token), now, new Date(now.getTime() - longestUnused)],
    );
    if (!found) return undefined;
    const { seenAt, deputyships: held, ...person } = found;
    if (now.getTime() - seenAt.getTime() > notedEvery)
      await this.dataSource.getRepository(SessionRow).update({ tokenHash: hashOf(token) }, { seenAt: now });
    return { ...person, deputyships: held ?? [] };
  }

  /** Whether this person has signed in from this address, and the device that asks where it has signed in as this person. */
  async knownOf(accountId: string, request: Request): Promise<Pick<Comer, 'isKnownThere' | 'knownDevice'>> {
    const device = hashOf(deviceTokenOf(request, this.config.secureCookies) ?? '');
    const [known]: { there: boolean; device: boolean }[] = await this.dataSource.query(
      `SELECT coalesce(bool_or(address = $2), false) AS there, coalesce(bool_or(device_hash = $3), false) AS device FROM session WHERE account_id = $1`,
      [accountId, networkOf(request.ip ?? ''), device],
    );
    return { isKnownThere: known?.there === true, knownDevice: known?.device ? device : null };
  }

  /** Whether anybody has signed in at the device that asks. */
  async isAtKnownDevice(request: Request): Promise<boolean> {
    const token = deviceTokenOf(request, this.config.secureCookies);
    if (!token) return false;
    const known: unknown[] = await this.dataSource.query('SELECT FROM session WHERE device_hash = $1 LIMIT 1', [hashOf(token)]);
    return known.length > 0;
  }

  /** Sessions of a person that hold. */
  ofPerson(accountId: string): Promise<SessionRow[]> {
    return this.dataSource
      .getRepository(SessionRow)
      .createQueryBuilder('session')
      .where('account_id = :accountId AND ended_at IS NULL AND expires_at > :now AND seen_at > :used', {
        accountId,
        now: this.clock.now(),
        used: new Date(this.clock.now().getTime() - longestUnused),
      })
      .orderBy('seen_at', 'DESC')
      .getMany();
  }

  async forget(): Promise<number> {
    const gone: unknown[] = await this.dataSource.query(
      `WITH gone AS (DELETE FROM session WHERE token_hash IN (SELECT token_hash FROM session WHERE expires_at < $1 LIMIT 1000) RETURNING 1) SELECT * FROM gone`,
      [new Date(this.clock.now().getTime() - keptAfter)],
    );
    return gone.length;
  }
}

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');
