import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { chmodSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { seededRandom } from '#kernel';
import { Trouble, startEmbeddedDatabase } from '#runtime';
import { hashOfOperation } from '../../../api/src/platform/door/listed-operations.js';
import { demoPeople } from '../../../api/src/features/transfer/demo.js';
import { numberFrom, readArguments, say } from '../arguments.js';
import { cookieOf, freePort, stopProcess } from '../house/house.js';

/** Who is killed: the house (API and screens), its database server, its worker, or all of them at once. */
const victims = ['node', 'postmaster', 'all', 'worker'] as const;
type Victim = (typeof victims)[number];

/** A write, and what the house said of it in the end. */
interface Write {
  readonly id: string;
  readonly what: string;
  said: 'saved' | 'not saved' | 'unknown yet';
  /** Its answer came; otherwise it was asked for afterwards. */
  isAnswered: boolean;
}

interface Trial {
  readonly root: string;
  readonly folder: string;
  readonly port: number;
  readonly address: string;
  readonly writes: Write[];
  house: ChildProcess;
  cookie: string;
  isOver: boolean;
}

/**
 * Writes go on while the house is killed (-9), `--kills` times each: the house, its database server, its worker, all. Node is started again as a service
 * manager would; the rest comes back by itself. Afterwards every write is looked up in the database: what was said of it has to be true, and none is there twice.
 */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const [kills, writers] = [numberFrom(values, 'kills', 50), numberFrom(values, 'writers', 3)];
  const random = seededRandom(numberFrom(values, 'seed', 1));
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-bench-'));
  // Where the database user can reach it, so that the database stands in it.
  chmodSync(folder, 0o755);
  const port = await freePort();
  const address = `http://127.0.0.1:${port}`;
  const trial: Trial = { root, folder, port, address, writes: [], house: startHouse(root, folder, port), cookie: '', isOver: false };
  const slowest: Record<Victim, number> = { node: 0, postmaster: 0, all: 0, worker: 0 };
  try {
    await untilReady(trial, 300);
    trial.cookie = await signInOf(trial);
    const writing = Array.from({ length: writers }, (_, index) => write(trial, index));
    for (let turn = 0; turn < kills * victims.length; turn++) {
      const victim = victims[turn % victims.length] ?? 'node';
      await pause(300 + 900 * random());
      slowest[victim] = Math.max(slowest[victim], await kill(trial, victim));
    }
    trial.isOver = true;
    await Promise.all(writing);
    for (const each of trial.writes) await lookUp(trial, each);
    await stopProcess(trial.house, 'SIGTERM');
    return report(trial, kills, slowest, await timesOnFile(folder));
  } finally {
    trial.isOver = true;
    await stopProcess(trial.house, 'SIGTERM');
    rmSync(folder, { recursive: true, force: true });
  }
}

function startHouse(root: string, folder: string, port: number): ChildProcess {
  return spawn(process.execPath, [join(root, 'apps', 'cli', 'run.mjs'), 'start'], {
    env: { ...process.env, DATA_FOLDER: folder, PORT: String(port), CARTWRIGHT_LOG_LEVEL: 'fatal' },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}

async function signInOf({ folder, address }: Trial): Promise<string> {
  const passwords = JSON.parse(readFileSync(join(folder, 'sign-in.json'), 'utf8')) as Record<string, string>;
  const cookie = await cookieOf(address, demoPeople.find(({ role }) => role === 'warehouse')?.email ?? '', passwords['warehouse'] ?? '');
  if (cookie === '') throw new Trouble('Signing in did not give a session.');
  return cookie;
}

/** Seconds until it is ready again. */
async function kill(trial: Trial, victim: Victim): Promise<number> {
  const { house, folder, root, port } = trial;
  const [worker, postmaster] = [workerOf(house), postmasterOf(folder)];
  const from = performance.now();
  const strike = (id: number | undefined) => {
    if (id !== undefined) spawnSync('kill', ['-9', String(id)]);
  };
  if (victim === 'worker' || victim === 'all') strike(worker);
  if (victim === 'postmaster' || victim === 'all') strike(postmaster);
  if (victim === 'node' || victim === 'all') {
    await stopProcess(house, 'SIGKILL');
    trial.house = startHouse(root, folder, port);
  }
  if (victim === 'worker') await untilTrue(() => ![undefined, worker].includes(workerOf(trial.house)), 60);
  // The probe answers from what it saw last: one that was just killed may still look ready.
  if (victim === 'postmaster') await untilTrue(() => ![undefined, postmaster].includes(postmasterOf(folder)), 60);
  await untilReady(trial, 60);
  return Number(((performance.now() - from) / 1000).toFixed(1));
}

const workerOf = (house: ChildProcess): number | undefined => {
  const found = spawnSync('pgrep', ['-P', String(house.pid), '-f', 'apps/worker'], { encoding: 'utf8' })
    .stdout.trim()
    .split('\n')[0];
  return found ? Number(found) : undefined;
};

function postmasterOf(folder: string): number | undefined {
  const found = spawnSync('find', [folder, '-name', 'postmaster.pid'], { encoding: 'utf8' }).stdout.trim().split('\n')[0];
  if (!found) return undefined;
  const [first] = readIfThere(found).split('\n');
  return first ? Number(first) : undefined;
}

function readIfThere(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

async function untilTrue(isSo: () => boolean, seconds: number): Promise<void> {
  for (const end = performance.now() + seconds * 1000; performance.now() < end; await pause(50)) if (isSo()) return;
  throw new Trouble(`What was killed did not come back within ${seconds} s.`);
}

async function untilReady({ address }: Trial, seconds: number): Promise<void> {
  for (const end = performance.now() + seconds * 1000; performance.now() < end; await pause(50)) {
    const isReady = await fetch(`${address}/readyz`, { signal: AbortSignal.timeout(5000) }).then(
      (response) => response.ok,
      () => false,
    );
    if (isReady) return;
  }
  throw new Trouble(`Not ready within ${seconds} s.`);
}

/** Incidents on items of the demo, one after another, each under an id of its own. */
async function write(trial: Trial, writer: number): Promise<void> {
  for (let number = 0; !trial.isOver; number++) {
    const one: Write = { id: randomUUID(), what: `bench ${writer} ${number}`, said: 'unknown yet', isAnswered: false };
    trial.writes.push(one);
    await send(trial, one);
    await pause(one.isAnswered ? 5 : 200);
  }
}

async function send({ address, cookie }: Trial, one: Write): Promise<void> {
  const answer = await fetch(`${address}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie, 'idempotency-key': `"${one.id}"` },
    body: JSON.stringify({
      variables: { itemId: 'H-01', on: '2026-01-02', what: one.what },
      extensions: { persistedQuery: { version: 1, sha256Hash: hashOfOperation('RecordIncident') } },
    }),
    signal: AbortSignal.timeout(15_000),
  })
    .then(async (response) => (response.ok ? ((await response.json()) as { data?: object | null; errors?: object[] }) : undefined))
    .catch(() => undefined);
  if (!answer?.data || answer.errors) return;
  one.said = 'saved';
  one.isAnswered = true;
}

/** What the house says of a write without an answer: the last word. */
async function lookUp({ address, cookie }: Trial, one: Write): Promise<void> {
  if (one.isAnswered) return;
  const response = await fetch(`${address}/api/requests/${one.id}/settle`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-cartwright': '1', cookie },
  });
  if (response.ok) one.said = ((await response.json()) as Pick<Write, 'said'>).said;
}

/** How often each write stands in the database. */
async function timesOnFile(folder: string): Promise<ReadonlyMap<string, number>> {
  const database = await startEmbeddedDatabase({ folder, durable: true, say: () => undefined });
  const client = new pg.Client({ connectionString: database.url });
  await client.connect();
  const { rows } = await client.query<{ what: string; times: number }>(
    `SELECT what, count(*)::int AS times FROM incident WHERE what LIKE 'bench %' GROUP BY what`,
  );
  await client.end();
  await database.stop();
  return new Map(rows.map(({ what, times }) => [what, times]));
}

function report({ writes }: Trial, kills: number, slowest: Record<Victim, number>, onFile: ReadonlyMap<string, number>): number {
  const timesOf = (one: Write) => onFile.get(one.what) ?? 0;
  const told = {
    killsEach: kills,
    writes: writes.length,
    acknowledged: writes.filter((each) => each.isAnswered).length,
    lookedUp: writes.filter((each) => !each.isAnswered).length,
    lost: writes.filter((each) => each.said === 'saved' && timesOf(each) === 0).length,
    twice: writes.filter((each) => timesOf(each) > 1).length,
    saidNotSavedButIs: writes.filter((each) => each.said === 'not saved' && timesOf(each) > 0).length,
    notAnswered: writes.filter((each) => each.said === 'unknown yet').length,
    slowestSecondsToReady: slowest,
  };
  say(JSON.stringify(told));
  const isTrue = told.lost + told.twice + told.saidNotSavedButIs + told.notAnswered === 0;
  return isTrue && told.acknowledged > 0 ? 0 : 1;
}
