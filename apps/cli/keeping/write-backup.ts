import { createHash } from 'node:crypto';
import { existsSync, renameSync, rmSync, statSync } from 'node:fs';
import type pg from 'pg';
import { Trouble } from '#runtime';
import { copyOut } from './copy-table.js';
import { type LogHead, readLogHead } from '../../api/src/platform/seal/log-head.reader.js';
import { type LogVerdict, verifyLog } from '../../api/src/platform/seal/verify-log.js';
import { type Ask, sealAll, sealLock } from '../../api/src/platform/seal/seal-log.js';
import { type Manifest, backupFormat, manifestName, partName } from './manifest.js';
import { PackedWriter } from './packed-file.js';
import { readBackup } from './read-backup.js';
import { type StoredTable, copyOutStatement, leftOut, plainText, storedSequences, storedTables } from './stored-tables.js';

const partBytes = 4 * 1024 * 1024;

export interface Backup {
  readonly manifest: Manifest;
  readonly bytes: number;
  /** Why the newest lines of the log are not sealed in it, where they are not. */
  readonly notSealed: string | null;
  /** Whether the log in it is as it was sealed; null: a house of an earlier version, which has no seals. */
  readonly verdict: LogVerdict | null;
}

/**
 * Writes everything that is on file into one packed file, as it stood at one moment, while others go on working; reads the file back, and only then
 * gives it its name. A file that is there already is not overwritten.
 */
export async function writeBackup(client: pg.ClientBase, path: string, version: string, at: Date): Promise<Backup> {
  if (existsSync(path)) throw new Trouble(`${path} is there already: wanted the name of a new file.`);
  const unfinished = `${path}.unfinished`;
  const packed = new PackedWriter(unfinished);
  try {
    const { manifest, notSealed, verdict } = await writeTables(client, packed, version, at);
    await packed.close();
    const { manifest: read } = await readBackup(unfinished);
    if (JSON.stringify(read) !== JSON.stringify(manifest)) throw new Trouble(`What was read back from ${path} is not what was written.`);
    renameSync(unfinished, path);
    return { manifest, bytes: statSync(path).size, notSealed, verdict };
  } catch (fault) {
    packed.abandon();
    rmSync(unfinished, { force: true });
    const code = (fault as NodeJS.ErrnoException).code ?? '';
    if (code === diskFull)
      throw new Trouble(
        `The disk of the database is full: the backup could not be written. Nothing of it was kept; make room and try again.`,
      );
    if (['ENOSPC', 'EACCES', 'ENOENT', 'EISDIR', 'EROFS', 'EDQUOT'].includes(code))
      throw new Trouble(`The backup could not be written to ${path} (${code}); nothing of it was kept.`);
    throw fault;
  }
}

async function writeTables(client: pg.ClientBase, packed: PackedWriter, version: string, at: Date): Promise<Omit<Backup, 'bytes'>> {
  // Nobody else seals between the moment that is written and its seal.
  await client.query('SELECT pg_advisory_lock($1)', [sealLock]);
  await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ');
  try {
    for (const statement of plainText) await client.query(statement);
    const found = await client.query<{ name: string }>('SELECT name FROM migrations ORDER BY id').catch((fault: { code?: string }) => {
      if (fault.code === '42P01') throw new Trouble('This database holds no house yet: there is nothing to back up.');
      throw fault;
    });
    const notSealed = await sealFirst(client, at);
    const verdict = (await hasSeals(client)) ? await verifyLog(askOf(client)) : null;
    const tables = [];
    for (const table of await storedTables(client)) tables.push({ ...table, ...(await writeTable(client, packed, table, at)) });
    const { rows: server } = await client.query<{ server_version: string }>('SHOW server_version');
    const manifest: Manifest = {
      format: backupFormat,
      madeAt: at.toISOString(),
      version,
      postgres: server.map((each) => each.server_version).join(),
      migrations: found.rows.map(({ name }) => name),
      tables: tables.map((table) => ({ ...table, columns: [...table.columns], order: [...table.order] })),
      sequences: await storedSequences(client),
      leftOut: [...leftOut],
      ...(await headIn(client)),
    };
    await packed.add(manifestName, Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`), at);
    await client.query('COMMIT');
    return { manifest, notSealed, verdict };
  } catch (fault) {
    await client.query('ROLLBACK').catch(() => undefined);
    throw fault;
  } finally {
    await client.query('SELECT pg_advisory_unlock($1)', [sealLock]).catch(() => undefined);
  }
}

/** SQLSTATE: the disk of the database is full. */
export const diskFull = '53100';

/**
 * So that the backup holds no line that could be changed unseen; a house of an earlier version has no seals yet. A database that cannot write any more can still
 * be read, and then most of all is a backup wanted: gives why the newest lines are not sealed.
 */
async function sealFirst(client: pg.ClientBase, at: Date): Promise<string | null> {
  if (!(await hasSeals(client))) return null;
  const ask = askOf(client);
  await client.query('SAVEPOINT sealing');
  try {
    await sealAll(
      (work) => work(ask),
      () => at,
    );
    await client.query('RELEASE SAVEPOINT sealing');
    return null;
  } catch (fault) {
    if ((fault as { code?: string }).code !== diskFull) throw fault;
    await client.query('ROLLBACK TO SAVEPOINT sealing');
    return 'the disk of the database is full';
  }
}

const askOf =
  (client: pg.ClientBase): Ask =>
  async (sql, values) =>
    (await client.query(sql, values)).rows as never;

async function headIn(client: pg.ClientBase): Promise<{ log?: LogHead }> {
  const log = (await hasSeals(client)) ? await readLogHead(askOf(client)) : undefined;
  return log ? { log } : {};
}

async function hasSeals(client: pg.ClientBase): Promise<boolean> {
  const { rows } = await client.query<{ there: boolean }>(`SELECT to_regclass('public.sealed_line') IS NOT NULL AS there`);
  return rows[0]?.there ?? false;
}

async function writeTable(
  client: pg.ClientBase,
  packed: PackedWriter,
  table: StoredTable,
  at: Date,
): Promise<{ rows: number; bytes: number; sha256: string }> {
  const hash = createHash('sha256');
  let held: Buffer[] = [];
  let [length, bytes, part] = [0, 0, 0];
  const flush = async () => {
    if (length === 0) return;
    await packed.add(partName(table.name, ++part), Buffer.concat(held), at);
    held = [];
    length = 0;
  };
  const rows = await copyOut(client, copyOutStatement(table), async (chunk) => {
    hash.update(chunk);
    held.push(chunk);
    length += chunk.length;
    bytes += chunk.length;
    if (length >= partBytes) await flush();
  });
  await flush();
  return { rows, bytes, sha256: hash.digest('hex') };
}
