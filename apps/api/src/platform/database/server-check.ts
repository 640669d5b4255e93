import { availableParallelism } from 'node:os';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { Trouble } from '#runtime';
import { livingName } from '../config/living-name.js';

/** The oldest PostgreSQL that the tables and triggers are tried on. */
const oldestPostgres = 16;

/** Connections that one API or worker may hold at once, for requests and jobs. */
export const poolSize = 12;

/**
 * All that one API or worker may hold at once: its pool, one that is woken by changes, one that looks whether the database is ready, one for each
 * thread that plans or looks, and one for a file that comes in.
 */
export const connectionsOfOne = (): number => poolSize + 2 + Math.max(1, availableParallelism() - 1) + 1 + 1;

/** Not there yet, or on its way up: refused, no such host yet, cut off, 57P03 starting up. */
const notYet = new Set(['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', 'ECONNRESET', 'ETIMEDOUT', '57P03', '57P01', '57P02']);

const codeOf = (fault: unknown): string =>
  (fault as { code?: string }).code ?? (fault as { errors?: { code?: string }[] }).errors?.[0]?.code ?? (fault as Error).message;

/** Waits for a PostgreSQL that is still on its way up; one that says no is told at once. */
export async function connectPatiently(url: string, patienceMs: number, say: (sentence: string) => void): Promise<pg.Client> {
  const until = performance.now() + patienceMs;
  for (let isTold = false; ; isTold = true) {
    const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 5_000, application_name: 'cartwright start' });
    client.on('error', () => undefined);
    try {
      await client.connect();
      return client;
    } catch (fault) {
      void client.end().catch(() => undefined);
      const isComing = notYet.has(codeOf(fault)) || /timeout|terminated unexpectedly/i.test((fault as Error).message);
      if (!isComing || performance.now() > until)
        throw new Trouble(`The database does not let us in (${codeOf(fault)}): ${(fault as Error).message || 'no answer'}`);
      if (!isTold) say(`The database does not answer yet (${codeOf(fault)}); waiting for up to ${Math.round(patienceMs / 1000)} seconds.`);
      await pause(300);
    }
  }
}

/** Refuses a PostgreSQL that is older than what is supported, naming both. */
export async function checkServerVersion(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ number: string; name: string }>(
    `SELECT current_setting('server_version_num') AS number, current_setting('server_version') AS name`,
  );
  const [row] = rows;
  const sentence = row && tooOld(Number(row.number), row.name);
  if (sentence) throw new Trouble(sentence);
}

/** In words, where a PostgreSQL of this number (`server_version_num`) is too old. */
export function tooOld(number: number, name: string): string | undefined {
  if (number >= oldestPostgres * 10_000) return undefined;
  return `This database is PostgreSQL ${name}; Cartwright needs PostgreSQL ${oldestPostgres} or later. Nothing was changed.`;
}

export interface Connections {
  /** What the server takes from people without rights of their own. */
  readonly most: number;
  /** APIs and workers that live already. */
  readonly living: number;
  /** Held by others than APIs and workers. */
  readonly others: number;
}

export async function readConnections(client: pg.Client): Promise<Connections> {
  const { rows } = await client.query<Connections>(
    `SELECT current_setting('max_connections')::int - current_setting('superuser_reserved_connections')::int
         - coalesce(current_setting('reserved_connections', true)::int, 0) AS most,
       (SELECT count(*)::int FROM pg_stat_activity WHERE application_name = $1) AS living,
       (SELECT count(*)::int FROM pg_stat_activity WHERE backend_type = 'client backend' AND application_name NOT LIKE 'cartwright%') AS others`,
    [livingName],
  );
  return rows[0] ?? { most: 0, living: 0, others: 0 };
}

/** In words, where one more API or worker may want more connections than there are; Trouble where not even one has room. */
export function roomFor({ most, living, others }: Connections, each: number): string | undefined {
  if (most < each)
    throw new Trouble(`The database takes ${most} connections, and one API or worker needs ${each}: raise max_connections of PostgreSQL.`);
  const wanted = (living + 1) * each + others;
  if (wanted <= most) return undefined;
  const also = others > 0 ? ` and ${others} of other programs` : '';
  return `${living + 1} APIs and workers with ${each} connections each${also} may want ${wanted}, and the database takes ${most}: raise max_connections of PostgreSQL, or run fewer.`;
}
