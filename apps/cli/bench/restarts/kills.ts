import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { seededRandom } from '#kernel';
import { Trouble, startEmbeddedDatabase } from '#runtime';
import { demoPeople } from '../../../api/src/features/transfer/demo.js';
import { numberFrom, readArguments, say } from '../arguments.js';
import { cookieOf, freePort, stopProcess, untilReady } from '../house/house.js';
import { type Write, lookUpWrite, newWrite, sendWrite, tallyOf, timesOnFile } from './acknowledged-writes.js';

/** Who is killed: the house (API and screens), its database server, its worker, or all of them at once. */
const victims = ['node', 'postmaster', 'all', 'worker'] as const;
type Victim = (typeof victims)[number];

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
    await untilReady(trial.address, 300);
    trial.cookie = await signInOf(trial);
    const writing = Array.from({ length: writers }, (_, index) => write(trial, index));
    for (let turn = 0; turn < kills * victims.length; turn++) {
      const victim = victims[turn % victims.length] ?? 'node';
      await pause(300 + 900 * random());
      slowest[victim] = Math.max(slowest[victim], await kill(trial, victim));
    }
    trial.isOver = true;
    await Promise.all(writing);
    for (const each of trial.writes) await lookUpWrite(trial.address, trial.cookie, each);
    await stopProcess(trial.house, 'SIGTERM');
    return report(trial, kills, slowest, await onFileIn(folder));
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
  await untilReady(trial.address, 60);
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

/** Incidents on items of the demo, one after another, each under an id of its own. */
async function write(trial: Trial, writer: number): Promise<void> {
  for (let number = 0; !trial.isOver; number++) {
    const one = newWrite(`${writer} ${number}`, 'H-01');
    trial.writes.push(one);
    await sendWrite(trial.address, trial.cookie, one);
    await pause(one.isAnswered ? 5 : 200);
  }
}

/** The database alone, after the house was stopped. */
async function onFileIn(folder: string): Promise<ReadonlyMap<string, number>> {
  const database = await startEmbeddedDatabase({ folder, durable: true, say: () => undefined });
  try {
    return await timesOnFile(database.url);
  } finally {
    await database.stop();
  }
}

function report({ writes }: Trial, kills: number, slowest: Record<Victim, number>, onFile: ReadonlyMap<string, number>): number {
  const { tally, isTrue } = tallyOf(writes, onFile);
  say(JSON.stringify({ killsEach: kills, ...tally, slowestSecondsToReady: slowest }));
  return isTrue ? 0 : 1;
}
