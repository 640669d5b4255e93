import { loadTours } from '../../apps/api/src/planning/snapshot/tour-places.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const tourId = 'harbour-lights';
const readTour = `{ tour(id: "${tourId}") { version tour } }`;
const saveTour = 'mutation($tour: TourJson!, $version: Int) { saveTour(tour: $tour, expectedVersion: $version) { version } }';
const answer = `mutation($place: String!, $rulesOf: String, $reason: String!) {
  answerPlace(tourId: "${tourId}", place: $place, rulesOf: $rulesOf, reason: $reason) { home } }`;
const places = `{ tourPlaces(tourId: "${tourId}") { ruled home places { place hasRules judgedBy decisions { rulesOf because decidedBy } } } }`;
const plan = `mutation { makePackPlan(tourId: "${tourId}", showId: "quayside") { ... on PlanMade { plan { id plan } } } }`;
const changedOf = 'query($id: ID!) { plan(id: $id) { changed { code sentence } } }';
const release =
  'mutation($id: ID!, $despite: String) { releasePackPlan(planId: $id, despite: $despite) { __typename ... on StopRefusal { needsOfficer } } }';
const confirm =
  'mutation($id: ID!, $load: String!, $serials: [String!]!) { confirmCart(planId: $id, load: $load, serials: $serials) { agrees barred { sentence } } }';
const tick = 'mutation($id: ID!, $what: String!) { tick(planId: $id, what: $what, done: true) { id } }';
const sign =
  'mutation($id: ID!, $hang: String!) { signOff(planId: $id, hang: $hang, kind: "inspected", name: "S. A.", remark: "") { signOffs { hang } } }';
const notes = 'query($role: String!) { attention(role: $role, first: 100) { edges { node { code sentence weight } } } }';
const addRules = 'mutation($rules: [ModelJson!]!) { addExaminationRules(rules: $rules) }';
const home = { place: 'NO', rulesOf: 'GB', reason: 'the hirer asks for the rules of home' };

describe('a place without rules, answered once for a tour', () => {
  let test: TestApp;
  let agents: Record<'warehouse' | 'system' | 'safety', Agent>;
  beforeAll(async () => {
    test = await startTestApp();
    const [warehouse, system, safety] = await Promise.all([test.as('warehouse'), test.as('system'), test.as('safety')]);
    agents = { warehouse, system, safety };
    await visit(['NO']);
  });
  afterAll(() => test.close());

  async function visit(jurisdictions: string[]): Promise<void> {
    const { tour, version } = (await agents.system.graphql(readTour)).data.tour;
    expect((await agents.system.graphql(saveTour, { tour: { ...tour, jurisdictions }, version })).errors).toBeUndefined();
  }
  const made = async () => (await agents.system.graphql(plan)).data.makePackPlan.plan;
  const ofPlaces = (one: any) => one.plan.findings.filter((each: any) => ['not-judged', 'judged-elsewhere'].includes(each.code));
  const changed = async (id: string) => (await agents.system.graphql(changedOf, { id })).data.plan.changed;
  const faultOf = async (variables: object) =>
    (await agents.safety.graphql(answer, { ...home, ...variables })).errors?.[0]?.extensions.faults?.[0]?.field;

  it('is answered by nobody but the safety officer', async () => {
    for (const who of ['warehouse', 'system'] as const)
      expect((await agents[who].graphql(answer, home)).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    expect((await agents.system.graphql(places)).data.tourPlaces.places).toEqual([
      { place: 'NO', hasRules: false, judgedBy: null, decisions: [] },
    ]);
  });

  it.each([
    ['a place not visited', { place: 'SE' }, 'place'],
    ['a place with rules of its own', { place: 'GB' }, 'place'],
    ['rules that are not on file', { rulesOf: 'SE' }, 'rulesOf'],
    ['the place itself', { rulesOf: 'NO' }, 'rulesOf'],
    ['no answer to take back', { rulesOf: null }, 'rulesOf'],
    ['no reason', { reason: ' ' }, 'reason'],
    ['a reason of 301 letters', { reason: 'x'.repeat(301) }, 'reason'],
  ])('is refused for %s', async (_, variables, field) => {
    expect(await faultOf(variables)).toBe(field);
    expect(await test.dataSource.query('SELECT FROM place_answer')).toEqual([]);
  });

  it('is a stop before, judged as at home with a caution after, and the plan of before is stale', async () => {
    const before = await made();
    expect(ofPlaces(before)).toMatchObject([{ code: 'not-judged', weight: 'stop' }]);
    expect(before.plan.due.items.filter((each: any) => each.intervals.length > 0)).toEqual([]);
    expect(await changed(before.id)).toEqual([]);
    expect((await agents.safety.graphql(answer, home)).errors).toBeUndefined();
    expect((await changed(before.id)).length).toBeGreaterThan(0);

    const after = await made();
    const said = 'judged by the rules of GB (United Kingdom), because: the hirer asks for the rules of home. Decided by ';
    expect(ofPlaces(after)).toMatchObject([{ code: 'judged-elsewhere', weight: 'look', sentence: expect.stringContaining(said) }]);
    await visit(['GB']);
    const atHome = await made();
    expect(atHome.plan.due.items.length).toBeGreaterThan(0);
    expect(after.plan.due.items).toEqual(atHome.plan.due.items);
    expect(ofPlaces(atHome)).toEqual([]);
    await visit(['NO']);
  });

  it('is kept with who decided, in the log too, and never changed', async () => {
    const { places: visited } = (await agents.warehouse.graphql(places)).data.tourPlaces;
    expect(visited).toMatchObject([
      {
        place: 'NO',
        judgedBy: 'GB',
        decisions: [{ rulesOf: 'GB', because: home.reason, decidedBy: expect.any(String) }],
      },
    ]);
    const lines = await test.dataSource.query(`SELECT sentence FROM event WHERE what = 'answered' AND tour_id = $1`, [tourId]);
    expect(lines).toEqual([{ sentence: expect.stringContaining('NO (Norway) is judged by the rules of GB (United Kingdom)') }]);
    await expect(test.dataSource.query(`UPDATE place_answer SET because = 'other'`)).rejects.toThrow(/append only/);
    await expect(test.dataSource.query('DELETE FROM place_answer')).rejects.toThrow(/append only/);
  });

  it('holds for what is barred of a plan in force', async () => {
    const { id, plan: released } = await made();
    const safety = agents.safety;
    expect((await safety.graphql(release, { id, despite: 'a trial' })).data.releasePackPlan.__typename).toBe('PlanView');
    const barred = async () =>
      (await safety.graphql('query($id: ID!) { plan(id: $id) { barred { itemId code } } }', { id })).data.plan.barred;
    const outOfDate = (each: any) => each.code === 'out-of-date';
    const hoist = released.uses.map((each: any) => each.item).find((item: string) => item.startsWith('H-'));
    await test.dataSource.query(
      `INSERT INTO examination (item_id, data, recorded_by, recorded_at) VALUES ($1, '{"on": "2027-02-20", "outcome": "pass", "nextLatestOn": "2027-02-21"}', 'x', now())`,
      [hoist],
    );
    const shut = await barred();
    expect(shut.filter(outOfDate).map((each: any) => each.itemId)).toContain(hoist);
    await safety.graphql(answer, { place: 'NO', rulesOf: null, reason: 'to be asked again' });
    const silent = (await barred()).filter((each: any) => !['not-judged', 'out-of-date'].includes(each.code));
    expect([(await barred()).map((each: any) => each.itemId).sort(), silent]).toEqual([
      released.uses.map((each: any) => each.item).sort(),
      [],
    ]);
    expect(await doorsOf(id, released)).toEqual({
      scan: [false, true],
      tick: expect.stringContaining('NO (Norway) is not judged'),
      row: expect.stringContaining('NO (Norway) is not judged'),
      signature: expect.stringContaining('NO (Norway) is not judged'),
      today: ['warehouse', 'system', 'safety'],
    });
    expect((await safety.graphql(places)).data.tourPlaces.places).toMatchObject([
      { judgedBy: null, decisions: [{ rulesOf: null }, { rulesOf: 'GB' }] },
    ]);
    expect(ofPlaces(await made())).toMatchObject([{ code: 'not-judged', weight: 'stop' }]);
    await safety.graphql(answer, home);
    expect((await barred()).filter((each: any) => each.code === 'not-judged')).toEqual([]);
  });

  /** What every door of a released plan says. */
  async function doorsOf(id: string, { carts, picks, truck }: any) {
    const wantedOf = (reply: any): string | undefined => reply.errors?.[0]?.extensions.faults?.[0]?.wanted;
    const { system, safety, warehouse } = agents;
    const [load] = carts.loads;
    const serials = load.boxes.map((each: any) => each.serial);
    const read = (await warehouse.graphql(confirm, { id, load: load.id, serials })).data.confirmCart;
    const { hang } = picks.hangs[0];
    const [first] = truck.trucks;
    const today = await Promise.all(
      (['warehouse', 'system', 'safety'] as const).map(async (role) => {
        const { edges } = (await agents[role].graphql(notes, { role })).data.attention;
        return edges.some(({ node }: any) => node.weight === 'stop' && node.sentence.includes('is not judged') && node.code === 'barred')
          ? role
          : null;
      }),
    );
    return {
      scan: [read.agrees, read.barred.some((each: any) => each.sentence.includes('NO (Norway) is not judged'))],
      tick: wantedOf(await system.graphql(tick, { id, what: picks.hangs[0].runningOrder.goingUp[0].key })),
      row: wantedOf(await warehouse.graphql(tick, { id, what: `row:${first.id}:${first.rows[0].number}` })),
      signature: wantedOf(await safety.graphql(sign, { id, hang })),
      today,
    };
  }

  it('travels in no file', async () => {
    const given = await (await agents.system.fetch(`/api/tours/${tourId}/file`)).text();
    expect(given).not.toContain('placeAnswers');
    const { tour, version } = (await agents.system.graphql(readTour)).data.tour;
    const brought = { ...tour, placeAnswers: [{ place: 'NO', rulesOf: 'GB', because: 'x', decidedBy: 'y', decidedOn: '2027-02-26' }] };
    expect((await agents.system.graphql(saveTour, { tour: brought, version })).errors?.[0]?.extensions.code).toBe('BAD_INPUT');
  });

  it('falls away by itself when rules of the place come on file', async () => {
    const rule = { jurisdiction: 'NO', kinds: ['hoist'], intervals: ['P24M'], source: 'a rule of the house', status: 'house rule' };
    expect((await agents.safety.graphql(addRules, { rules: [rule] })).errors).toBeUndefined();
    const now = await made();
    expect(ofPlaces(now)).toEqual([]);
    const intervals = new Set(now.plan.due.items.filter((each: any) => each.kind === 'hoist').map((each: any) => each.intervals.join()));
    expect([...intervals]).toEqual(['P24M']);
    expect(await faultOf({})).toBe('place');
  });

  it('is told with the day of the depot, where its place is on record', async () => {
    const saveVenue = 'mutation($venue: VenueJson!) { saveVenue(venue: $venue) { id } }';
    const { depot } = (await agents.system.graphql(readTour)).data.tour.tour;
    await test.dataSource.query(`INSERT INTO place_answer (tour_id, place, rules_of, because, decided_by, decided_at)
      SELECT tour_id, place, 'GB', because, decided_by, '2027-02-26T23:30:00Z' FROM place_answer ORDER BY id DESC LIMIT 1`);
    const day = async () => (await loadTours(test.dataSource.manager, [tourId]))[0]?.placeAnswers?.at(-1)?.decidedOn;
    expect(await day()).toBe('2027-02-26');
    await agents.system.graphql(saveVenue, { venue: { name: depot, country: 'GB', timeZone: 'Europe/Berlin' } });
    expect(await day()).toBe('2027-02-27');
  });
});
