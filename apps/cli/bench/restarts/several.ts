import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { DataSource } from 'typeorm';
import { seededRandom } from '#kernel';
import { startEmbeddedDatabase } from '#runtime';
import { createApp } from '../../../api/src/create-app.js';
import { addDemoPeople, demoPeople, loadDemoTour } from '../../../api/src/features/transfer/demo.js';
import { TourFileService } from '../../../api/src/features/transfer/tour-file.service.js';
import { configOf } from '../../../api/src/platform/config/config.js';
import { connectionsOfOne } from '../../../api/src/platform/database/server-check.js';
import type { Role } from '../../../api/src/platform/sign-in/person.js';
import { numberFrom, readArguments, say } from '../arguments.js';
import { benchDay, cookieOf, freePort, password, untilReady } from '../house/house.js';
import { lookUpWrite, tallyOf, timesOnFile } from './acknowledged-writes.js';
import { type KeptProgram, keepProgram } from './kept-program.js';
import { type Told, type Trial, makePlans, probeEvents, watchConnections, watchJobs, write } from './several-at-work.js';

const mostSecondsForTakenJob = 15;
const mostSecondsForEvent = 5;

/**
 * Two APIs, two workers and one PostgreSQL, started together on nothing. People write at both APIs, plans are made, devices listen, and one of the four is
 * killed (-9) at random, `--kills` times, and started again as a service manager would. No write is lost or there twice, every answer is true, what the
 * dead worked on is taken up, and what is written at one API is heard at the other.
 */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const [kills, writers] = [numberFrom(values, 'kills', 40), numberFrom(values, 'writers', 4)];
  const random = seededRandom(numberFrom(values, 'seed', 1));
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-bench-'));
  const server = await startEmbeddedDatabase({ folder, durable: true, say: () => undefined });
  const database = new pg.Pool({ connectionString: server.url, application_name: 'bench', max: 4 });
  // The server ends before the last of them is closed.
  database.on('error', () => undefined);
  const from = performance.now();
  const { apis, workers } = await startAll(root, server.url);
  const programs: readonly KeptProgram[] = [...apis, ...workers];
  let trial: Trial | undefined;
  try {
    await Promise.all(programs.map((each) => untilReady(each.address, 300)));
    const secondsToUp = seconds(performance.now() - from);
    const firstStarts = programs.map((each) => each.starts);
    const firstPeople = await numberOf(database, `SELECT count(*)::int AS number FROM account`);
    await fillDemo(server.url, root);
    const opened = (trial = await openTrial(apis, database, random));
    const working = [
      ...Array.from({ length: writers }, (_, index) => write(opened, index)),
      makePlans(trial),
      probeEvents(trial),
      watchJobs(trial),
      watchConnections(trial),
    ];
    const going = Promise.all(working);
    const [slowestToReady, killed] = await Promise.race([killAtRandom(trial, programs, kills), going.then(ended)]);
    trial.isOver = true;
    await going;
    for (const each of trial.writes) await lookUpWrite(apis[0].address, trial.cookies.warehouse, each);
    const limit = await numberOf(database, `SELECT current_setting('max_connections')::int AS number`);
    const begun = { secondsToUp, firstStarts, firstPeople };
    const held = { mostConnections: trial.told.mostConnections, counted: 4 * connectionsOfOne(), limit };
    return report(trial, { kills, killed, slowestToReady }, begun, held, await timesOnFile(server.url));
  } finally {
    // Those who write and watch end as well, also where the four did not come back.
    if (trial) trial.isOver = true;
    await Promise.all(programs.map((each) => each.stop()));
    await database.end();
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Whoever works ends only when it is over; a fault of one of them ends the trial. */
const ended = (): never => {
  throw new Error('those at work ended before the kills');
};

const seconds = (ms: number): number => Number((ms / 1000).toFixed(2));

/** All four at once, each with the environment that the units give it; the first people are named to both APIs. */
async function startAll(root: string, databaseUrl: string) {
  const environment = {
    DATABASE_URL: databaseUrl,
    CARTWRIGHT_LOG_LEVEL: 'fatal',
    FIRST_EMAIL: 'first@cartwright.example',
    FIRST_PASSWORD: 'a long first secret',
    FIRST_SAFETY_EMAIL: 'second@cartwright.example',
    FIRST_SAFETY_PASSWORD: 'a long second secret',
  };
  const [a, b, c, d] = [await freePort(), await freePort(), await freePort(), await freePort()];
  return {
    apis: [keepProgram(root, 'api', 'api 0', a, environment), keepProgram(root, 'api', 'api 1', b, environment)] as const,
    workers: [keepProgram(root, 'worker', 'worker 0', c, environment), keepProgram(root, 'worker', 'worker 1', d, environment)] as const,
  };
}

/** The demo tour, and two of its people to work with, put on file beside the four. */
async function fillDemo(databaseUrl: string, root: string): Promise<void> {
  const app = await createApp({ config: configOf(databaseUrl) });
  await app.init();
  await loadDemoTour(app.get(TourFileService), root, benchDay);
  // The safety officer is there already, named to the APIs.
  const people = demoPeople.filter(({ role }) => role !== 'safety');
  await addDemoPeople(app.get(DataSource), () => password, people);
  await app.close();
}

async function openTrial(apis: Trial['apis'], database: pg.Pool, random: () => number): Promise<Trial> {
  const cookie = (role: Role) => cookieOf(apis[0].address, demoPeople.find((each) => each.role === role)?.email ?? '', password);
  const told: Told = {
    plansDone: 0,
    plansRefused: {},
    jobsOfTheDead: 0,
    longestSecondsUntilTakenUp: 0,
    eventsHeard: 0,
    eventsMissed: 0,
    longestSecondsUntilHeard: 0,
    longestSecondsUntilHeardOverAKill: 0,
    answeredAtTheOther: 0,
    mostConnections: 0,
  };
  const cookies = { warehouse: await cookie('warehouse'), system: await cookie('system') };
  return { apis, database, random, cookies, writes: [], told, kills: 0, down: undefined, isOver: false };
}

/** One after another, the next when the last is ready again; gives the longest that one took, s, and how often each was killed. */
async function killAtRandom(trial: Trial, programs: readonly KeptProgram[], kills: number) {
  let slowest = 0;
  const killed: Record<string, number> = Object.fromEntries(programs.map((each) => [each.name, 0]));
  for (; trial.kills < kills; trial.kills++) {
    await pause(300 + 1200 * trial.random());
    const victim = programs[Math.floor(trial.random() * programs.length)];
    if (!victim) continue;
    killed[victim.name] = (killed[victim.name] ?? 0) + 1;
    trial.down = victim;
    slowest = Math.max(slowest, await victim.kill());
    trial.down = undefined;
  }
  return [Number(slowest.toFixed(2)), killed] as const;
}

async function numberOf(database: pg.Pool, sql: string): Promise<number> {
  const { rows } = await database.query<{ number: number }>(sql);
  return rows[0]?.number ?? Number.NaN;
}

function report(
  { writes, told }: Trial,
  kills: { kills: number; killed: object; slowestToReady: number },
  begun: { secondsToUp: number; firstStarts: readonly number[]; firstPeople: number },
  held: { mostConnections: number; counted: number; limit: number },
  onFile: ReadonlyMap<string, number>,
): number {
  const { tally, isTrue } = tallyOf(writes, onFile);
  const { mostConnections, ...rest } = told;
  say(
    `Connections: at most ${mostConnections} held by the four, who may hold ${held.counted} (${held.counted / 4} each); PostgreSQL takes ${held.limit}.`,
  );
  say(JSON.stringify({ ...begun, ...kills, ...tally, ...rest, connections: held }));
  const isUpOnce = begun.firstStarts.every((each) => each === 1) && begun.firstPeople === 2;
  // With few kills none may have had a job.
  const isTakenUp =
    told.longestSecondsUntilTakenUp <= mostSecondsForTakenJob && told.plansDone > 0 && (told.jobsOfTheDead > 0 || kills.kills < 20);
  const isHeard = told.eventsHeard > 0 && told.eventsMissed === 0 && told.longestSecondsUntilHeard <= mostSecondsForEvent;
  const isInRoom = mostConnections <= held.counted && held.counted <= held.limit;
  // A plan may be refused only because what it is made from kept changing.
  const isPlanned = Object.keys(told.plansRefused).every((code) => code === 'inputs-kept-changing');
  return isTrue && isUpOnce && isTakenUp && isHeard && isInRoom && isPlanned ? 0 : 1;
}
