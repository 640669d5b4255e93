import { setTimeout as pause } from 'node:timers/promises';
import type pg from 'pg';
import { Trouble } from '#runtime';
import { migrations } from '../../../migrations/index.js';
import { migrate } from './data-source.js';
import { grantWork, makeApplicationLogin } from './platform/database/application-role.js';
import { checkServerVersion, connectPatiently, connectionsOfOne, readConnections, roomFor } from './platform/database/server-check.js';

export interface Addresses {
  /** The one address, or that of the application where the owner has one of its own. */
  readonly databaseUrl: string;
  /** The owner of the tables; null: `databaseUrl` is the owner's. */
  readonly ownerUrl: string | null;
}

export interface PreparedDatabase {
  /** As whom the application works. */
  readonly applicationUrl: string;
  /** Migrations that were run here; another start may have run them. */
  readonly ran: number;
  readonly warnings: readonly string[];
}

/** How long a database that is on its way up is waited for, ms. */
const patienceMs = 60_000;

/** One of all who start migrates; a number that stands for that. */
const startLock = '4849551234';

/**
 * Before anything else at every start: waits for the database, refuses one that is too old or was written by a newer Cartwright, brings it to this
 * version and makes the application's role. However many start at once, one does it and the others wait for that one.
 */
export async function prepareDatabase(
  { databaseUrl, ownerUrl }: Addresses,
  say: (sentence: string) => void = () => undefined,
): Promise<PreparedDatabase> {
  const client = await connectPatiently(ownerUrl ?? databaseUrl, patienceMs, say);
  try {
    await checkServerVersion(client);
    const tight = roomFor(await readConnections(client), connectionsOfOne());
    const warnings = tight === undefined ? [] : [tight];
    await waitForTurn(client, say);
    await refuseNewer(client);
    const ran = await migrate(ownerUrl ?? databaseUrl);
    if (ownerUrl !== null) {
      await grantWork(client, decodeURIComponent(new URL(databaseUrl).username));
      return { applicationUrl: databaseUrl, ran, warnings };
    }
    const { url, warning } = await makeApplicationLogin(client, databaseUrl);
    return { applicationUrl: url ?? databaseUrl, ran, warnings: warning === undefined ? warnings : [...warnings, warning] };
  } finally {
    // The lock goes with the connection, also where this process dies.
    await client.end().catch(() => undefined);
  }
}

async function waitForTurn(client: pg.Client, say: (sentence: string) => void): Promise<void> {
  for (let isTold = false; ; isTold = true) {
    const { rows } = await client.query<{ ours: boolean }>('SELECT pg_try_advisory_lock($1) AS ours', [startLock]);
    if (rows[0]?.ours) return;
    if (!isTold) say('Another start is preparing the database; waiting for it.');
    await pause(200);
  }
}

/** A program must not work on tables that a later one has changed. */
async function refuseNewer(client: pg.Client): Promise<void> {
  const { rows: there } = await client.query<{ there: boolean }>(`SELECT to_regclass('public.migrations') IS NOT NULL AS there`);
  if (!there[0]?.there) return;
  const { rows } = await client.query<{ name: string }>('SELECT name FROM migrations ORDER BY id');
  const known = new Set<string>(migrations.map((each) => each.name));
  const unknown = rows.filter((each) => !known.has(each.name));
  if (unknown.length === 0) return;
  throw new Trouble(
    `The database was written by a newer Cartwright (it holds ${unknown[0]?.name}, which this one does not know). Nothing was changed: start the newer one, or restore the backup made before it.`,
  );
}
