import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import type pg from 'pg';
import { hashOfOperation } from '../../../api/src/platform/door/listed-operations.js';
import { type Write, newWrite, sendWrite } from './acknowledged-writes.js';
import { ChangeListener } from './change-listener.js';
import type { KeptProgram } from './kept-program.js';

/** A plan of each is waited for or made at every moment, so that most processes have one. */
const shows = ['quayside', 'old-mill', 'fenland'];
/** Longer than a killed API takes to be back: what is not heard by then was missed. */
const patienceForEventMs = 180_000;
const lookEveryMs = 100;

/** People write for a while and rest for a while, ms: a plan is not made from a register that never stands still. */
const [writingMs, restingMs] = [4_000, 11_000];
const isResting = (): boolean => performance.now() % (writingMs + restingMs) > writingMs;

export interface Told {
  plansDone: number;
  /** How many by the code of their refusal. */
  readonly plansRefused: Record<string, number>;
  /** Jobs whose process was killed, and the longest from its last sign of life until another one had it. */
  jobsOfTheDead: number;
  longestSecondsUntilTakenUp: number;
  /** Writes at one API, told by the stream of the other. */
  eventsHeard: number;
  eventsMissed: number;
  longestSecondsUntilHeard: number;
  /** Of those whose API was killed in between, and whose stream had to come back. */
  longestSecondsUntilHeardOverAKill: number;
  /** Writes that the first API did not answer and the second did, under the same id. */
  answeredAtTheOther: number;
  mostConnections: number;
}

export interface Trial {
  readonly apis: readonly [KeptProgram, KeptProgram];
  readonly database: pg.Pool;
  readonly random: () => number;
  readonly cookies: { readonly warehouse: string; readonly system: string };
  readonly writes: Write[];
  readonly told: Told;
  kills: number;
  /** The one that is dead or not back yet. */
  down: KeptProgram | undefined;
  isOver: boolean;
}

const longer = (most: number, ms: number): number => Math.max(most, Number((ms / 1000).toFixed(2)));

/** A person at one API, who goes on at the other under the same id where no answer comes. */
export async function write(trial: Trial, writer: number): Promise<void> {
  const { apis, cookies, writes, told } = trial;
  for (let number = 0; !trial.isOver; number++) {
    const one = newWrite(`${writer} ${number}`, `H-0${(writer % 8) + 1}`);
    writes.push(one);
    const first = (writer + number) % 2;
    for (const api of first === 0 ? apis : [apis[1], apis[0]]) {
      await sendWrite(api.address, cookies.warehouse, one);
      if (!one.isAnswered) continue;
      if (api !== apis[first]) told.answeredAtTheOther++;
      break;
    }
    do await pause(100 + 200 * trial.random());
    while (isResting() && !trial.isOver);
  }
}

/** Keeps some plans going until it is over, then waits for those that are. */
export async function makePlans(trial: Trial): Promise<void> {
  const ofShow = async (showId: string) => {
    for (let number = 0; !trial.isOver; number++) await plan(trial, showId, number % 2);
  };
  await Promise.all(shows.map(ofShow));
}

async function plan({ apis, cookies, database, told }: Trial, showId: string, first: number): Promise<void> {
  const id = randomUUID();
  let jobId: string | undefined;
  for (const api of first === 0 ? apis : [apis[1], apis[0]]) jobId ??= await askForPlan(api.address, cookies.system, showId, id);
  // Made within the request, or asked for of nobody.
  if (jobId === undefined) return pause(200);
  for (;;) {
    const { rows } = await database.query<{ state: string; error_code: string | null }>('SELECT state, error_code FROM job WHERE id = $1', [
      jobId,
    ]);
    const [job] = rows;
    if (job?.state === 'done') told.plansDone++;
    else if (job?.state !== 'waiting' && job?.state !== 'running') {
      const code = job?.error_code ?? job?.state ?? 'gone';
      told.plansRefused[code] = (told.plansRefused[code] ?? 0) + 1;
    }
    if (job?.state !== 'waiting' && job?.state !== 'running') return;
    await pause(lookEveryMs);
  }
}

/** The id of the job, where it is not over within the request. */
async function askForPlan(address: string, cookie: string, showId: string, id: string): Promise<string | undefined> {
  const body = JSON.stringify({
    variables: { tourId: 'harbour-lights', showId },
    extensions: { persistedQuery: { version: 1, sha256Hash: hashOfOperation('MakePackPlan') } },
  });
  const headers = { 'content-type': 'application/json', cookie, 'idempotency-key': `"${id}"` };
  const signal = AbortSignal.timeout(15_000);
  const answer = await fetch(`${address}/graphql`, { method: 'POST', headers, body, signal })
    .then((response) => response.json() as Promise<{ data?: { makePackPlan?: { job?: { id: string } } } }>)
    .catch(() => undefined);
  return answer?.data?.makePackPlan?.job?.id;
}

/** A write at one API, and how long until the stream of the other tells it; back and forth. */
export async function probeEvents(trial: Trial): Promise<void> {
  const { apis, cookies, told, writes } = trial;
  const listeners = [new ChangeListener(apis[0].address, cookies.system), new ChangeListener(apis[1].address, cookies.system)] as const;
  for (let number = 0; !trial.isOver; number++) {
    const [at, other, listener] = number % 2 === 0 ? [apis[0], apis[1], listeners[1]] : [apis[1], apis[0], listeners[0]];
    await pause(200);
    if (trial.down === at || isResting()) continue;
    // Each a different item than the last ones, so that no other change is taken for it.
    const itemId = `P-0${String((number % 69) + 1).padStart(2, '0')}`;
    const one = newWrite(`event ${number}`, itemId);
    writes.push(one);
    const wasWhole = trial.down !== other;
    const { starts } = other;
    const heard = listener.hears(`item/${itemId}`, patienceForEventMs);
    await sendWrite(at.address, cookies.warehouse, one);
    const from = performance.now();
    // Without an answer it may not be there at all.
    if (!one.isAnswered) continue;
    const isHeard = await heard;
    const took = performance.now() - from;
    told[isHeard ? 'eventsHeard' : 'eventsMissed']++;
    const isWhole = wasWhole && trial.down !== other && other.starts === starts;
    if (isWhole) told.longestSecondsUntilHeard = longer(told.longestSecondsUntilHeard, took);
    else told.longestSecondsUntilHeardOverAKill = longer(told.longestSecondsUntilHeardOverAKill, took);
  }
  for (const each of listeners) each.stop();
}

/** Every job that is under way: one whose attempt counts up was another process's, which is dead. */
export async function watchJobs(trial: Trial): Promise<void> {
  interface Job {
    readonly id: string;
    readonly attempt: number;
    readonly lease: string | null;
  }
  const known = new Map<string, Job & { readonly aliveAt: number }>();
  while (!trial.isOver) {
    const { rows } = await trial.database.query<Job>(`SELECT id, attempt, lease_until::text AS lease FROM job WHERE state = 'running'`);
    const now = performance.now();
    for (const job of rows) {
      const before = known.get(job.id);
      if (before && job.attempt > before.attempt) {
        trial.told.jobsOfTheDead++;
        trial.told.longestSecondsUntilTakenUp = longer(trial.told.longestSecondsUntilTakenUp, now - before.aliveAt);
      }
      if (before?.attempt !== job.attempt || before.lease !== job.lease) known.set(job.id, { ...job, aliveAt: now });
    }
    await pause(lookEveryMs);
  }
}

/** What the programs of the house hold at the server, all together. */
export async function watchConnections(trial: Trial): Promise<void> {
  const { database, told } = trial;
  while (!trial.isOver) {
    const { rows } = await database.query<{ held: number }>(
      `SELECT count(*)::int AS held FROM pg_stat_activity WHERE application_name LIKE 'cartwright%'`,
    );
    told.mostConnections = Math.max(told.mostConnections, rows[0]?.held ?? 0);
    await pause(lookEveryMs);
  }
}
