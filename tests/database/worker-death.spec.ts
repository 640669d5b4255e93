import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import pg from 'pg';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const make =
  'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside", waitMs: 0) { ... on JobUnderWay { job { id state } } } }';

/** The built worker, in a process of its own. */
function startWorker(databaseUrl: string, channel: 'ipc' | 'ignore' = 'ignore'): ChildProcess {
  return spawn(process.execPath, [join(process.cwd(), 'dist', 'apps', 'worker', 'src', 'main.js')], {
    env: { ...process.env, DATABASE_URL: databaseUrl, NODE_OPTIONS: '' },
    stdio: ['ignore', 'ignore', 'ignore', channel],
  });
}

describe('a worker that is killed in the middle of a plan', () => {
  let test: TestApp;
  let system: Agent;
  const workers: ChildProcess[] = [];
  beforeAll(async () => {
    test = await startTestApp({ runsJobs: false });
    system = await test.as('system');
  });
  afterAll(async () => {
    for (const each of workers) each.kill('SIGKILL');
    await test.close();
  });

  const job = async (): Promise<{ state: string; attempt: number }> =>
    (await test.dataSource.query('SELECT state, attempt FROM job ORDER BY number DESC LIMIT 1'))[0];
  const until = async (isSo: (now: { state: string; attempt: number }) => boolean) => {
    for (;;) {
      const now = await job();
      if (isSo(now)) return now;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  };

  it('leaves a plan that arrives all the same, once', async () => {
    // While this lock is held no plan can read its inputs to the end: the worker is killed in the middle, however fast the machine is.
    const holder = new pg.Client({ connectionString: test.databaseUrl });
    await holder.connect();
    await holder.query('BEGIN; LOCK TABLE hardware_count IN ACCESS EXCLUSIVE MODE');
    const first = startWorker(test.databaseUrl);
    workers.push(first);
    expect((await system.graphql(make)).data.makePackPlan.job.state).toBe('waiting');
    await until(({ state }) => state === 'running');
    first.kill('SIGKILL');
    await once(first, 'exit');
    expect(await job()).toEqual({ state: 'running', attempt: 1 });
    await holder.query('COMMIT');
    await holder.end();
    workers.push(startWorker(test.databaseUrl));
    expect(await until(({ state }) => state !== 'waiting' && state !== 'running')).toEqual({ state: 'done', attempt: 2 });
    const drafts = await test.dataSource.query(`SELECT id FROM pack_plan`);
    const events = await test.dataSource.query(`SELECT sentence FROM event WHERE what = 'planned'`);
    expect([drafts.length, events.length]).toEqual([1, 1]);
  });

  it('ends with the house that started it, whenever in its start the house ends', async () => {
    const moments = [0, 200, 400, 700, 1100, 1800];
    await Promise.all(
      moments.map(async (ms) => {
        const worker = startWorker(test.databaseUrl, 'ipc');
        workers.push(worker);
        const ended = once(worker, 'exit');
        await new Promise((resolve) => setTimeout(resolve, ms));
        worker.disconnect();
        await ended;
      }),
    );
    expect(workers.slice(-moments.length).every(({ exitCode, signalCode }) => exitCode !== null || signalCode !== null)).toBe(true);
  });
});
