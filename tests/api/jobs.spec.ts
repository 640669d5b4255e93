import { randomUUID } from 'node:crypto';
import { Gate } from '../support/gate.js';
import { type Agent, startTestApp } from '../support/test-app.js';

const answer = '{ __typename ... on PlanMade { planId } ... on PlanningRefusal { code sentence } ... on JobUnderWay { job { id state } } }';
const make = `mutation($show: ID!, $wait: Int) { makePackPlan(tourId: "harbour-lights", showId: $show, waitMs: $wait) ${answer} }`;
const job = 'query($id: ID!) { job(id: $id) { id kind state progress askedBy sentence errorCode } }';
const cancel = 'mutation($id: ID!) { cancelJob(id: $id) { state sentence } }';
const page = 'query($show: ID!) { showPage(tourId: "harbour-lights", showId: $show) { draft { id changed { code } plan } } }';
const search = 'mutation { startSearch(tourId: "harbour-lights", showId: "quayside") { id state } }';
const latest = '{ latestJob(kind: "search", tourId: "harbour-lights", showId: "quayside") { id state progress sentence errorCode } }';

const wait = 60_000;

/** A longer search is counted in work, not in time: on a busy machine it takes its while. */
const patience = 900_000;

/** An API whose planning the test holds, and what is asked of it. */
async function start(gate: Gate) {
  const test = await startTestApp({ solversAround: gate.around });
  const system = await test.as('system');
  const ask = async (show: string, waitMs: number, requestId?: string, agent: Agent = system) => {
    const headers: Record<string, string> = requestId ? { 'idempotency-key': `"${requestId}"` } : {};
    const { data, errors } = await agent.graphql(make, { show, wait: waitMs }, headers);
    expect(errors).toBeUndefined();
    return data.makePackPlan;
  };
  return {
    test,
    system,
    ask,
    draft: async (show: string) => (await system.graphql(page, { show })).data.showPage.draft,
    jobNow: async (id: string) => (await system.graphql(job, { id })).data.job,
    over: async (id: string) => {
      for (;;) {
        const now = (await system.graphql(job, { id })).data.job;
        if (now.state !== 'waiting' && now.state !== 'running') return now;
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
    },
    count: async (sql: string): Promise<number> => Number((await test.dataSource.query(`SELECT count(*) FROM ${sql}`))[0].count),
  };
}

describe('planning that goes on beside the requests', () => {
  const gate = new Gate('before');
  let house: Awaited<ReturnType<typeof start>>;
  beforeAll(async () => {
    house = await start(gate);
  });
  afterAll(async () => {
    gate.open();
    await house.test.close();
  });

  it('lets every read be answered while a plan is being made', async () => {
    const before = gate.came.length;
    const { job: going } = await house.ask('quayside', 0);
    await gate.reached(before + 1);
    expect((await fetch(`${house.test.address}/healthz`)).status).toBe(200);
    expect(await house.draft('quayside')).toBeNull();
    const register = await house.system.graphql('{ items(first: 50) { edges { node { id } } } }');
    expect(register.errors).toBeUndefined();
    expect(register.data.items.edges).toHaveLength(50);
    expect(await house.jobNow(going.id)).toMatchObject({ kind: 'make', state: 'running', progress: 0, askedBy: 'Sol Achterberg' });
    gate.open({ stays: false });
    expect(await house.over(going.id)).toMatchObject({ state: 'done', progress: 1 });
    expect((await house.draft('quayside')).changed).toEqual([]);
  });

  it('is one job with one answer for one request id, asked twice at once and once again', async () => {
    const jobs = await house.count('job');
    const plans = await house.count(`event WHERE what = 'planned'`);
    const before = gate.came.length;
    const requestId = randomUUID();
    const twice = Promise.all([house.ask('quayside', wait, requestId), house.ask('quayside', wait, requestId)]);
    await gate.reached(before + 1);
    gate.open({ stays: false });
    const [first, second] = await twice;
    expect(first).toEqual({ __typename: 'PlanMade', planId: (await house.draft('quayside')).id });
    expect(second).toEqual(first);
    expect(await house.ask('quayside', wait, requestId)).toEqual(first);
    expect(await house.count('job')).toBe(jobs + 1);
    expect(await house.count(`event WHERE what = 'planned'`)).toBe(plans + 1);
    expect(gate.came).toHaveLength(before + 1);
  });

  it('ends a job that runs and one that waits when they are cancelled, and changes nothing', async () => {
    const draft = await house.draft('quayside');
    const before = gate.came.length;
    const running = (await house.ask('quayside', 0)).job;
    await gate.reached(before + 1);
    const others = await Promise.all([1, 2, 3].map(async () => (await house.ask('fenland', 0)).job));
    const waiting = others.at(-1);
    for (const { id } of [running, waiting])
      expect((await house.system.graphql(cancel, { id })).data.cancelJob).toEqual({
        state: 'cancelled',
        sentence: 'Stopped by Sol Achterberg; nothing was changed.',
      });
    for (const { id } of others) await house.system.graphql(cancel, { id });
    gate.open({ stays: false });
    expect(await house.draft('quayside')).toEqual(draft);
    expect(await house.draft('fenland')).toBeNull();
    const again = (await house.system.graphql(cancel, { id: running.id })).data.cancelJob;
    expect(again.state).toBe('cancelled');
  });

  it('does not cancel what is over, nor for the safety officer', async () => {
    const safety = await house.test.as('safety');
    const before = gate.came.length;
    const made = house.ask('quayside', wait);
    await gate.reached(before + 1);
    gate.open({ stays: false });
    await made;
    const [{ id }] = await house.test.dataSource.query(`SELECT id FROM job WHERE state = 'done' ORDER BY number DESC LIMIT 1`);
    expect((await safety.graphql(cancel, { id })).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    expect((await house.system.graphql(cancel, { id })).data.cancelJob.state).toBe('done');
    expect((await house.jobNow(id)).state).toBe('done');
  });

  it('plans two shows that are asked for at once, and one show asked for twice', async () => {
    gate.open();
    const answers = await Promise.all(['old-mill', 'fenland', 'old-mill'].map((show) => house.ask(show, wait)));
    expect(answers.map((each) => each.__typename)).toEqual(['PlanMade', 'PlanMade', 'PlanMade']);
    expect([answers[0].planId, answers[2].planId]).toContain((await house.draft('old-mill')).id);
    expect((await house.draft('fenland')).id).toBe(answers[1].planId);
    gate.close();
  });

  it(
    'looks longer once however often it is asked to, and tells what came of it',
    async () => {
      const answers = await Promise.all(Array.from({ length: 6 }, () => house.system.graphql(search)));
      expect(answers.map((each) => each.errors)).toEqual(answers.map(() => undefined));
      expect(new Set(answers.map((each) => each.data.startSearch.id)).size).toBe(1);
      const { id } = answers[0]!.data.startSearch;
      expect(['waiting', 'running']).toContain((await house.system.graphql(latest)).data.latestJob.state);
      expect((await house.system.graphql(cancel, { id })).data.cancelJob.state).toBe('cancelled');
      gate.open();
      const next = (await house.system.graphql(search)).data.startSearch;
      expect(next.id).not.toBe(id);
      const done = await house.over(next.id);
      expect(done).toMatchObject({ state: 'done', progress: 1 });
      expect(done.sentence).toMatch(/^(No shorter load was found: \d+\.\d\d m are used as before\.|The draft now (uses|needs) \d+)/);
      gate.close();
      const safety = await house.test.as('safety');
      expect((await safety.graphql(search)).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    },
    patience,
  );

  it('lets what somebody waits for go before a longer search', async () => {
    gate.close();
    const before = gate.came.length;
    const patient = (await house.system.graphql(search)).data.startSearch;
    await gate.reached(before + 1);
    const urgent = (await house.ask('quayside', 0)).job;
    gate.open();
    expect((await house.over(urgent.id)).state).toBe('done');
    expect(['waiting', 'running']).toContain((await house.jobNow(patient.id)).state);
    expect((await house.system.graphql(cancel, { id: patient.id })).data.cancelJob.state).toBe('cancelled');
  });
});

describe('planning while the inputs change', () => {
  const gate = new Gate('after');
  let house: Awaited<ReturnType<typeof start>>;
  beforeAll(async () => {
    house = await start(gate);
  });
  afterAll(async () => {
    gate.open();
    await house.test.close();
  });
  const serialsOf = (plan: any): string[] => plan.carts.loads.flatMap((load: any) => load.boxes.map((box: any) => box.serial));

  it('saves a plan of the new inputs where they changed while it was solved', async () => {
    const made = house.ask('quayside', wait);
    await gate.reached(1);
    gate.open({ stays: false });
    await made;
    const failed = serialsOf((await house.draft('quayside')).plan)[0]!;
    const going = (await house.ask('quayside', 0)).job;
    await gate.reached(2);
    // The answer that is held has this box where the draft has it: a plan made anew changes least.
    await house.test.dataSource.query(
      `UPDATE item SET state = 'quarantined', rest = rest || '{"reason": "fell off the dock"}' WHERE id = $1`,
      [failed],
    );
    gate.open();
    expect(await house.over(going.id)).toMatchObject({ state: 'done' });
    expect(gate.came.length).toBe(3);
    const draft = await house.draft('quayside');
    expect(draft.changed).toEqual([]);
    expect(serialsOf(draft.plan)).not.toContain(failed);
  });

  it('does not solve again where what was written is the same as before', async () => {
    gate.close();
    const before = gate.came.length;
    const going = (await house.ask('quayside', 0)).job;
    await gate.reached(before + 1);
    await house.test.dataSource.query(`UPDATE item SET depot = depot`);
    gate.open();
    expect((await house.over(going.id)).state).toBe('done');
    // Looked at again, found equal, saved: the second look knew the first one's fingerprint and solved nothing.
    expect(gate.came.length).toBe(before + 2);
    expect(gate.came[before + 1]!.known).toEqual(expect.any(String));
    const [{ attempt }] = await house.test.dataSource.query(`SELECT attempt FROM job WHERE id = $1`, [going.id]);
    expect(attempt).toBe(1);
  });

  it('says so, and saves nothing, where they change each time', async () => {
    gate.close();
    const draft = await house.draft('quayside');
    let came = gate.came.length;
    const going = (await house.ask('quayside', 0)).job;
    for (let change = 1; change <= 3; change++) {
      await gate.reached(++came);
      await house.test.dataSource.query(
        `UPDATE item SET rest = rest || jsonb_build_object('note', 'change ' || $1::text) WHERE id = (SELECT min(id) FROM item)`,
        [change],
      );
      gate.open({ stays: false });
    }
    gate.open();
    expect(await house.over(going.id)).toMatchObject({ state: 'refused', errorCode: 'inputs-kept-changing' });
    expect((await house.draft('quayside')).id).toBe(draft.id);
  });
});
