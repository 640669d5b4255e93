import type { ChildProcess } from 'node:child_process';
import { setTimeout as pause } from 'node:timers/promises';
import { seededRandom } from '#kernel';
import { MakeService } from '../../../api/src/features/plan/make/make.service.js';
import { theRow } from '../../../api/src/planning/snapshot/queryable.js';
import { numberFrom, readArguments, say } from '../arguments.js';
import { type House, openHouse, startProcess, stopProcess } from '../house/house.js';

const shows = ['quayside', 'old-mill', 'fenland'];

interface JobNow {
  readonly state: string;
  readonly attempt: number;
}

interface Trial {
  readonly house: House;
  /** Two, of which one lives at every moment. */
  readonly workers: ChildProcess[];
  readonly startWorker: () => ChildProcess;
  readonly random: () => number;
  /** `hits`: kills of the worker that had the plan. */
  readonly told: { plans: number; kills: number; hits: number; done: number; mostAttempts: number; longestTakenAgainMs: number };
}

/** Workers are killed (-9) at seeded moments in the middle of plans; each plan has to arrive all the same, once. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const hits = numberFrom(values, 'kills', 20);
  const house = await openHouse(root);
  const startWorker = () => startProcess(root, 'worker', { DATABASE_URL: house.databaseUrl, CARTWRIGHT_LOG_LEVEL: 'error' });
  const told = { plans: 0, kills: 0, hits: 0, done: 0, mostAttempts: 0, longestTakenAgainMs: 0 };
  const trial = { house, workers: [startWorker(), startWorker()], startWorker, random: seededRandom(numberFrom(values, 'seed', 1)), told };
  try {
    while (told.hits < hits) {
      const id = await house.app.get(MakeService).make('harbour-lights', shows[told.plans % shows.length] ?? '', { name: 'Bench' });
      told.plans++;
      const { attempt, state } = await oneKill(trial, id);
      told.mostAttempts = Math.max(told.mostAttempts, attempt);
      if (state === 'done') told.done++;
    }
    const { drafts, events, open } = await theRow<{ drafts: number; events: number; open: number }>(
      house.dataSource.manager,
      `SELECT (SELECT count(*)::int FROM pack_plan) AS drafts, (SELECT count(*)::int FROM event WHERE what = 'planned') AS events,
         (SELECT count(*)::int FROM job WHERE state IN ('waiting', 'running')) AS open`,
    );
    say(JSON.stringify({ ...told, plansSaved: events, drafts, jobsLeftOpen: open }));
    return told.done === told.plans && events === told.plans && open === 0 && told.longestTakenAgainMs < 15_000 ? 0 : 1;
  } finally {
    await Promise.all(trial.workers.map((each) => stopProcess(each, 'SIGKILL')));
    await house.close();
  }
}

/** One plan to its end, while one of the two workers is killed. */
async function oneKill({ house, workers, startWorker, random, told }: Trial, id: string): Promise<JobNow> {
  const now = () => theRow<JobNow>(house.dataSource.manager, 'SELECT state, attempt FROM job WHERE id = $1', [id]);
  const running = await until(now, ({ state }) => state !== 'waiting');
  await pause(1500 * random());
  const unlucky = random() < 0.5 ? 0 : 1;
  const worker = workers[unlucky];
  if (worker && (await now()).state === 'running') {
    await stopProcess(worker, 'SIGKILL');
    const from = performance.now();
    told.kills++;
    const next = await until(now, ({ attempt, state }) => attempt > running.attempt || isOver(state));
    if (next.attempt > running.attempt) {
      told.hits++;
      told.longestTakenAgainMs = Math.max(told.longestTakenAgainMs, Math.round(performance.now() - from));
    }
    workers[unlucky] = startWorker();
  }
  return until(now, ({ state }) => isOver(state));
}

const isOver = (state: string): boolean => state !== 'waiting' && state !== 'running';

async function until(look: () => Promise<JobNow>, isSo: (now: JobNow) => boolean): Promise<JobNow> {
  for (;;) {
    const now = await look();
    if (isSo(now)) return now;
    await pause(20);
  }
}
