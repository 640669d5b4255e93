import { XMLParser } from 'fast-xml-parser';
import { strFromU8, unzipSync } from 'fflate';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const make = 'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }';
const release = 'mutation($id: ID!) { releasePackPlan(planId: $id, despite: "test") { __typename ... on PlanView { id state } } }';
const tick = 'mutation($id: ID!, $what: String!, $done: Boolean!) { tick(planId: $id, what: $what, done: $done) { id ticks } }';
const read =
  'mutation($id: ID!, $hang: String!, $hole: String!, $place: String!, $kg: Float!) { addLoadReading(planId: $id, hang: $hang, hole: $hole, place: $place, readingKg: $kg) { readings { hang hole readingKg verdict sentence readBy } } }';
const sign =
  'mutation($id: ID!, $hang: String!, $kind: String!, $name: String!, $remark: String = "", $outside: OutsideInput) { signOff(planId: $id, hang: $hang, kind: $kind, name: $name, remark: $remark, outside: $outside) { signOffs { hang kind name company place signedBy } } }';

describe('rigging', () => {
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
  });
  afterAll(() => test.close());

  const faultOf = (answer: any) => answer.errors?.[0]?.extensions?.faults?.[0];

  it('takes no reading and no signature on a draft: what hangs is what was released', async () => {
    expect(faultOf(await system.graphql(read, { id, hang: 'Centre', hole: 'C', place: 'at the hook', kg: 300 }))).toMatchObject({
      field: 'planId',
      wanted: expect.stringContaining('released revision'),
    });
    expect(faultOf(await system.graphql(sign, { id, hang: 'Centre', kind: 'inspected', name: 'S. A.' }))).toMatchObject({
      field: 'planId',
    });
    expect((await system.graphql(release, { id })).data.releasePackPlan).toMatchObject({ __typename: 'PlanView', state: 'released' });
  });

  it('judges a reading beside the computed load and keeps it', async () => {
    const pick = plan.picks.hangs.find((each: any) => each.hang === 'Centre').picks[0];
    const { data } = await system.graphql(read, { id, hang: 'Centre', hole: pick.hole, place: 'at the hook', kg: pick.hookLoadKg * 1.02 });
    expect(data.addLoadReading.readings).toMatchObject([{ verdict: 'agrees', readBy: 'Sol Achterberg' }]);
    const over = await safety.graphql(read, { id, hang: 'Centre', hole: pick.hole, place: 'above the hoist', kg: pick.hookLoadKg * 2 });
    expect(over.data.addLoadReading.readings[1]).toMatchObject({ verdict: 'differs', sentence: expect.stringContaining('Stop') });
  });

  it.each([
    ['a hang that is not there', { hang: 'Nowhere' }, 'hang'],
    ['a hole without a pick', { hole: 'G' }, 'hole'],
    ['a place that is none', { place: 'in the van' }, 'place'],
    ['a negative mass', { kg: -1 }, 'readingKg'],
  ])('refuses a reading with %s', async (_what, wrong, field) => {
    const answer = await system.graphql(read, { id, hang: 'Centre', hole: 'C', place: 'at the hook', kg: 300, ...wrong });
    expect(faultOf(answer)).toMatchObject({ field });
  });

  it('lets nobody of the warehouse sign or measure', async () => {
    const answer = await warehouse.graphql(read, { id, hang: 'Centre', hole: 'C', place: 'at the hook', kg: 300 });
    expect(answer.errors?.[0]?.extensions?.code).toBe('NOT_ALLOWED');
    expect((await warehouse.graphql(sign, { id, hang: 'Centre', kind: 'inspected', name: 'W' })).errors?.[0]?.extensions?.code).toBe(
      'NOT_ALLOWED',
    );
  });

  it('waits at a hold, then takes the inspection and after it the handover, once every hold is ticked', async () => {
    const all = plan.picks.hangs.find((each: any) => each.hang === 'Centre').runningOrder.goingUp;
    const read = all.find((each: any) => !each.hold);
    expect(faultOf(await system.graphql(tick, { id, what: read.key, done: true }))).toMatchObject({
      field: 'what',
      wanted: `a hold; this step is read, not ticked: ${read.text}`,
    });
    const steps = all.filter((each: any) => each.hold);
    expect(faultOf(await system.graphql(tick, { id, what: steps[1].key, done: true }))).toMatchObject({
      field: 'what',
      wanted: expect.stringContaining('everything waits for'),
    });
    expect(faultOf(await system.graphql(sign, { id, hang: 'Centre', kind: 'inspected', name: 'S. A.' }))).toMatchObject({
      wanted: expect.stringContaining(`${steps.length} are open`),
    });
    for (const step of steps) expect((await system.graphql(tick, { id, what: step.key, done: true })).errors).toBeUndefined();
    expect(faultOf(await system.graphql(tick, { id, what: steps[0].key, done: false }))).toMatchObject({
      wanted: expect.stringContaining('take them back first'),
    });
    // The cell above the hoist read twice the computed load: that stands until somebody says why.
    expect(faultOf(await system.graphql(sign, { id, hang: 'Centre', kind: 'inspected', name: 'S. A.' }))).toMatchObject({
      field: 'remark',
      wanted: expect.stringContaining('a load cell says stop'),
    });
    const remark = 'cell at hole C found faulty and taken out';
    expect(faultOf(await system.graphql(sign, { id, hang: 'Centre', kind: 'handed over', name: 'S. A.', remark }))).toMatchObject({
      wanted: 'the inspection after assembly signed first',
    });
    expect(faultOf(await system.graphql(sign, { id, hang: 'Centre', kind: 'inspected', name: ' ', remark }))).toMatchObject({
      field: 'name',
    });
    expect(faultOf(await system.graphql(sign, { id, hang: 'Centre', kind: 'inspected', name: 'Sol A.', remark }))).toMatchObject({
      field: 'name',
      value: 'Sol A.',
      wanted: 'a person on file, by name: Ines Aldous, Sol Achterberg, Wren Castellan',
    });
    await system.graphql(sign, { id, hang: 'Centre', kind: 'inspected', name: 'sol achterberg', remark });
    expect(faultOf(await system.graphql(sign, { id, hang: 'Centre', kind: 'inspected', name: 'Sol Achterberg', remark }))).toMatchObject({
      wanted: expect.stringContaining('not signed yet'),
    });
    // Whoever is signed in on the phone: one person does not sign in two roles.
    for (const who of [system, safety])
      expect(faultOf(await who.graphql(sign, { id, hang: 'Centre', kind: 'handed over', name: 'Sol ACHTERBERG', remark }))).toMatchObject({
        field: 'name',
        wanted: expect.stringContaining('another person than Sol Achterberg'),
      });
    // Who is not on file says for whom they work, as what, and where they stood.
    const outside = { company: 'Quayside Hall', role: 'rigger of the hall', place: 'the grid' };
    const second = { id, hang: 'Centre', kind: 'inspection countersigned', name: 'J. Fell', remark, outside };
    const over = { id, hang: 'Centre', kind: 'handed over', name: 'B. Marl', remark, outside };
    expect(faultOf(await system.graphql(sign, { ...over, outside: null }))).toMatchObject({ field: 'outside' });
    expect(faultOf(await system.graphql(sign, { ...second, outside: { ...outside, place: ' ' } }))).toMatchObject({ field: 'place' });
    expect(faultOf(await system.graphql(sign, { ...second, name: 'ines ALDOUS' }))).toMatchObject({
      field: 'name',
      wanted: 'somebody from outside; Ines Aldous is on file in this house and signs as that',
    });
    expect((await system.graphql(sign, second)).errors).toBeUndefined();
    expect(faultOf(await system.graphql(sign, second))).toMatchObject({ wanted: expect.stringContaining('not signed yet') });
    // Nobody signs twice in two roles, from outside neither.
    expect(faultOf(await safety.graphql(sign, { ...over, name: 'J. FELL' }))).toMatchObject({
      field: 'name',
      wanted: 'another person than J. Fell, whose name stands under "inspection countersigned" of Centre',
    });
    const { data } = await system.graphql(sign, over);
    expect(data.signOff.signOffs).toEqual([
      { hang: 'Centre', kind: 'inspected', name: 'Sol Achterberg', company: null, place: null, signedBy: 'Sol Achterberg' },
      {
        hang: 'Centre',
        kind: 'inspection countersigned',
        name: 'J. Fell',
        company: 'Quayside Hall',
        place: 'the grid',
        signedBy: 'Sol Achterberg',
      },
      { hang: 'Centre', kind: 'handed over', name: 'B. Marl', company: 'Quayside Hall', place: 'the grid', signedBy: 'Sol Achterberg' },
    ]);
    const [account] = await test.dataSource.query(`SELECT count(*)::int AS count FROM account WHERE name IN ('J. Fell', 'B. Marl')`);
    expect(account).toEqual({ count: 0 });
  });

  it('comes down only after going up is finished', async () => {
    const other = plan.picks.hangs.find((each: any) => each.hang === 'Main left').runningOrder.comingDown[0];
    expect(faultOf(await system.graphql(tick, { id, what: other.key, done: true }))).toMatchObject({
      wanted: expect.stringContaining('going up finished first'),
    });
    const own = plan.picks.hangs.find((each: any) => each.hang === 'Centre').runningOrder.comingDown[0];
    expect((await system.graphql(tick, { id, what: own.key, done: true })).errors).toBeUndefined();
  });

  it('never changes a reading or a signature', async () => {
    for (const table of ['load_reading', 'sign_off']) {
      await expect(test.dataSource.query(`DELETE FROM ${table}`)).rejects.toThrow();
      await expect(test.dataSource.query(`UPDATE ${table} SET hang = 'x'`)).rejects.toThrow();
    }
  });

  it('gives the points as CSV and as a scene, and the scene read back holds every point in its place (DIN SPEC 15801)', async () => {
    const csv = await (await warehouse.fetch(`/api/points/${id}/points.csv`)).text();
    const points = plan.picks.hangs.flatMap((hang: any) => hang.picks.map((pick: any) => ({ ...pick, heightMm: 15_200 })));
    expect(csv.split('\r\n')).toHaveLength(points.length + 2);
    const scene = await warehouse.fetch(`/api/points/${id}/points.mvr`);
    const files = unzipSync(new Uint8Array(await scene.arrayBuffer()));
    const parsed = new XMLParser({ ignoreAttributes: false, attributeNamePrefix: '' }).parse(
      strFromU8(files['GeneralSceneDescription.xml']!),
    );
    const supports = parsed.GeneralSceneDescription.Scene.Layers.Layer.ChildList.Support;
    const places = supports.map((each: any) => [
      each.name,
      ...each.Matrix.match(/\{([^}]*)\}$/)[1]
        .split(',')
        .map(Number),
    ]);
    expect(places).toEqual(points.map((each: any) => [each.point, each.stage.xMm, each.stage.yMm, each.heightMm]));
    const uuids = supports.map((each: any) => each.uuid);
    expect(new Set(uuids).size).toBe(points.length);
    for (const uuid of uuids) expect(uuid).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-a[0-9a-f]{3}-[0-9a-f]{12}$/);
    expect((await warehouse.fetch('/api/points/00000000-0000-4000-8000-000000000000/points.csv')).status).toBe(404);
  });

  it('keeps a regime as it is written, refuses one that makes no sense, and calls the plan stale', async () => {
    const { rules } = (await safety.graphql('{ rules }')).data;
    const [house] = rules.loadRules;
    const save = 'mutation($rule: ModelJson!, $was: ModelJson) { saveLoadRule(rule: $rule, was: $was) }';
    const wrong = await safety.graphql(save, {
      rule: { ...house, sideLoad: { ...house.sideLoad, bands: [{ upToDeg: 5, share: 7 }] } },
      was: house,
    });
    expect(faultOf(wrong)).toMatchObject({ field: 'sideLoad.bands[0].share', value: 7 });
    expect((await safety.graphql(save, { rule: { ...house, dynamicFactor: 1.4 }, was: house })).data.saveLoadRule).toEqual([]);
    const { showPage } = (
      await safety.graphql('{ showPage(tourId: "harbour-lights", showId: "quayside") { released { changed { sentence } } } }')
    ).data;
    expect(showPage.released.changed).toContainEqual({ sentence: 'the load rules have changed' });
    expect((await warehouse.graphql(save, { rule: house })).errors?.[0]?.extensions?.code).toBe('NOT_ALLOWED');
  });
});
