import { createHash } from 'node:crypto';
import type pg from 'pg';
import { DataSource, MigrationExecutor, type QueryRunner } from 'typeorm';
import { Trouble } from '#runtime';
import { dataSourceOptions } from '../../api/src/data-source.js';
import { copyIn, copyOut } from './copy-table.js';
import type { Manifest } from './manifest.js';
import { readBackup, tablesOf } from './read-backup.js';
import { copyInStatement, copyOutStatement, plainText } from './stored-tables.js';

export interface Restored {
  readonly manifest: Manifest;
  /** Changes of shape that came after the backup was made. */
  readonly migrated: number;
}

/**
 * Puts a backup into a house: its tables as they were when it was made, its rows, then what has changed in shape since, in one transaction; the rows are
 * read out again and compared before it ends. A house with something in it is refused unless it is to be replaced.
 */
export async function restoreBackup(databaseUrl: string, path: string, replace: boolean): Promise<Restored> {
  const { manifest } = await readBackup(path);
  const dataSource = await new DataSource(dataSourceOptions(databaseUrl)).initialize();
  const runner = dataSource.createQueryRunner();
  try {
    const client = (await runner.connect()) as pg.ClientBase;
    const executor = new MigrationExecutor(dataSource, runner);
    const known = new Set(dataSource.migrations.map((each) => each.name ?? each.constructor.name));
    const unknown = manifest.migrations.find((name) => !known.has(name));
    if (unknown !== undefined)
      throw new Trouble(
        `This backup is of a newer Cartwright (${manifest.version}; ${unknown} is not known here). Restore it with that one.`,
      );
    await runner.startTransaction();
    await mustBeAlone(runner);
    for (const statement of plainText) await runner.query(statement);
    if (!replace) await mustBeEmpty(runner);
    await clear(runner);
    const all = await executor.getPendingMigrations();
    const then = all.filter((each) => manifest.migrations.includes(each.name));
    const since = all.filter((each) => !manifest.migrations.includes(each.name));
    for (const each of then) await executor.executeMigration(each);
    await fill(client, manifest, path);
    for (const each of since) await executor.executeMigration(each);
    await runner.commitTransaction();
    await runner.query('ANALYZE');
    return { manifest, migrated: since.length };
  } catch (fault) {
    if (runner.isTransactionActive) await runner.rollbackTransaction();
    throw fault;
  } finally {
    await runner.release();
    await dataSource.destroy();
  }
}

/** Nobody may read or write half of it. */
async function mustBeAlone(runner: QueryRunner): Promise<void> {
  const [{ others }] = (await runner.query(
    `SELECT count(*)::int AS others FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid() AND backend_type = 'client backend'`,
  )) as [{ others: number }];
  if (others > 0)
    throw new Trouble(
      `Somebody works in this house (${others} ${others === 1 ? 'connection' : 'connections'}): stop Cartwright first. Nothing was changed.`,
    );
}

/** Tables that hold something in every house that was ever used. */
const usedTables = ['account', 'item', 'tour', 'model', 'event'];

async function mustBeEmpty(runner: QueryRunner): Promise<void> {
  for (const table of usedTables) {
    const [{ there }] = (await runner.query(`SELECT to_regclass($1) IS NOT NULL AS there`, [`public.${table}`])) as [{ there: boolean }];
    if (!there) continue;
    const found = (await runner.query(`SELECT FROM "${table}" LIMIT 1`)) as unknown[];
    if (found.length > 0)
      throw new Trouble(
        `This house is not empty (there is something in ${table}). Nothing was changed. --replace puts the backup in its place, and what is there is gone.`,
      );
  }
}

/** Everything in the house's schema but what belongs to extensions. */
async function clear(runner: QueryRunner): Promise<void> {
  const drops = (await runner.query(
    `SELECT format('DROP TABLE IF EXISTS %s CASCADE', oid::regclass) AS drop FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p')
       AND NOT EXISTS (SELECT FROM pg_depend d WHERE d.objid = pg_class.oid AND d.deptype = 'e')
     UNION ALL
     SELECT format('DROP ROUTINE IF EXISTS %s CASCADE', oid::regprocedure) FROM pg_proc WHERE pronamespace = 'public'::regnamespace
       AND NOT EXISTS (SELECT FROM pg_depend d WHERE d.objid = pg_proc.oid AND d.deptype = 'e')`,
  )) as { drop: string }[];
  for (const { drop } of drops) await runner.query(drop);
}

async function fill(client: pg.ClientBase, manifest: Manifest, path: string): Promise<void> {
  for (const { name } of manifest.tables) {
    await client.query(`ALTER TABLE "${name}" DISABLE TRIGGER USER`);
    // Some migrations put rows into what they make; the backup holds what became of them.
    await client.query(`DELETE FROM "${name}"`);
  }
  const tables = new Map(manifest.tables.map((each) => [each.name, each]));
  for await (const { table: name, chunks } of tablesOf(path)) {
    const table = tables.get(name);
    if (table) await copyIn(client, copyInStatement(table), chunks);
  }
  for (const { name, value, isCalled } of manifest.sequences)
    await client.query('SELECT setval(format($f$public.%I$f$, $1::text)::regclass, $2, $3)', [name, value, isCalled]);
  await client.query('SET CONSTRAINTS ALL IMMEDIATE');
  for (const table of manifest.tables) {
    const hash = createHash('sha256');
    const rows = await copyOut(client, copyOutStatement(table), (chunk) => void hash.update(chunk));
    if (rows !== table.rows || hash.digest('hex') !== table.sha256)
      throw new Trouble(`The rows of ${table.name} did not come out as they went in. Nothing was restored.`);
    await client.query(`ALTER TABLE "${table.name}" ENABLE TRIGGER USER`);
  }
}
