import pg from 'pg';
import { DataSource, type DataSourceOptions } from 'typeorm';
import { migrations } from '../../../migrations/index.js';
import { entities } from './entities.js';
import { digested, unlogged, unread } from './platform/acts/logged-tables.js';
import { poolSize } from './platform/database/server-check.js';

/** The longest that one statement may take where people wait for it, and that a transaction may hold its locks and do nothing, milliseconds. */
const longestStatement = 60_000;
const longestPause = 120_000;

/**
 * Its end is told by the statement that fails: while it is lent out and asked nothing, the pool does not listen and the program would end with its database.
 */
class HeardClient extends pg.Client {
  constructor(settings: pg.ClientConfig) {
    super(settings);
    this.on('error', () => undefined);
  }
}

export function dataSourceOptions(databaseUrl: string, limits = true): DataSourceOptions {
  return {
    type: 'postgres',
    url: databaseUrl,
    entities,
    migrations,
    synchronize: false,
    migrationsRun: false,
    migrationsTransactionMode: 'each',
    // A database that takes connections and says nothing must not hold requests for ever.
    extra: {
      Client: HeardClient,
      max: poolSize,
      connectionTimeoutMillis: 3_000,
      application_name: 'cartwright',
      ...(limits && { statement_timeout: longestStatement, idle_in_transaction_session_timeout: longestPause }),
    },
  };
}

/** Tables that came with a migration write their lines in the log as well. */
async function logTables(runner: { query(sql: string, values: unknown[]): Promise<unknown> }): Promise<void> {
  await runner.query('SELECT log_tables($1, $2, $3)', [Object.keys(unlogged), unread, digested]);
}

/** Brings the database to the newest migration; gives back how many were run. */
export async function migrate(databaseUrl: string): Promise<number> {
  const dataSource = await new DataSource(dataSourceOptions(databaseUrl, false)).initialize();
  try {
    const ran = (await dataSource.runMigrations()).length;
    await logTables(dataSource);
    return ran;
  } finally {
    await dataSource.destroy();
  }
}
