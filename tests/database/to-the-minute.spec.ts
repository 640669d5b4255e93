import { spawnSync } from 'node:child_process';
import { appendFileSync, chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { type EmbeddedDatabase, startEmbeddedDatabase } from '#runtime';
import { migrate } from '../../apps/api/src/data-source.js';
import { reachableFolder } from '../../apps/runtime/database-user.js';

/** PostgreSQL 18 manual, 25.3 "Continuous Archiving and Point-in-Time Recovery": 25.3.1, 25.3.3.2 (the low level API), 25.3.5. */
describe('a server that keeps its write-ahead log', () => {
  const folders: string[] = [];
  const newFolder = (mode = 0o755): string => {
    const folder = mkdtempSync(join(tmpdir(), 'cartwright-minute-'));
    chmodSync(folder, mode);
    folders.push(folder);
    return folder;
  };
  const dataOf = (folder: string): string =>
    [folder, reachableFolder(folder)].map((each) => join(each, 'postgres')).find((each) => existsSync(join(each, 'PG_VERSION'))) ?? '';
  const start = (folder: string): Promise<EmbeddedDatabase> => startEmbeddedDatabase({ folder, durable: true, say: () => undefined });
  const run = (command: string, ...args: string[]): void => {
    const { status, stderr } = spawnSync(command, args, { encoding: 'utf8' });
    if (status !== 0) throw new Error(`${command}: ${stderr}`);
  };
  afterAll(() => folders.forEach((folder) => rmSync(folder, { recursive: true, force: true })));

  it('goes back to a minute: what was written before is there, what was written after is not', async () => {
    const [folder, archive, kept, elsewhere] = [newFolder(), newFolder(0o777), newFolder(), newFolder()];

    // Once: the log is kept. The server that runs is told, and started again.
    let house = await start(folder);
    await migrate(house.url);
    await asOwner(house.url, async (client) => {
      await client.query('ALTER SYSTEM SET archive_mode = on');
      await client.query(`ALTER SYSTEM SET archive_command = 'test ! -f ${archive}/%f && cp %p ${archive}/%f'`);
    });
    await house.stop();
    house = await start(folder);

    // Once a week: a base copy while the house works. Without pg_basebackup: start, copy, stop, and the label that the stop gives.
    const base = join(kept, 'base');
    await asOwner(house.url, async (client) => {
      await write(client, 'before the base copy');
      await client.query(`SELECT pg_backup_start('base', true)`);
      run('cp', '-a', dataOf(folder), base);
      await write(client, 'after the base copy');
      const { rows } = await client.query<{ labelfile: string }>('SELECT labelfile FROM pg_backup_stop(true)');
      writeFileSync(join(base, 'backup_label'), rows[0]!.labelfile);
    });

    // A minute, and what comes after it: the mistake.
    const minute = await asOwner(house.url, async (client) => {
      await write(client, 'before the minute');
      await pause(1_100);
      const { rows } = await client.query<{ now: string }>('SELECT clock_timestamp()::text AS now');
      await pause(1_100);
      await write(client, 'after the minute');
      await client.query('DELETE FROM rule');
      const { rows: switched } = await client.query<{ file: string }>('SELECT pg_walfile_name(pg_switch_wal()) AS file');
      while (!existsSync(join(archive, switched[0]!.file))) await pause(50);
      return rows[0]!.now;
    });
    expect(await asOwner(house.url, written)).toEqual([
      'before the base copy',
      'after the base copy',
      'before the minute',
      'after the minute',
    ]);
    await house.stop();

    // Elsewhere: a house of this Cartwright, its cluster put away, the base copy in its place, what was archived played up to the minute.
    await (await start(elsewhere)).stop();
    const data = dataOf(elsewhere);
    run('cp', '-a', base, `${data}-base`);
    rmSync(data, { recursive: true });
    run('mv', `${data}-base`, data);
    for (const name of ['postmaster.pid', 'postmaster.opts']) rmSync(join(data, name), { force: true });
    for (const name of readdirSync(join(data, 'pg_wal'))) rmSync(join(data, 'pg_wal', name), { recursive: true });
    appendFileSync(
      join(data, 'postgresql.auto.conf'),
      [
        `restore_command = 'cp ${archive}/%f %p'`,
        `recovery_target_time = '${minute}'`,
        `recovery_target_action = 'promote'`,
        `archive_mode = off`,
        '',
      ].join('\n'),
    );
    writeFileSync(join(data, 'recovery.signal'), '');
    mkdirSync(join(data, 'pg_wal', 'archive_status'), { recursive: true });
    run('cp', '-a', join(folder, 'database-password'), join(elsewhere, 'database-password'));
    if (process.getuid?.() === 0) run('chown', '-R', `--reference=${base}`, data);

    const restored = await start(elsewhere);
    try {
      expect(await asOwner(restored.url, written)).toEqual(['before the base copy', 'after the base copy', 'before the minute']);
      // It is a house that works: it is brought to its shape, and takes writes.
      expect(await migrate(restored.url)).toBe(0);
      await asOwner(restored.url, async (client) => {
        while ((await client.query<{ is: boolean }>('SELECT pg_is_in_recovery() AS is')).rows[0]!.is) await pause(50);
        await write(client, 'after the return');
        expect(await written(client)).toHaveLength(4);
      });
    } finally {
      await restored.stop();
    }
  });
});

const write = (client: pg.Client, sentence: string): Promise<unknown> =>
  client.query(`INSERT INTO event (at, who, what, sentence) VALUES (clock_timestamp(), '', 'tried', $1)`, [sentence]);

const written = async (client: pg.Client): Promise<string[]> =>
  (await client.query<{ sentence: string }>(`SELECT sentence FROM event WHERE what = 'tried' ORDER BY id`)).rows.map((row) => row.sentence);

async function asOwner<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}
