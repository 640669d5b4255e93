import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { prepareDatabase } from '../../apps/api/src/prepare-database.js';
import { roomFor, tooOld } from '../../apps/api/src/platform/database/server-check.js';
import { freePort } from '../../apps/runtime/embedded-database.js';
import { migrations } from '../../migrations/index.js';

const server = process.env.TEST_DATABASE_URL ?? '';

async function on<T = unknown>(url: string, statement: string): Promise<T[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query(statement)).rows as T[];
  } finally {
    await client.end();
  }
}

describe('starts on an empty database', () => {
  const names: string[] = [];
  const emptyDatabase = async (): Promise<string> => {
    const name = `start_${randomUUID().replaceAll('-', '')}`;
    names.push(name);
    await on(server, `CREATE DATABASE ${name}`);
    return Object.assign(new URL(server), { pathname: `/${name}` }).href;
  };
  const processes: ChildProcess[] = [];
  afterAll(async () => {
    for (const each of processes) each.kill('SIGKILL');
    for (const name of names) await on(server, `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
  });

  it('as many at once as come: one brings it to this version, the others wait for that one', async () => {
    const databaseUrl = await emptyDatabase();
    const prepared = await Promise.all([1, 2, 3, 4].map(() => prepareDatabase({ databaseUrl, ownerUrl: null })));
    expect(prepared.map((each) => each.ran).sort((a, b) => a - b)).toEqual([0, 0, 0, migrations.length]);
    expect(new Set(prepared.map((each) => each.applicationUrl)).size).toBe(1);
    expect(prepared.flatMap((each) => each.warnings)).toEqual([]);
  });

  it('two APIs and a worker, as programs of their own: all come up', async () => {
    const databaseUrl = await emptyDatabase();
    const ports = [await freePort(), await freePort(), await freePort()];
    const startProgram = (program: 'api' | 'worker', port: number) => {
      const child = spawn(process.execPath, [join(process.cwd(), 'dist', 'apps', program, 'src', 'main.js')], {
        env: {
          ...process.env,
          NODE_OPTIONS: '',
          DATABASE_URL: databaseUrl,
          PORT: String(port),
          CARTWRIGHT_WORKER_PORT: String(port),
          CARTWRIGHT_LOG_LEVEL: 'error',
        },
        stdio: 'ignore',
      });
      processes.push(child);
    };
    startProgram('api', ports[0]!);
    startProgram('api', ports[1]!);
    startProgram('worker', ports[2]!);
    for (const port of ports)
      while (
        (await fetch(`http://127.0.0.1:${port}/readyz`).then(
          ({ status }) => status,
          () => 0,
        )) !== 200
      ) {
        expect(processes.map((each) => each.exitCode)).toEqual([null, null, null]);
        await pause(100);
      }
    const ended = processes.map((each) => once(each, 'exit'));
    for (const each of processes) each.kill('SIGTERM');
    await Promise.all(ended);
  });

  it('a database that a newer program wrote is refused, by name, and left as it is', async () => {
    const databaseUrl = await emptyDatabase();
    await prepareDatabase({ databaseUrl, ownerUrl: null });
    await on(databaseUrl, `INSERT INTO migrations (timestamp, name) VALUES (99990101000000, 'FromTheFuture99990101000000')`);
    await expect(prepareDatabase({ databaseUrl, ownerUrl: null })).rejects.toThrow(
      /written by a newer Cartwright \(it holds FromTheFuture99990101000000, .*Nothing was changed/,
    );
    const rows = await on<{ count: string }>(databaseUrl, 'SELECT count(*) FROM migrations');
    expect(rows).toEqual([{ count: String(migrations.length + 1) }]);
  });

  it('a PostgreSQL that is too old is refused, naming both; one that is not is taken', () => {
    expect(tooOld(150_004, '15.4')).toBe('This database is PostgreSQL 15.4; Cartwright needs PostgreSQL 16 or later. Nothing was changed.');
    expect(tooOld(160_000, '16.0')).toBe(undefined);
  });

  it('connections are counted: no room for one is refused, too little for all is said', () => {
    expect(() => roomFor({ most: 12, living: 0, others: 0 }, 16)).toThrow(/takes 12 connections, and one API or worker needs 16/);
    expect(roomFor({ most: 97, living: 4, others: 0 }, 16)).toBe(undefined);
    expect(roomFor({ most: 97, living: 6, others: 3 }, 16)).toMatch(
      /7 APIs and workers with 16 connections each and 3 of other programs may want 115, .* takes 97/,
    );
  });

  it('an address that is let in by nobody is told at once', async () => {
    const wrong = Object.assign(new URL(server), { password: 'not-it' }).href;
    await expect(prepareDatabase({ databaseUrl: wrong, ownerUrl: null })).rejects.toThrow(/does not let us in \(28P01\)/);
  });

  it('works under an address of its own where the owner has one', async () => {
    const ownerUrl = await emptyDatabase();
    const login = `crew_${randomUUID().slice(0, 8)}`;
    await on(ownerUrl, `CREATE ROLE ${login} LOGIN PASSWORD 'crew-word'`);
    const databaseUrl = Object.assign(new URL(ownerUrl), { username: login, password: 'crew-word' }).href;
    const { applicationUrl } = await prepareDatabase({ databaseUrl, ownerUrl });
    expect(applicationUrl).toBe(databaseUrl);
    await expect(on(databaseUrl, 'SELECT count(*) FROM item')).resolves.toHaveLength(1);
    await expect(on(databaseUrl, 'DROP TABLE item')).rejects.toThrow(/must be owner/);
    await on(ownerUrl, `REASSIGN OWNED BY ${login} TO CURRENT_USER; DROP OWNED BY ${login}; DROP ROLE ${login}`);
  });
});
