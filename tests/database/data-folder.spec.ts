import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { Trouble, startEmbeddedDatabase } from '#runtime';
import { databaseUser, reachableFolder } from '../../apps/runtime/database-user.js';
import { isOfFolder, makeWay } from '../../apps/runtime/postmaster.js';

describe('the data folder', () => {
  const folders: string[] = [];
  const newFolder = () => {
    const folder = mkdtempSync(join(tmpdir(), 'cartwright-data-'));
    // A user without privileges has to reach it where the tests run as root.
    chmodSync(folder, 0o755);
    folders.push(folder);
    return folder;
  };
  /** Where the files are: elsewhere where the user who runs PostgreSQL cannot reach the folder. */
  const dataOf = (folder: string): string =>
    [folder, reachableFolder(folder)].map((each) => join(each, 'postgres')).find((each) => existsSync(join(each, 'PG_VERSION'))) ?? '';
  const postmasterOf = (folder: string): number | undefined => {
    const file = join(dataOf(folder), 'postmaster.pid');
    return existsSync(file) ? Number(readFileSync(file, 'utf8').split('\n')[0]) : undefined;
  };
  const answers = async (connectionString: string): Promise<boolean> => {
    const client = new pg.Client({ connectionString });
    client.on('error', () => undefined);
    return client.connect().then(
      () => client.end().then(() => true),
      () => false,
    );
  };
  const untilAnswers = async (url: string, isSo = (): boolean => true): Promise<void> => {
    while (!isSo() || !(await answers(url))) await pause(50);
  };
  const start = (folder: string) => startEmbeddedDatabase({ folder, durable: false, say: () => undefined });
  afterAll(() => folders.forEach((folder) => rmSync(folder, { recursive: true, force: true })));

  it('is never deleted where Cartwright did not make it', async () => {
    const folder = newFolder();
    mkdirSync(join(folder, 'postgres'));
    writeFileSync(join(folder, 'postgres', 'mine.txt'), 'mine');
    await expect(start(folder)).rejects.toThrow(/was not made by Cartwright: nothing in it was touched/);
    expect(existsSync(join(folder, 'postgres', 'mine.txt'))).toBe(true);
  });

  it('is made anew where an earlier start was cut off while making it', async () => {
    const folder = newFolder();
    mkdirSync(join(folder, 'postgres'));
    writeFileSync(join(folder, 'postgres', 'half'), '');
    writeFileSync(join(folder, 'postgres-being-made'), '');
    const database = await start(folder);
    await database.stop();
    expect(existsSync(join(folder, 'postgres', 'half'))).toBe(false);
  });

  it('has one owner; who starts beside it works with its database, and takes it over when the owner stops', async () => {
    const folder = newFolder();
    const starts = await Promise.all([start(folder), start(folder), start(folder)]);
    expect(new Set(starts.map((each) => each.url)).size).toBe(1);
    const server = postmasterOf(folder);
    const url = starts[0].url;
    for (const [index, each] of starts.entries()) {
      await each.stop();
      if (index < starts.length - 1) await untilAnswers(url);
    }
    expect(postmasterOf(folder)).not.toBe(server);
    await expect(answers(url)).resolves.toBe(false);
  });

  it('has its database started again when that dies', async () => {
    const folder = newFolder();
    const database = await start(folder);
    try {
      const server = postmasterOf(folder)!;
      process.kill(server, 'SIGKILL');
      await untilAnswers(database.url, () => postmasterOf(folder) !== server);
      expect(postmasterOf(folder)).not.toBe(server);
    } finally {
      await database.stop();
    }
  });

  it('has its database started again when another program told it to end and somebody stays connected', async () => {
    const folder = newFolder();
    const database = await start(folder);
    const staying = new pg.Client({ connectionString: database.url });
    staying.on('error', () => undefined);
    await staying.connect();
    try {
      const server = postmasterOf(folder)!;
      process.kill(server, 'SIGTERM');
      while (await answers(database.url)) await pause(50);
      await expect(staying.query('SELECT 1')).resolves.toBeDefined();
      await untilAnswers(database.url, () => postmasterOf(folder) !== server);
      await expect(staying.query('SELECT 1')).rejects.toThrow();
    } finally {
      await staying.end().catch(() => undefined);
      await database.stop();
    }
  });

  it('never signals a program that has been given the number of its database since', async () => {
    const folder = newFolder();
    await (await start(folder)).stop();
    const other = spawn(
      process.execPath,
      ['-e', 'process.on("SIGINT", () => process.exit(7)); setInterval(() => {}, 1000); console.log("up")'],
      {
        stdio: ['ignore', 'pipe', 'ignore'],
      },
    );
    await once(other.stdout, 'data');
    writeFileSync(join(dataOf(folder), 'postmaster.pid'), `${other.pid}\n${dataOf(folder)}\n1700000000\n1\n\n127.0.0.1\n`);
    const database = await start(folder);
    try {
      expect(await answers(database.url)).toBe(true);
      expect([other.exitCode, other.signalCode]).toEqual([null, null]);
    } finally {
      other.kill('SIGKILL');
      await database.stop();
    }
  });

  it('is entered although its killed database has not yet been fetched by its parent', async () => {
    if (process.platform !== 'linux') return;
    const folder = newFolder();
    await (await start(folder)).stop();
    // A parent that never fetches its child, which has the rights of the database's own user.
    const parent = spawn('/bin/sh', ['-c', 'sleep 0.3 & echo $!; exec sleep 60'], {
      ...databaseUser(),
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    const [said] = (await once(parent.stdout, 'data')) as [Buffer];
    const ended = Number(said.toString());
    while (!/^\d+ \(.*\) Z/.test(readFileSync(`/proc/${ended}/stat`, 'utf8'))) await pause(10);
    writeFileSync(join(dataOf(folder), 'postmaster.pid'), `${ended}\n${dataOf(folder)}\n1700000000\n1\n\n127.0.0.1\n`);
    try {
      const database = await start(folder);
      expect(await answers(database.url)).toBe(true);
      await database.stop();
    } finally {
      parent.kill('SIGKILL');
    }
  });

  it('whose owner was killed has its database stopped and started by the next', async () => {
    const folder = newFolder();
    const database = await start(folder);
    const server = postmasterOf(folder)!;
    expect(isOfFolder(server, dataOf(folder))).toBe(true);
    expect(isOfFolder(process.pid, dataOf(folder))).toBe(false);
    await makeWay(dataOf(folder), () => undefined);
    await untilAnswers(database.url, () => postmasterOf(folder) !== server);
    await database.stop();
  });

  it('that cannot be made is named in a sentence', async () => {
    const file = join(newFolder(), 'a-file');
    writeFileSync(file, '');
    await expect(start(join(file, 'data'))).rejects.toThrow(Trouble);
  });
});
