import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { startEmbeddedDatabase } from '#runtime';
import { numberFrom, readArguments, say } from '../arguments.js';
import { freePort, stopProcess } from '../house/house.js';

/**
 * Starts at once on an empty database of one server, each with the worker that it brings: all of them come up, one of them fills the demo, nothing is there twice.
 * `--rounds` times, each on a new database.
 */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const [rounds, atOnce] = [numberFrom(values, 'rounds', 20), numberFrom(values, 'at-once', 3)];
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-bench-'));
  const database = await startEmbeddedDatabase({ folder, durable: false, say: () => undefined });
  const told = { rounds: 0, starts: 0, up: 0, filledOnce: 0, slowestSeconds: 0 };
  try {
    for (; told.rounds < rounds; told.rounds++) {
      const url = await emptyDatabase(database.url, `house_${told.rounds}`);
      const starts = await Promise.all(Array.from({ length: atOnce }, (_, index) => start(root, url, join(folder, `start-${index}`))));
      const from = performance.now();
      const up = await Promise.all(starts.map(isReady));
      told.starts += atOnce;
      told.up += up.filter(Boolean).length;
      told.slowestSeconds = Math.max(told.slowestSeconds, Number(((performance.now() - from) / 1000).toFixed(1)));
      if (await isFilledOnce(url)) told.filledOnce++;
      await Promise.all(starts.map((each) => stopProcess(each.process, 'SIGTERM')));
    }
    say(JSON.stringify(told));
    return told.up === told.starts && told.filledOnce === rounds ? 0 : 1;
  } finally {
    await database.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Start {
  readonly process: ChildProcess;
  readonly port: number;
}

async function start(root: string, databaseUrl: string, dataFolder: string): Promise<Start> {
  const port = await freePort();
  const environment = {
    ...process.env,
    DATABASE_URL: databaseUrl,
    PORT: String(port),
    DATA_FOLDER: dataFolder,
    CARTWRIGHT_LOG_LEVEL: 'error',
  };
  const child = spawn(process.execPath, [join(root, 'apps', 'cli', 'run.mjs'), 'start'], {
    env: environment,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  return { process: child, port };
}

/** Ready within five minutes, by /readyz. */
async function isReady({ process: child, port }: Start): Promise<boolean> {
  for (let turn = 0; turn < 1500 && child.exitCode === null && child.signalCode === null; turn++) {
    const ready = await fetch(`http://127.0.0.1:${port}/readyz`).then(
      (response) => response.ok,
      () => false,
    );
    if (ready) return true;
    await pause(200);
  }
  return false;
}

async function emptyDatabase(serverUrl: string, name: string): Promise<string> {
  const client = new pg.Client({ connectionString: serverUrl });
  await client.connect();
  await client.query(`CREATE DATABASE ${name}`);
  await client.end();
  const url = new URL(serverUrl);
  url.pathname = `/${name}`;
  return url.toString();
}

/** The demo is there, and once: its tour, three people, three drafts. */
async function isFilledOnce(url: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const { rows } = await client.query<{ tours: number; people: number; drafts: number }>(
      `SELECT (SELECT count(*)::int FROM tour) AS tours, (SELECT count(*)::int FROM account) AS people,
         (SELECT count(*)::int FROM pack_plan) AS drafts`,
    );
    const [found] = rows;
    return found?.tours === 1 && found.people === 3 && found.drafts === 3;
  } finally {
    await client.end();
  }
}
