import { itemKinds, shiftDates } from '#tour-file';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const make = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }';
const release = 'mutation($id: ID!) { releasePackPlan(planId: $id) { __typename } }';
const barredNow = 'query($id: ID!) { plan(id: $id) { barred { itemId code from loads hangs } } }';
const tick = 'mutation($id: ID!, $what: String!) { tick(planId: $id, what: $what, done: true) { id } }';
const confirm =
  'mutation($id: ID!, $load: String!, $serials: [String!]!) { confirmCart(planId: $id, load: $load, serials: $serials) { agrees slots { agrees sentence } barred { itemId } } }';
const sign =
  'mutation($id: ID!, $hang: String!) { signOff(planId: $id, hang: $hang, kind: "inspected", name: "S. A.", remark: "") { signOffs { hang } } }';
const notes = 'query($role: String!) { attention(role: $role, first: 100) { edges { node { code subject weight } } } }';

/** How an item comes to be barred, and how it comes back. */
const states = {
  quarantined: {
    bar: 'mutation($id: ID!) { quarantine(itemId: $id, reason: "cracked") { summary { state } } }',
    code: 'state',
  },
  failed: {
    bar: 'mutation($id: ID!) { recordExamination(itemId: $id, examination: { on: "2027-02-26", outcome: "fail", examiner: "R. Vale", report: "R-9" }) { summary { state } } }',
    code: 'failed',
  },
  'shock-loaded': {
    bar: 'mutation($id: ID!) { recordIncident(itemId: $id, on: "2027-02-26", what: "fell off the dock") { summary { state } } }',
    code: 'blocked',
  },
} as const;

describe('the gate on the floor', () => {
  let test: TestApp;
  let system: Agent;
  let safety: Agent;
  let warehouse: Agent;
  let id: string;
  let plan: any;
  beforeAll(async () => {
    test = await startTestApp();
    [system, safety, warehouse] = await Promise.all([test.as('system'), test.as('safety'), test.as('warehouse')]);
    ({ id, plan } = (await system.graphql(make)).data.makePackPlan.plan);
    await system.graphql(release, { id });
  });
  afterAll(() => test.close());

  const barredItem = async (item: string) =>
    (await system.graphql(barredNow, { id })).data.plan.barred.find((each: { itemId: string }) => each.itemId === item);

  /** One item of every kind that the plan counts on. */
  async function oneOfEachKind(): Promise<Map<string, string>> {
    const ids = plan.uses.map((each: { item: string }) => each.item);
    const rows: { id: string; kind: string }[] = await test.dataSource.query(
      `SELECT DISTINCT ON (kind) id, kind FROM item WHERE id = ANY($1) AND id NOT IN (SELECT item_id FROM incident) ORDER BY kind, id DESC`,
      [ids],
    );
    return new Map(rows.map((each) => [each.kind, each.id]));
  }

  it('bars nothing of a plan that is as it was released', async () => {
    expect((await system.graphql(barredNow, { id })).data.plan.barred).toEqual([]);
  });

  it.each(Object.keys(states) as (keyof typeof states)[])(
    'shuts every door for what is %s, of every kind, on the way up and out',
    async (state) => {
      const kinds = await oneOfEachKind();
      expect([...kinds.keys()].sort()).toEqual([...itemKinds].filter((kind) => kinds.has(kind)).sort());
      expect([...kinds.keys()]).toEqual(expect.arrayContaining(['box', 'cart', 'grid', 'hoist', 'pin', 'shackle']));
      const open: string[] = [];
      const say = (kind: string, way: string) => open.push(`${kind}: ${way}`);
      for (const [kind, item] of kinds) {
        const { bar, code } = states[state];
        const done = await safety.graphql(bar, { id: item });
        if (done.errors) throw new Error(`${kind} ${item}: ${JSON.stringify(done.errors)}`);
        const found = await barredItem(item);
        if (found?.code !== code) say(kind, 'the plan does not say so');
        for (const [role, agent] of Object.entries({ warehouse, system, safety })) {
          const { edges } = (await agent.graphql(notes, { role })).data.attention;
          const said = edges.some(({ node }: any) => node.code === 'barred' && node.subject === item && node.weight === 'stop');
          if (!said) say(kind, `nothing is said to the ${role}`);
        }
        const { loads = [], hangs = [] } = found ?? {};
        if (['box', 'cart'].includes(kind) && loads.length === 0) say(kind, 'no cart is concerned');
        if (['box', 'grid', 'hoist', 'pin', 'shackle'].includes(kind) && hangs.length === 0) say(kind, 'no hang is concerned');
        for (const load of loads) {
          const serials = plan.carts.loads.find((each: any) => each.id === load).boxes.map((each: any) => each.serial);
          const read = (await warehouse.graphql(confirm, { id, load, serials })).data.confirmCart;
          if (read.agrees || !read.barred.some((each: any) => each.itemId === item)) say(kind, `scanned as right on ${load}`);
        }
        for (const hang of hangs) {
          const up = await system.graphql(tick, { id, what: `step-up:${encodeURIComponent(hang)}:1` });
          if (!up.errors?.[0]?.extensions.faults?.[0]?.wanted.includes(item)) say(kind, `a step of ${hang} is ticked`);
          const signed = await safety.graphql(sign, { id, hang });
          if (!signed.errors?.[0]?.extensions.faults?.[0]?.wanted.includes(item)) say(kind, `${hang} is signed`);
        }
        const truck = plan.truck.trucks.find((each: any) => each.rows.some((row: any) => row.pieces.includes(item)));
        const row = truck?.rows.find((each: any) => each.pieces.includes(item));
        if (row) {
          const loaded = await warehouse.graphql(tick, { id, what: `row:${encodeURIComponent(truck.id)}:${row.number}` });
          if (!loaded.errors) say(kind, 'its row of the truck is ticked');
        }
        await putBack(item);
        if (await barredItem(item)) say(kind, 'it does not come back');
      }
      expect(open).toEqual([]);
    },
  );

  async function putBack(item: string): Promise<void> {
    await safety.graphql('mutation($id: ID!) { releaseFromQuarantine(itemId: $id, reason: "mended") { summary { state } } }', { id: item });
    const incidents = await test.dataSource.query(`SELECT DISTINCT on_day::text AS day FROM incident WHERE item_id = $1`, [item]);
    const days = JSON.stringify(incidents.map((each: { day: string }) => each.day));
    const answers = `mutation($id: ID!) { recordExamination(itemId: $id, examination: { on: "2027-02-26", outcome: "pass", examiner: "R. Vale", report: "R-10", answers: ${days} }) { summary { state } } }`;
    await safety.graphql(answers, { id: item });
  }

  it('keeps what a device did before it could know as done although barred: no tick, no signature, told to the safety officer, once', async () => {
    const hang = plan.picks.hangs.at(-1);
    const [first] = hang.runningOrder.goingUp;
    const hoist = hang.picks[0].hoistSerial;
    const load = plan.carts.loads[0];
    const serials = load.boxes.map((each: any) => each.serial);
    await safety.graphql(states.quarantined.bar, { id: hoist });
    await safety.graphql(states.quarantined.bar, { id: serials[0] });
    const late = (key: string) => ({ 'idempotency-key': `00000000-0000-4000-8000-00000000000${key}`, 'x-done-at': '2027-02-26T08:30:00Z' });
    for (const again of [1, 1])
      expect(
        (await system.graphql(tick, { id, what: first.key }, late(String(again)))).errors?.[0]?.extensions.faults?.[0]?.wanted,
      ).toContain(hoist);
    expect((await warehouse.graphql(confirm, { id, load: load.id, serials }, late('2'))).data.confirmCart.agrees).toBe(false);
    // Asked without a time of its own, nothing was done yet.
    await system.graphql(tick, { id, what: first.key });
    const kept = await test.dataSource.query('SELECT what, hang, done_at AS at, items FROM barred_act ORDER BY id');
    const at = new Date('2027-02-26T08:30:00Z');
    const items = [{ item: hoist, why: expect.objectContaining({ code: 'state' }) }];
    expect(kept).toMatchObject([
      { what: first.key, hang: hang.hang, at, items },
      { what: load.id, hang: null, at },
    ]);
    expect(await test.dataSource.query('SELECT FROM cart_check WHERE plan_id = $1 AND load = $2', [id, load.id])).toEqual([]);
    const { doneAlthoughBarred, ticks } = (
      await system.graphql('query($id: ID!) { plan(id: $id) { ticks doneAlthoughBarred { what sentence } } }', { id })
    ).data.plan;
    expect([ticks, doneAlthoughBarred.map((each: any) => each.what)]).toEqual([[], [first.key, load.id]]);
    const { edges } = (await safety.graphql(notes, { role: 'safety' })).data.attention;
    expect(
      edges.filter(({ node }: any) => node.code === 'done-although-barred').map(({ node }: any) => [node.weight, node.subject]),
    ).toEqual([
      ['stop', hoist],
      ['stop', serials[0]],
    ]);
    await expect(test.dataSource.query('DELETE FROM barred_act')).rejects.toThrow(/append only/);
    // What stands up there comes down from where it is, although nothing of the way up could be ticked.
    const [down] = hang.runningOrder.comingDown;
    expect((await system.graphql(tick, { id, what: down.key })).errors).toBeUndefined();
    for (const [number, step] of hang.runningOrder.goingUp
      .filter((each: any) => each.hold)
      .slice(1)
      .entries()) {
      const key = `00000000-0000-4000-8000-0000000001${String(number).padStart(2, '0')}`;
      await system.graphql(tick, { id, what: step.key }, { ...late('1'), 'idempotency-key': key });
    }
    expect((await system.graphql(tick, { id, what: down.key })).errors).toBeUndefined();
    for (const item of [hoist, serials[0]]) await putBack(item);
  });

  it('what was done although barred is seen once, by the safety officer or a deputy and never by who did it, and then stops no longer', async () => {
    const see = (who: Agent, act: string, because = 'came down, looked at', tourId = 'harbour-lights') =>
      who.graphql('mutation($id: ID!, $tourId: ID!, $because: String!) { seeBarredAct(id: $id, tourId: $tourId, because: $because) }', {
        ...{ id: act, tourId, because },
      });
    const codeOf = (reply: any): string => reply.errors?.[0]?.extensions.code ?? 'done';
    const told = async () =>
      (await system.graphql('query($id: ID!) { plan(id: $id) { doneAlthoughBarred { id what seen } } }', { id })).data.plan
        .doneAlthoughBarred;
    const onToday = async () =>
      (await safety.graphql(notes, { role: 'safety' })).data.attention.edges.filter(
        ({ node }: any) => node.code === 'done-although-barred',
      );
    const [step, ofCart] = [
      (await told()).find((each: any) => each.what.startsWith('step-up')),
      (await told()).find((each: any) => !each.what.startsWith('step-up')),
    ];
    const stops = (await onToday()).length;
    expect(codeOf(await see(warehouse, step.id))).toBe('NOT_ALLOWED');
    expect((await see(safety, step.id, ' ')).errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field: 'because' });
    expect([codeOf(await see(safety, 'x')), codeOf(await see(safety, step.id, 'looked', 'another'))]).toEqual(['NOT_FOUND', 'NOT_FOUND']);
    const { people } = (await safety.graphql('{ people { id role name } }')).data;
    const idOf = (role: string) => people.find((each: { role: string }) => each.role === role).id;
    const days = { from: '2027-02-26', until: '2027-02-27', timeZone: 'Europe/London', reason: 'at the yard', tourId: 'harbour-lights' };
    const deputy = { personId: idOf('warehouse'), officerId: idOf('safety'), ...days };
    await safety.graphql('mutation($deputy: DeputyInput!) { nameDeputy(deputy: $deputy) }', { deputy });
    // The cart was read by the deputy: somebody else looks at it.
    expect([codeOf(await see(warehouse, ofCart.id)), codeOf(await see(warehouse, step.id))]).toEqual(['NOT_ALLOWED', 'done']);
    expect([codeOf(await see(safety, step.id, 'again')), codeOf(await see(safety, ofCart.id))]).toEqual(['NOT_ALLOWED', 'done']);
    const seen = new Map((await told()).map((each: any) => [each.id, each.seen]));
    expect(seen.get(step.id)).toMatch(/^Seen by .+, deputy of Ines Aldous at .+ UTC, because: came down, looked at\.$/);
    expect(seen.get(ofCart.id)).toMatch(/^Seen by Ines Aldous at /);
    expect((await onToday()).length).toBe(stops - 2);
    const lines = await test.dataSource.query(`SELECT who, sentence FROM event WHERE what = 'seen' ORDER BY id`);
    expect(lines.map((each: { who: string }) => each.who)).toEqual([expect.stringMatching(/, deputy of Ines Aldous$/), 'Ines Aldous']);
    expect(lines[0].sentence).toContain('because: came down, looked at.');
    await expect(test.dataSource.query(`UPDATE barred_act_answer SET because = 'x'`)).rejects.toThrow(/append only/);
  });

  it('never bars the way down: what failed in the air is brought down, and the record says with what', async () => {
    const hang = plan.picks.hangs[0];
    for (const step of hang.runningOrder.goingUp.filter((each: any) => each.hold)) await system.graphql(tick, { id, what: step.key });
    const hoist = hang.picks[0].hoistSerial;
    await safety.graphql(states.quarantined.bar, { id: hoist });
    const down = await system.graphql(tick, { id, what: hang.runningOrder.comingDown[0].key });
    expect(down.errors).toBeUndefined();
    const [event] = await test.dataSource.query(`SELECT sentence FROM event WHERE what = 'ticked' ORDER BY id DESC LIMIT 1`);
    expect(event.sentence).toContain(`With ${hoist} (quarantined: cracked).`);
    await putBack(hoist);
  });

  it('takes the promises of a tour along to its new days, calls its plans stale, and refuses days on which others hold its kit', async () => {
    const read = '{ tour(id: "harbour-lights") { version tour } }';
    const save = 'mutation($tour: TourJson!, $version: Int) { saveTour(tour: $tour, expectedVersion: $version) { version } }';
    const held = `SELECT min(lower(period))::text AS first, max(upper(period) - 1)::text AS last, count(*)::int AS n FROM booking WHERE holder_id = 'harbour-lights'`;
    const [before] = await test.dataSource.query(held);
    const on = (await system.graphql(read)).data.tour;
    const moved = (days: number) => (({ ...shiftDates({ tour: on.tour } as never, days) }) as { tour: any }).tour;
    const done = await system.graphql(save, { tour: moved(300), version: on.version });
    expect(done.errors).toBeUndefined();
    const [after] = await test.dataSource.query(held);
    expect(after).toEqual({ first: moved(300).prepFrom, last: moved(300).returnTo, n: before.n });
    const { changed } = (await system.graphql('query($id: ID!) { plan(id: $id) { changed { sentence } } }', { id })).data.plan;
    expect(changed.length).toBeGreaterThan(0);
    const box = plan.carts.loads[0].boxes[0].serial;
    const hold = { name: 'Town Fair', items: [box], from: moved(600).prepFrom, to: moved(600).returnTo, hours: 24 };
    expect(
      (await warehouse.graphql('mutation($hold: HoldInput!) { placeHold(hold: $hold) { __typename } }', { hold })).errors,
    ).toBeUndefined();
    const clash = await system.graphql(save, { tour: moved(600), version: done.data.saveTour.version });
    expect(clash.errors?.[0]?.extensions.faults?.[0]).toMatchObject({
      field: 'tour.prepFrom',
      wanted: expect.stringContaining(`${box}: Town Fair`),
    });
    expect((await test.dataSource.query(held))[0]).toEqual(after);
  });
});
