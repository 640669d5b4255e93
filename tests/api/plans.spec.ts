import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const tour = 'harbour-lights';
const make =
  'mutation($tour: ID!, $show: ID!) { makePackPlan(tourId: $tour, showId: $show) { ... on PlanMade { plan { id state changed { sentence } plan } } } }';
const release =
  'mutation($id: ID!) { releasePackPlan(planId: $id) { __typename ... on PlanView { id revision state } ... on BookingRefusal { sentence clashes { item from to tour } } ... on StaleRefusal { code sentence changed { code subjects { kind id } sentence } } } }';
const showPage =
  'query($tour: ID!, $show: ID!) { showPage(tourId: $tour, showId: $show) { released { id revision state changed { code sentence subjects { kind id } } plan cartChecks { load } ticks } draft { id changed { sentence } } revisions { revision state } } }';

describe('pack plans', () => {
  let test: TestApp;
  let system: Agent;
  let warehouse: Agent;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [system, warehouse, safety] = await Promise.all([test.as('system'), test.as('warehouse'), test.as('safety')]);
  });
  afterAll(() => test.close());

  const makePlan = async (agent: Agent, show = 'quayside') => (await agent.graphql(make, { tour, show })).data.makePackPlan.plan;

  it('makes the five results as a draft and says the four troubles plainly', async () => {
    const { state, plan } = await makePlan(warehouse);
    expect(state).toBe('draft');
    const codes = plan.findings.map((finding: { code: string }) => finding.code);
    expect(codes).toEqual(expect.arrayContaining(['falls-due', 'out-of-service-in-cart', 'model-short', 'axle-nearly-over', 'box-moves']));
    expect(plan.carts).toMatchObject({ status: 'optimal', boxMoves: plan.carts.bound });
  });

  it('releases A, then B, books the kit once, and never changes what was released', async () => {
    const draft = await makePlan(system);
    expect((await system.graphql(release, { id: draft.id })).data.releasePackPlan).toMatchObject({ __typename: 'PlanView', revision: 'A' });
    const booked = await test.dataSource.query(`SELECT count(*)::int AS n FROM booking WHERE tour_name = 'Harbour Lights'`);
    expect(booked[0].n).toBe(draft.plan.uses.length);
    await expect(test.dataSource.query(`UPDATE pack_plan SET plan = '{}' WHERE id = '${draft.id}'`)).rejects.toThrow(
      'a released revision never changes',
    );
    await expect(test.dataSource.query(`DELETE FROM pack_plan WHERE id = '${draft.id}'`)).rejects.toThrow(
      'a released revision never changes',
    );
    const second = await makePlan(system);
    expect((await system.graphql(release, { id: second.id })).data.releasePackPlan).toMatchObject({ revision: 'B' });
    const page = (await system.graphql(showPage, { tour, show: 'quayside' })).data.showPage;
    expect(page.revisions).toEqual([
      { revision: 'A', state: 'superseded' },
      { revision: 'B', state: 'released' },
    ]);
    const again = await test.dataSource.query(`SELECT count(*)::int AS n FROM booking WHERE tour_name = 'Harbour Lights'`);
    expect(again[0].n).toBe(booked[0].n);
  });

  it('never releases a plan that a checker does not agree with, whatever the reason given', async () => {
    const draft = await makePlan(system, 'old-mill');
    const finding = {
      code: 'checker-disagrees',
      weight: 'stop',
      section: 'inputs',
      subject: 'Centre',
      date: null,
      sentence: 'Centre: off.',
    };
    await test.dataSource.query(`UPDATE pack_plan SET plan = jsonb_insert(plan, '{findings,0}', $1) WHERE id = $2`, [finding, draft.id]);
    const { data } = await system.graphql(
      'mutation($id: ID!) { releasePackPlan(planId: $id, despite: "we have to") { ... on StopRefusal { code stops { code sentence } } } }',
      { id: draft.id },
    );
    expect(data.releasePackPlan.stops).toEqual([{ code: 'checker-disagrees', sentence: 'Centre: off.' }]);
    const [row] = await test.dataSource.query(`SELECT state FROM pack_plan WHERE id = $1`, [draft.id]);
    expect(row.state).toBe('draft');
  });

  it('is stale, with what changed, as soon as a box in it is quarantined', async () => {
    const { released } = (await system.graphql(showPage, { tour, show: 'quayside' })).data.showPage;
    expect(released.changed).toEqual([]);
    const serial = released.plan.carts.loads[0].boxes[0].serial;
    await warehouse.graphql('mutation($id: ID!) { quarantine(itemId: $id, reason: "horn cracked") { summary { state } } }', { id: serial });
    const stale = (await system.graphql(showPage, { tour, show: 'quayside' })).data.showPage.released;
    expect(stale.changed).toEqual([{ code: 'changed', subjects: [{ kind: 'item', id: serial }], sentence: `box ${serial} has changed` }]);
    const draft = await makePlan(system);
    expect(draft.plan.carts.loads.flatMap((load: { boxes: { serial: string }[] }) => load.boxes.map((box) => box.serial))).not.toContain(
      serial,
    );
    const difference = (
      await system.graphql('query($from: ID!, $to: ID!) { planDifference(from: $from, to: $to) { sentences boxes { from to } } }', {
        from: released.id,
        to: draft.id,
      })
    ).data.planDifference;
    expect(difference.boxes.map((box: { from: string }) => box.from)).toContain(serial);
    expect(
      (
        await safety.graphql(
          'mutation($id: ID!) { releaseFromQuarantine(itemId: $id, reason: "horn replaced, checked") { summary { state } } }',
          { id: serial },
        )
      ).data.releaseFromQuarantine.summary.state,
    ).toBe('in service');
  });

  it('refuses to release a draft whose inputs changed since', async () => {
    const draft = await makePlan(system);
    const serial = draft.plan.carts.loads[1].boxes[0].serial;
    await warehouse.graphql('mutation($id: ID!) { quarantine(itemId: $id, reason: "rattles") { summary { state } } }', { id: serial });
    const answer = (await system.graphql(release, { id: draft.id })).data.releasePackPlan;
    expect(answer).toMatchObject({
      __typename: 'StaleRefusal',
      code: 'release-stale',
      changed: [{ code: 'changed', subjects: [{ kind: 'item', id: serial }], sentence: `box ${serial} has changed` }],
    });
    await safety.graphql('mutation($id: ID!) { releaseFromQuarantine(itemId: $id, reason: "tightened") { summary { state } } }', {
      id: serial,
    });
  });

  it('lets nobody of the warehouse release', async () => {
    const draft = await makePlan(warehouse);
    expect((await warehouse.graphql(release, { id: draft.id })).errors?.[0]).toMatchObject({
      extensions: { code: 'NOT_ALLOWED' },
      message: 'This is for the system tech or the safety officer; you are signed in as the warehouse.',
    });
  });

  it('compares serials read off a cart and says which slot is wrong and what belongs there', async () => {
    const { released } = (await system.graphql(showPage, { tour, show: 'quayside' })).data.showPage;
    const [first, second] = released.plan.carts.loads;
    const serials: string[] = first.boxes.map((box: { serial: string }) => box.serial);
    const confirm =
      'mutation($plan: ID!, $load: String!, $serials: [String!]!) { confirmCart(planId: $plan, load: $load, serials: $serials) { agrees slots { slot agrees sentence } } }';
    const stranger = second.boxes[1].serial;
    const wrong = (
      await warehouse.graphql(confirm, { plan: released.id, load: first.id, serials: [serials[0], serials[1], stranger, serials[3]] })
    ).data.confirmCart;
    expect(wrong.agrees).toBe(false);
    expect(wrong.slots[2].sentence).toBe(
      `Wrong box in slot 3: ${stranger}; ${serials[2]} belongs there. ${stranger} belongs in ${second.cart}, slot 2 (${second.id}).`,
    );
    expect((await warehouse.graphql(confirm, { plan: released.id, load: first.id, serials })).data.confirmCart.agrees).toBe(true);
    const checked = (await system.graphql(showPage, { tour, show: 'quayside' })).data.showPage.released.cartChecks;
    expect(checked).toEqual([{ load: first.id }]);
  });

  it('keeps ticks of truck rows', async () => {
    const { released } = (await system.graphql(showPage, { tour, show: 'quayside' })).data.showPage;
    const tick = 'mutation($id: ID!, $done: Boolean!) { tick(planId: $id, what: "T1 row 1", done: $done) { ticks } }';
    expect((await warehouse.graphql(tick, { id: released.id, done: true })).data.tick.ticks).toEqual(['row:T1:1']);
    expect((await warehouse.graphql(tick, { id: released.id, done: false })).data.tick.ticks).toEqual([]);
  });

  it('says what needs attention for each role', async () => {
    const notes = (await warehouse.graphql('{ attention(first: 200) { edges { node { role code sentence } } } }')).data.attention.edges.map(
      (edge: any) => edge.node,
    );
    for (const role of ['warehouse', 'system', 'safety']) expect(notes.map((note: { role: string }) => note.role)).toContain(role);
    expect(notes.map((note: { code: string }) => note.code)).toEqual(expect.arrayContaining(['carts-to-confirm', 'no-plan']));
  });

  it.each([
    ['an unknown show', make, { tour, show: 'nowhere' }, 'NOT_FOUND'],
    ['an unknown tour', make, { tour: 'nowhere', show: 'x' }, 'NOT_FOUND'],
    ['a plan that is none', release, { id: '00000000-0000-4000-8000-000000000000' }, 'NOT_FOUND'],
  ])('refuses %s in words', async (_what, query, variables, code) => {
    expect((await system.graphql(query, variables)).errors?.[0]?.extensions.code).toBe(code);
  });
});
