import { JobRunner } from '../../apps/api/src/planning/jobs/job-runner.js';
import { Gate } from '../support/gate.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const make =
  'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside", waitMs: 0) { ... on JobUnderWay { job { id state } } } }';
const job = 'query($id: ID!) { job(id: $id) { state errorCode sentence } }';

describe('a job whose worker is gone', () => {
  let test: TestApp;
  let system: Agent;
  beforeEach(async () => {
    test = await startTestApp({ runsJobs: false });
    system = await test.as('system');
  });
  afterEach(() => test.close());

  const ask = async (): Promise<string> => (await system.graphql(make)).data.makePackPlan.job.id;
  const row = async (id: string): Promise<{ state: string; attempt: number; lease: Date | null }> =>
    (await test.dataSource.query('SELECT state, attempt, lease_until AS lease FROM job WHERE id = $1', [id]))[0];
  const over = async (id: string) => {
    for (;;) {
      const now = (await system.graphql(job, { id })).data.job;
      if (now.state !== 'waiting' && now.state !== 'running') return now;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  };
  /** As a worker leaves it that died in its attempt of this number. */
  const abandon = (id: string, attempt: number) =>
    test.dataSource.query(
      `UPDATE job SET state = 'running', attempt = $2, started_at = clock_timestamp(), lease_until = clock_timestamp() - interval '1 second' WHERE id = $1`,
      [id, attempt],
    );

  it('begins again with whoever looks after its lease ran out', async () => {
    const id = await ask();
    await abandon(id, 7);
    test.app.get(JobRunner).start();
    expect(await over(id)).toMatchObject({ state: 'done' });
    expect((await row(id)).attempt).toBe(8);
  });

  it('is given up after eight workers, and says so', async () => {
    const id = await ask();
    await abandon(id, 8);
    test.app.get(JobRunner).start();
    expect(await over(id)).toEqual({
      state: 'failed',
      errorCode: 'workers-died',
      sentence: '8 workers died while they planned this; it is not tried again.',
    });
    expect(await test.dataSource.query('SELECT id FROM pack_plan')).toEqual([]);
  });

  it('is given back at once by a worker that is told to stop, and no attempt is counted', async () => {
    const gate = new Gate('before');
    const worker = await startTestApp({ beside: test, solversAround: gate.around });
    const id = await ask();
    await gate.reached(1);
    expect(await row(id)).toMatchObject({ state: 'running', attempt: 1 });
    const stopped = worker.close();
    gate.open();
    await stopped;
    expect(await row(id)).toEqual({ state: 'waiting', attempt: 0, lease: null });
  });
});
