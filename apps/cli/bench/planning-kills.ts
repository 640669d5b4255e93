import type { ChildProcess } from 'node:child_process';
import { setTimeout as pause } from 'node:timers/promises';
import { seededRandom } from '#kernel';
import { MakeService } from '../../api/src/features/plan/make.service.js';
import { numberFrom, readArguments, say } from './arguments.js';
import { type House, openHouse, startProcess, stopProcess } from './house.js';

interface JobNow {
  readonly state: string;
  readonly attempt: number;
}

/** Workers are killed (-9) at seeded moments in the middle of plans; each plan has to arrive all the same, once. */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const kills = numberFrom(values, 'kills', 20);
  const random = seededRandom(numberFrom(values, 'seed', 1));
  const house = await openHouse(root);
  const startWorker = () => startProcess(root, 'worker', { DATABASE_URL: house.databaseUrl });
  const workers = [startWorker(), startWorker()];
  const told = { plans: 0, kills: 0, done: 0, mostAttempts: 0, longestTakenAgainMs: 0 };
  try {
    while (told.kills < kills) {
      const id = await house.app
        .get(MakeService)
        .make('harbour-lights', pick(['quayside', 'old-mill', 'fenland'], random), { name: 'Bench' });
      told.plans++;
      const { attempt, state } = await through(house, id, workers, startWorker, told, kills, random);
      told.mostAttempts = Math.max(told.mostAttempts, attempt);
      if (state === 'done') told.done++;
    }
    const [{ drafts, events, open }] = await house.dataSource.query<[{ drafts: number; events: number; open: number }]>(
      `SELECT (SELECT count(*)::int FROM pack_plan) AS drafts, (SELECT count(*)::int FROM event WHERE what = 'planned') AS events,
         (SELECT count(*)::int FROM job WHERE state IN ('waiting', 'running')) AS open`,
    );
    say(JSON.stringify({ ...told, plansSaved: events, drafts, jobsLeftOpen: open }));
    return told.done === told.plans && events === told.plans && open === 0 && told.longestTakenAgainMs < 15_000 ? 0 : 1;
  } finally {
    await Promise.all(workers.map((each) => stopProcess(each, 'SIGKILL')));
    await house.close();
  }
}

/** One plan to its end, with one or two kills of whoever makes it. */
async function through(
  house: House,
  id: string,
  workers: ChildProcess[],
  startWorker: () => ChildProcess,
  told: { kills: number; longestTakenAgainMs: number },
  kills: number,
  random: () => number,
): Promise<JobNow> {
  const now = async (): Promise<JobNow> =>
    (await house.dataSource.query<JobNow[]>('SELECT state, attempt FROM job WHERE id = $1', [id]))[0]!;
  for (let wanted = random() < 0.3 ? 2 : 1; wanted > 0 && told.kills < kills; wanted--) {
    const running = await until(now, ({ state }) => state !== 'waiting');
    await pause(1500 * random());
    if ((await now()).state !== 'running') break;
    // Nobody knows who has it: both die.
    await Promise.all(workers.map((each) => stopProcess(each, 'SIGKILL')));
    const from = performance.now();
    told.kills++;
    workers.splice(0, workers.length, startWorker(), startWorker());
    await until(now, ({ attempt, state }) => attempt > running.attempt || state === 'done');
    told.longestTakenAgainMs = Math.max(told.longestTakenAgainMs, Math.round(performance.now() - from));
  }
  return until(now, ({ state }) => state !== 'waiting' && state !== 'running');
}

async function until(look: () => Promise<JobNow>, isSo: (now: JobNow) => boolean): Promise<JobNow> {
  for (;;) {
    const now = await look();
    if (isSo(now)) return now;
    await pause(20);
  }
}

const pick = <T>(values: readonly T[], random: () => number): T => values[Math.floor(random() * values.length)]!;
