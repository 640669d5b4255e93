import { Gate } from '../support/gate.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const make =
  'mutation($wait: Int) { makePackPlan(tourId: "harbour-lights", showId: "quayside", waitMs: $wait) { __typename ... on JobUnderWay { job { id } } } }';

describe('planning that is watched', () => {
  const gate = new Gate('after');
  let test: TestApp;
  let system: Agent;
  beforeAll(async () => {
    test = await startTestApp({ runsJobs: false });
    system = await test.as('system');
  });
  afterAll(() => test.close());

  const numbers = async (address: string): Promise<ReadonlyMap<string, number>> => {
    const text = await (await fetch(`${address}/metrics`)).text();
    return new Map(
      text
        .split('\n')
        .filter((line) => !line.startsWith('#'))
        .map((line) => [line.slice(0, line.lastIndexOf(' ')), Number(line.slice(line.lastIndexOf(' ') + 1))]),
    );
  };

  it('tells how many jobs wait and for how long, how many solvers are at work, and how long each kind took and what ended it', async () => {
    const idle = await numbers(test.address);
    expect(idle.get('cartwright_jobs_waiting')).toBe(0);
    expect(idle.get('cartwright_jobs_oldest_waiting_seconds')).toBe(0);
    await system.graphql(make, { wait: 0 });
    await test.dataSource.query(`UPDATE job SET asked_at = asked_at - interval '1 hour'`);
    const waiting = await numbers(test.address);
    expect(waiting.get('cartwright_jobs_waiting')).toBe(1);
    expect(waiting.get('cartwright_jobs_oldest_waiting_seconds')).toBeGreaterThanOrEqual(3600);
    expect(waiting.get('cartwright_solvers_busy')).toBe(0);
    expect(waiting.get('cartwright_solvers')).toBeGreaterThanOrEqual(1);

    const worker = await startTestApp({ beside: test, solversAround: gate.around });
    try {
      const busy = async () => (await numbers(worker.address)).get('cartwright_solvers_busy');
      while ((await busy()) === 0) await new Promise((resolve) => setTimeout(resolve, 10));
      expect(await busy()).toBe(1);
      await gate.reached(1);
      expect(await busy()).toBe(0);
      gate.open();
      // The first of these asks for what is under way already, and waits for it.
      await system.graphql(make, { wait: 60_000 });
      await system.graphql(make, { wait: 60_000 });
      const [{ stoppedBy }] = await test.dataSource.query(`SELECT stopped_by AS "stoppedBy" FROM job WHERE state = 'done' LIMIT 1`);
      const done = await numbers(worker.address);
      expect(['proof', 'work']).toContain(stoppedBy);
      expect(done.get(`cartwright_plan_seconds_count{kind="make",stopped_by="${stoppedBy}"}`)).toBe(2);
      expect(done.get('cartwright_jobs_waiting')).toBe(0);
    } finally {
      gate.open();
      await worker.close();
    }
  });
});
