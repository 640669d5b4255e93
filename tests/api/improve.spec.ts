import { randomUUID } from 'node:crypto';
import type { PackPlan } from '#pack-plan';
import { JobRunner } from '../../apps/api/src/planning/jobs/job-runner.js';
import { Jobs } from '../../apps/api/src/planning/jobs/jobs.js';
import { Gate } from '../support/gate.js';
import { startTestApp } from '../support/test-app.js';

const make = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { planId } } }';
const latest = '{ latestJob(kind: "improve", tourId: "harbour-lights", showId: "quayside") { id state sentence errorCode stoppedBy } }';
const job = 'query($id: ID!) { job(id: $id) { state errorCode stoppedBy } }';
const cancel = 'mutation($id: ID!) { cancelJob(id: $id) { state } }';
const improvement = 'query($plan: ID!) { planImprovement(planId: $plan) { code sentence fact } }';
const take =
  'mutation($plan: ID!) { takeImprovement(planId: $plan) { __typename ... on PlanMade { planId } ... on StaleRefusal { sentence changed { sentence } } } }';
const draft = '{ showPage(tourId: "harbour-lights", showId: "quayside") { draft { id madeBy changed { sentence } plan } } }';

/** Units after which the search of this show has a list of 16 moves, and one of 11 that is not proved. */
const [little, some] = [20_000, 100_000];

/** An API that plans with so little work, and whose solves the test lets go one by one. */
async function start(usualWork: number) {
  const gate = new Gate('before', true);
  const test = await startTestApp({ config: { usualWork }, solversAround: gate.around });
  const system = await test.as('system');
  const draftNow = async (): Promise<{ id: string; changed: { sentence: string }[]; plan: PackPlan; madeBy: string }> =>
    (await system.graphql(draft)).data.showPage.draft;
  return {
    test,
    gate,
    system,
    draftNow,
    said: async (plan: string, agent = system) => (await agent.graphql(improvement, { plan })).data.planImprovement,
    take: async (plan: string, agent = system) => agent.graphql(take, { plan }),
    /** A draft, with the work that goes on held before it begins. */
    made: async () => {
      gate.close();
      const before = gate.came.length;
      const making = system.graphql(make);
      await gate.reached(before + 1);
      gate.open({ stays: false });
      expect((await making).errors).toBeUndefined();
      await gate.reached(before + 2);
      return draftNow();
    },
    over: async () => {
      for (;;) {
        const now = (await system.graphql(latest)).data.latestJob;
        if (['done', 'refused', 'failed'].includes(now.state)) return now;
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
    },
  };
}

describe('a plan of which more work finds a better one', () => {
  let house: Awaited<ReturnType<typeof start>>;
  beforeAll(async () => {
    house = await start(little);
  });
  afterAll(async () => {
    house.gate.open();
    await house.test.close();
  });

  it('says that the house goes on looking, and changes nothing', async () => {
    const before = await house.made();
    const { boxMoves: moves, bound: atLeast, stoppedBy } = before.plan.carts;
    expect(stoppedBy).toBe('work');
    expect(moves).toBeGreaterThan(atLeast);
    expect(await house.said(before.id)).toMatchObject({ code: 'going-on', fact: { moves, atLeast } });
    expect(house.gate.came.at(-1)).toMatchObject({ effort: 'background' });
    expect((await house.draftNow()).id).toBe(before.id);
  });

  it('offers the shorter list beside the draft, which stays until somebody takes it in', async () => {
    const before = await house.draftNow();
    house.gate.open();
    expect(await house.over()).toMatchObject({ state: 'done' });
    const said = await house.said(before.id);
    expect(said).toMatchObject({ code: 'shorter', fact: { moves: before.plan.carts.boxMoves } });
    expect(said.fact.shorter).toBeLessThan(before.plan.carts.boxMoves);
    expect(said.sentence).toContain(`A shorter list is ready: ${said.fact.shorter} moves instead of ${before.plan.carts.boxMoves}`);
    expect((await house.draftNow()).id).toBe(before.id);
    expect((await house.said(before.id, await house.test.as('safety'))).code).toBe('shorter');
    expect((await house.take(before.id, await house.test.as('safety'))).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
  });

  it('refuses to take it in once the inputs have changed, says which, and takes it in as long as they have not', async () => {
    const before = await house.draftNow();
    const offered = (await house.said(before.id)).fact.shorter;
    const [{ id, rest }] = await house.test.dataSource.query(`SELECT id, rest FROM item WHERE kind = 'box' ORDER BY id LIMIT 1`);
    await house.test.dataSource.query(`UPDATE item SET rest = rest || '{"note": "new grille"}' WHERE id = $1`, [id]);
    const refused = (await house.take(before.id)).data.takeImprovement;
    expect(refused).toMatchObject({ __typename: 'StaleRefusal', changed: [{ sentence: expect.stringContaining(id) }] });
    expect((await house.draftNow()).id).toBe(before.id);
    await house.test.dataSource.query(`UPDATE item SET rest = $2 WHERE id = $1`, [id, rest]);
    const taken = (await house.take(before.id)).data.takeImprovement;
    const after = await house.draftNow();
    expect(taken).toEqual({ __typename: 'PlanMade', planId: after.id });
    expect(after).toMatchObject({ changed: [], madeBy: 'Sol Achterberg' });
    expect(after.plan.carts.boxMoves).toBe(offered);
    expect(after.plan.carts.boxMoves).toBeLessThan(before.plan.carts.boxMoves);
    // The offer went with the plan that it was made for.
    expect((await house.take(before.id)).errors?.[0]?.extensions.code).toBe('NOT_FOUND');
    expect(await house.test.dataSource.query('SELECT FROM plan_improvement WHERE better IS NOT NULL')).toEqual([]);
  });

  it('drops the work on a draft when a newer one takes its place', async () => {
    await house.made();
    const first = (await house.system.graphql(latest)).data.latestJob.id;
    const newer = (await house.system.graphql(make.replace('"quayside"', '"quayside", waitMs: 0').replace('... on', '__typename ... on')))
      .data;
    expect(newer.makePackPlan.__typename).toBe('JobUnderWay');
    // Who plans gives the work on the first draft back, makes the newer one, and finds nothing left to do for the first.
    house.gate.open();
    expect(await house.over()).toMatchObject({ state: 'done' });
    expect((await house.system.graphql(latest)).data.latestJob.id).not.toBe(first);
    expect((await house.system.graphql(job, { id: first })).data.job).toMatchObject({ state: 'cancelled', errorCode: 'overtaken' });
  });
});

describe('a plan that more work proves to be the best', () => {
  let house: Awaited<ReturnType<typeof start>>;
  beforeAll(async () => {
    house = await start(some);
  });
  afterAll(async () => {
    house.gate.open();
    await house.test.close();
  });

  it('says so, offers nothing, and stays as it is', async () => {
    const before = await house.made();
    expect(before.plan.carts.stoppedBy).toBe('work');
    house.gate.open();
    expect(await house.over()).toMatchObject({ state: 'done', stoppedBy: 'proof' });
    const moves = before.plan.carts.boxMoves;
    expect(await house.said(before.id)).toMatchObject({
      code: 'proved',
      sentence: `Proved: no shorter list exists than these ${moves} moves.`,
      fact: { moves },
    });
    expect((await house.take(before.id)).errors?.[0]?.extensions.code).toBe('NOT_FOUND');
    expect((await house.draftNow()).id).toBe(before.id);
  });

  it('is done by the next worker where the first one dies over it', async () => {
    const before = await house.made();
    // What a worker that died leaves: running, under a lease that nobody renews, and an attempt that may save no more.
    await house.test.dataSource.query(
      `UPDATE job SET attempt = attempt + 1, lease_until = clock_timestamp() - interval '1 second' WHERE kind = 'improve' AND state = 'running'`,
    );
    house.gate.open();
    expect(await house.over()).toMatchObject({ state: 'done', stoppedBy: 'proof' });
    expect((await house.said(before.id)).code).toBe('proved');
    const [{ attempt }] = await house.test.dataSource.query(`SELECT attempt FROM job WHERE kind = 'improve' ORDER BY number DESC LIMIT 1`);
    expect(attempt).toBe(3);
  });
});

describe('whose turn it is', () => {
  it('is what somebody waits for, then what somebody asked for, then what the house looks for by itself', async () => {
    const gate = new Gate('before');
    const test = await startTestApp({ solversAround: gate.around, runsJobs: false });
    try {
      const system = await test.as('system');
      const jobs = test.app.get(Jobs);
      const common = { tourId: 'harbour-lights', showId: 'quayside', askedBy: { name: 'Sol Achterberg', id: null } };
      const subject = { tourId: 'harbour-lights', showId: 'quayside' };
      const improve = { ...common, kind: 'improve', subject: { planId: randomUUID(), moves: 2, atLeast: 1 }, urgent: false } as const;
      const found = { ...common, kind: 'search', subject, urgent: false } as const;
      const wanted = { ...common, kind: 'make', subject, urgent: true } as const;
      const ids: string[] = [];
      for (const each of [improve, found, wanted]) ids.unshift(await jobs.ask(() => Promise.resolve(each)));
      test.app.get(JobRunner).start();
      for (const [index, id] of ids.entries()) {
        await gate.reached(index + 1);
        await system.graphql(cancel, { id });
        gate.open({ stays: false });
      }
      expect(gate.came.map((each) => each.effort)).toEqual(['usual', 'longer', 'background']);
    } finally {
      gate.open();
      await test.close();
    }
  });
});
