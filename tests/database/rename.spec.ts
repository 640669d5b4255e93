import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const make = 'mutation($tour: ID!, $show: ID!) { makePackPlan(tourId: $tour, showId: $show) { ... on PlanMade { plan { id plan } } } }';
const release =
  'mutation($id: ID!) { releasePackPlan(planId: $id, despite: "nothing flies") { __typename ... on PlanView { id revision } ... on BookingRefusal { sentence } ... on StaleRefusal { changed { sentence } } } }';
const tick = 'mutation($id: ID!, $what: String!) { tick(planId: $id, what: $what, done: true) { ticks } }';
const read = 'query($id: ID!) { plan(id: $id) { state revision releasedBy changed { sentence } ticks plan } }';
const save = 'mutation($tour: TourJson!, $version: Int!) { saveTour(tour: $tour, expectedVersion: $version) { version } }';
const count =
  'mutation($shows: [ID!]!, $lines: [CountInput!]!) { recordCounts(tourId: "harbour-lights", showIds: $shows, lines: $lines) { __typename } }';
const sheet = '{ countSheet(tourId: "harbour-lights", showId: "quayside") { name tourName records { key losses countedBy inForce } } }';
const rename = 'mutation($id: ID!, $name: String!) { renamePerson(id: $id, name: $name) { id name } }';

/** A released tour, one of its shows, a hang and a person are called otherwise; everything that was done goes on. */
describe('a rename', () => {
  let test: TestApp;
  let system: Agent;
  let warehouse: Agent;
  let planId: string;
  let step: string;
  beforeAll(async () => {
    test = await startTestApp();
    [system, warehouse] = await Promise.all([test.as('system'), test.as('warehouse')]);
    planId = (await made('quayside')).id;
    expect(await ask(system, release, { id: planId })).toMatchObject({ revision: 'A' });
    const { plan } = await ask(system, read, { id: planId });
    step = plan.picks.hangs.find((each: any) => each.hang === 'Centre').runningOrder.goingUp[0].key;
    await ask(system, tick, { id: planId, what: step });
    await ask(warehouse, tick, { id: planId, what: 'row:T1:1' });
    await ask(warehouse, count, { shows: ['quayside'], lines: [{ key: 'Link pin 12', sent: 132, returned: 130, damaged: 0 }] });
  });
  afterAll(() => test.close());

  const ask = async (agent: Agent, query: string, variables: object = {}) => {
    const { data, errors } = await agent.graphql(query, variables);
    expect(errors).toBeUndefined();
    return Object.values<any>(data)[0];
  };
  const made = async (show: string) => (await ask(system, make, { tour: 'harbour-lights', show })).plan;
  const change = async (how: (tour: any) => void) => {
    const { version, tour } = await ask(system, '{ tour(id: "harbour-lights") { version tour } }');
    how(tour);
    await ask(system, save, { tour, version });
  };
  const promises = () =>
    test.dataSource.query(
      `SELECT item_id, holder_kind, holder_id, lower(period)::text AS "from" FROM booking WHERE holder_kind = 'tour' ORDER BY item_id`,
    );

  it('of a tour, a show and a hang changes words alone: the release is not stale, its ticks and promises stand', async () => {
    const before = { plan: await ask(system, read, { id: planId }), promises: await promises() };
    expect(before.promises.length).toBeGreaterThan(50);
    await change((tour) => {
      tour.name = 'Harbour Lights 2027';
      tour.shows[0].name = 'Quayside, first night';
      tour.shows[1].name = 'The Mill';
      for (const { hangs } of tour.shows) hangs.find((each: any) => each.id === 'Centre').name = 'Middle';
    });
    const after = await ask(system, read, { id: planId });
    // What was counted at return changes the plan, what things are called does not.
    expect(after).toEqual(before.plan);
    expect(after.ticks).toEqual(expect.arrayContaining([step, 'row:T1:1']));
    expect(await promises()).toEqual(before.promises);
    const named = await test.dataSource.query(`SELECT DISTINCT tour_name AS name FROM booking WHERE holder_id = 'harbour-lights'`);
    expect(named).toEqual([{ name: 'Harbour Lights 2027' }]);
  });

  it('leaves no kit promised to others: the next plan and its release go through', async () => {
    const next = await made('quayside');
    expect(next.plan.tour.name).toBe('Harbour Lights 2027');
    expect(next.plan.show.name).toBe('Quayside, first night');
    expect(JSON.stringify(next.plan.carts)).not.toContain('promised to Harbour Lights');
    expect(next.plan.carts.loads.length).toBeGreaterThan(0);
    expect(next.plan.carts.loads.map((load: any) => load.cart)).not.toContain(null);
    const middle = next.plan.picks.hangs.find((each: any) => each.hang === 'Centre');
    expect(middle.name).toBe('Middle');
    expect(next.plan.carts.loads.filter((load: any) => load.hang === 'Centre').map((load: any) => load.name)).toContain('Middle 1-4');
    expect(await ask(system, release, { id: next.id })).toMatchObject({ revision: 'B' });
    const other = await made('old-mill');
    expect(await ask(system, release, { id: other.id })).toMatchObject({ revision: 'A' });
  });

  it('keeps counts, events and links', async () => {
    const counted = await ask(warehouse, sheet);
    expect(counted).toMatchObject({ name: 'Quayside, first night', tourName: 'Harbour Lights 2027' });
    expect(counted.records).toEqual([{ key: 'Link pin 12', losses: 2, countedBy: 'Wren Castellan', inForce: true }]);
    const events = await test.dataSource.query(`SELECT count(*)::int AS n FROM event WHERE tour_id = 'harbour-lights' AND what = 'ticked'`);
    expect(events).toEqual([{ n: 2 }]);
    expect(await ask(system, '{ showPage(tourId: "harbour-lights", showId: "quayside") { revisions { revision } } }')).toEqual({
      revisions: [{ revision: 'A' }, { revision: 'B' }],
    });
  });

  it('of a person keeps what is on record as it was written, with the same id under it', async () => {
    const people = await ask(system, '{ people { id name } }');
    const { id } = people.find((each: any) => each.name === 'Wren Castellan');
    expect(await ask(system, rename, { id, name: 'Wren Castellan-Reed' })).toEqual({ id, name: 'Wren Castellan-Reed' });
    const { released } = await ask(system, '{ showPage(tourId: "harbour-lights", showId: "quayside") { released { id } } }');
    await ask(warehouse, tick, { id: released.id, what: 'row:T1:2' });
    const ticks = await test.dataSource.query(
      `SELECT place, ticked_by AS name, ticked_by_id AS id FROM tick WHERE plan_id = ANY($1) AND kind = 'row' AND (plan_id = $2 OR place = 2) ORDER BY place`,
      [[planId, released.id], planId],
    );
    expect(ticks).toEqual([
      { place: 1, name: 'Wren Castellan', id },
      { place: 2, name: 'Wren Castellan-Reed', id },
    ]);
    const drafts = await test.dataSource.query(
      `SELECT DISTINCT made_by AS name, account.name AS known FROM pack_plan JOIN account ON account.id = made_by_id`,
    );
    expect(drafts).toEqual([{ name: 'Sol Achterberg', known: 'Sol Achterberg' }]);
    const counted = await test.dataSource.query(`SELECT counted_by AS name, counted_by_id AS id FROM hardware_count`);
    expect(counted).toEqual([{ name: 'Wren Castellan', id }]);
  });

  it('is refused where people could not tell two apart', async () => {
    const hold = { name: 'Regatta', items: ['D-002'], from: '2028-06-01', to: '2028-06-02', hours: 2 };
    await ask(warehouse, 'mutation($hold: HoldInput!) { placeHold(hold: $hold) { __typename } }', { hold });
    const { version, tour } = await ask(system, '{ tour(id: "harbour-lights") { version tour } }');
    for (const name of ['Regatta', 'Town Fair, one day']) {
      const { errors } = await system.graphql(save, { tour: { ...tour, name }, version });
      expect(errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field: 'tour.name', value: name });
    }
    const hangs = tour.shows[0].hangs.map((each: any) => ({ ...each, name: 'One name' }));
    const twice = await system.graphql(save, { tour: { ...tour, shows: [{ ...tour.shows[0], hangs }, ...tour.shows.slice(1)] }, version });
    expect(twice.errors?.[0]?.extensions.code).toBe('BAD_INPUT');
  });
});
