import type { PackPlan } from '#pack-plan';
import { TourFileReader } from '../../apps/api/src/planning/snapshot/tour-file.reader.js';
import { missingInPrint } from '../support/printed-text.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const planFields = '{ id state revision madeBy releasedBy releasedDespite changed { sentence } plan ticks cartChecks { load checkedBy } }';
const page = `query($tour: ID!, $show: ID!) { showPage(tourId: $tour, showId: $show) { name tourName released ${planFields} draft ${planFields} revisions { id revision state } } }`;

/** A database that was filled by the API as it stood on 25 November 2026 comes to today's shape by the migrations alone and loses nothing. */
describe('a database that landed earlier', () => {
  let test: TestApp;
  let system: Agent;
  beforeAll(async () => {
    test = await startTestApp({ landed: '2026-11-25' });
    system = await test.as('system');
  });
  afterAll(() => test.close());

  const ask = async (query: string, variables: object = {}) => {
    const { data, errors } = await system.graphql(query, variables);
    expect(errors).toBeUndefined();
    return Object.values<any>(data)[0];
  };
  const show = (tour: string, id: string) => ask(page, { tour, show: id });

  it('has had every migration', async () => {
    expect(await test.dataSource.showMigrations()).toBe(false);
  });

  it('reads what was written for a place as its code', async () => {
    const places = await test.dataSource.query(`SELECT DISTINCT data->'jurisdictions' AS places FROM tour`);
    expect(places).toEqual([{ places: ['GB'] }]);
    const rules: { id: string; place: string }[] = await test.dataSource.query(
      `SELECT id, data->>'jurisdiction' AS place FROM rule WHERE kind <> 'system'`,
    );
    expect(rules.map((each) => each.place)).toEqual(['GB', 'GB', 'GB']);
    expect(rules.map((each) => each.id)).toEqual(expect.arrayContaining(['GB: hoist: P12M', 'GB: grid, shackle, sling, pin: P6M']));
  });

  it('shows both tours with their shows', async () => {
    const { edges } = await ask('{ tours { edges { node { id name prepFrom returnTo showNames { showId name } } } } }');
    const tours = edges.map((edge: any) => edge.node).sort((a: any, b: any) => (a.id < b.id ? -1 : 1));
    expect(tours).toEqual([
      {
        id: 'harbour-lights',
        name: 'Harbour Lights',
        prepFrom: '2027-03-01',
        returnTo: '2027-03-17',
        showNames: [
          { showId: 'quayside', name: 'Quayside, night one' },
          { showId: 'old-mill', name: 'Old Mill' },
          { showId: 'fenland', name: 'Fenland Dome' },
        ],
      },
      {
        id: 'winter-run',
        name: 'Winter run: "north"',
        prepFrom: '2027-09-01',
        returnTo: '2027-09-06',
        showNames: [{ showId: 'pier', name: "The Pier's end" }],
      },
    ]);
  });

  it('keeps who released what, and prints every revision as it was worded', async () => {
    const quayside = await show('harbour-lights', 'quayside');
    expect(quayside.revisions.map(({ revision, state }: any) => [revision, state])).toEqual([
      ['A', 'superseded'],
      ['B', 'released'],
    ]);
    expect(quayside.released).toMatchObject({ revision: 'B', releasedBy: 'Tam O’Rourke', madeBy: 'Wren Castellan' });
    expect((await show('winter-run', 'pier')).released).toMatchObject({ releasedDespite: 'loads of the examples, nothing flies' });
    const stored: { revision: string; plan: any }[] = await test.dataSource.query(
      'SELECT id, revision, plan FROM pack_plan WHERE revision IS NOT NULL',
    );
    expect(stored).toHaveLength(4);
    for (const { id, revision, plan } of stored as { id: string; revision: string; plan: any }[]) {
      const read: { plan: PackPlan } = await ask('query($id: ID!) { plan(id: $id) { plan } }', { id });
      const said = plan.findings.filter((each: any) => each.weight !== 'agrees' && each.section !== 'inputs');
      expect(said.length).toBeGreaterThan(0);
      const words = [`Revision ${revision}`, ...said.map((each: any) => each.sentence)];
      expect(missingInPrint({ plan: read.plan, revision }, words)).toEqual([]);
    }
  });

  it('keeps the ticks of rows, steps and moves where they were', async () => {
    const { released, revisions } = await show('harbour-lights', 'quayside');
    const first = await ask(`query($id: ID!) { plan(id: $id) ${planFields} }`, { id: revisions[0].id });
    const stepsOf = (plan: any, hang: string, way: 'goingUp' | 'comingDown') =>
      plan.plan.picks.hangs.find((each: any) => each.hang === hang).runningOrder[way].map((each: any) => each.key);
    for (const key of stepsOf(first, 'Centre', 'goingUp')) expect(first.ticks).toContain(key);
    expect(stepsOf(first, 'Centre', 'comingDown').filter((key: string) => first.ticks.includes(key))).toHaveLength(1);
    expect(stepsOf(released, 'Main right', 'goingUp').filter((key: string) => released.ticks.includes(key))).toHaveLength(4);
    const count = async (id: string) =>
      Number((await test.dataSource.query('SELECT count(*) FROM tick WHERE plan_id = $1', [id]))[0].count);
    expect(first.ticks).toHaveLength(await count(first.id));
    const kinds = await test.dataSource.query('SELECT kind, count(*)::int AS n FROM tick GROUP BY kind ORDER BY kind');
    expect(kinds).toEqual([
      { kind: 'move', n: 6 },
      { kind: 'row', n: 9 },
      { kind: 'step-down', n: 1 },
      { kind: 'step-up', n: 28 },
    ]);
    expect(released.cartChecks).toEqual([{ load: released.plan.carts.loads[0].id, checkedBy: 'Wren Castellan' }]);
    expect(first.cartChecks).toHaveLength(3);
    const work = await ask('query($id: ID!) { workList(planId: $id) }', { id: released.id });
    expect(work.status).not.toBe('done');
  });

  it('keeps what is promised and held, and no tour finds its own kit promised to others', async () => {
    const holds = await ask('{ openHolds { name from to items } }');
    expect(holds).toEqual([
      { name: 'Regatta', from: '2027-06-01', to: '2027-06-04', items: ['P-003', 'P-004'] },
      { name: 'Mrs Finch’s fair', from: '2027-07-01', to: '2027-07-02', items: ['D-002'] },
    ]);
    const holders = await test.dataSource.query(
      `SELECT holder_kind AS kind, holder_id AS id, tour_name AS name, count(*)::int AS n FROM booking WHERE holder_kind <> 'hold' GROUP BY 1, 2, 3 ORDER BY 2`,
    );
    expect(holders).toMatchObject([
      { kind: 'named', id: 'Town Fair, one day', name: 'Town Fair, one day', n: 1 },
      { kind: 'tour', id: 'harbour-lights', name: 'Harbour Lights' },
      { kind: 'tour', id: 'winter-run', name: 'Winter run: "north"' },
    ]);
    const [{ count }] = await test.dataSource.query('SELECT count(*) FROM booking');
    expect(Number(count)).toBe(158);
    const promises = (await ask('{ item(id: "P-016") { promises { tour from to } } }')).promises;
    expect(promises).toContainEqual({ tour: 'Harbour Lights', from: '2027-03-01', to: '2027-03-17' });
    for (const [id, name] of [
      ['harbour-lights', 'Harbour Lights'],
      ['winter-run', 'Winter run: "north"'],
    ] as const) {
      const { bookings } = await test.app.get(TourFileReader).load(test.dataSource.manager, id);
      expect(bookings.length).toBeGreaterThan(3);
      expect(bookings.map((each) => each.tour)).not.toContain(name);
    }
  });

  it('keeps events, counts, examinations with their report, readings, signatures and wishes', async () => {
    const [{ count }] = await test.dataSource.query('SELECT count(*) FROM event');
    expect(Number(count)).toBe(679);
    const sheet = await ask(
      '{ countSheet(tourId: "harbour-lights", showId: "quayside") { records { key losses inForce countedBy reason } } }',
    );
    expect(sheet.records).toContainEqual({
      key: 'Link pin 12',
      losses: 1,
      inForce: true,
      countedBy: 'Wren Castellan',
      reason: 'Nineteen lay in the cable trunk',
    });
    const hoist = await ask(
      '{ item(id: "H-08") { summary { dueOn } records { edges { node { recordedBy supersededBy } } } history { edges { node { who sentence } } } } }',
    );
    expect(hoist.summary.dueOn).toBe('2028-02-25');
    expect(hoist.records.edges).toHaveLength(2);
    expect(hoist.history.edges.map((each: any) => each.node.who)).toContain('Ines Aldous');
    const [{ id: report }] = await test.dataSource.query('SELECT id FROM report_file');
    expect(await (await system.fetch(`/api/reports/${report}`)).text()).toContain('a report of one line');
    const { revisions } = await show('harbour-lights', 'quayside');
    const record = await ask(
      'query($id: ID!) { riggingRecord(planId: $id) { readings { hang readBy verdict } signOffs { hang kind name signedBy } } }',
      {
        id: revisions[0].id,
      },
    );
    expect(record.readings.map((each: any) => [each.hang, each.verdict])).toEqual([
      ['Centre', 'agrees'],
      ['Centre', 'differs'],
    ]);
    expect(record.signOffs).toMatchObject([
      { hang: 'Centre', kind: 'inspected', name: 'Sol A.', signedBy: 'Sol Achterberg' },
      { hang: 'Centre', kind: 'handed over', name: 'I. Aldous', signedBy: 'Ines Aldous' },
    ]);
    const [{ count: acts }] = await test.dataSource.query('SELECT count(*) FROM loading_act');
    expect(Number(acts)).toBe(3);
  });

  it('knows by id who did what, beside the name as it was written', async () => {
    for (const [table, name, id] of [
      ['event', 'who', 'person_id'],
      ['pack_plan', 'released_by', 'released_by_id'],
      ['tick', 'ticked_by', 'ticked_by_id'],
      ['sign_off', 'signed_by', 'signed_by_id'],
      ['hardware_count', 'counted_by', 'counted_by_id'],
    ]) {
      const rows = await test.dataSource.query(
        `SELECT count(*)::int AS n, count(${id})::int AS known, count(account.id)::int AS right FROM ${table}
         LEFT JOIN account ON account.id = ${id} AND account.name = ${name} WHERE ${name} IS NOT NULL AND ${name} <> 'Cartwright'`,
      );
      expect(rows[0].n).toBeGreaterThan(0);
      expect([rows[0].known, rows[0].right]).toEqual([rows[0].n, rows[0].n]);
    }
  });

  it('has a venue for each that its shows name', async () => {
    const venues = await ask('{ venues { venue shows { tourId showId } } }');
    expect(venues.map(({ venue, shows }: any) => [venue.name, shows.map((each: any) => each.showId)])).toEqual([
      ['Fenland Dome', ['fenland']],
      ['Old Mill Arena', ['old-mill']],
      ['Quayside Hall', ['quayside', 'pier']],
    ]);
  });

  it('finds no plan stale that was not stale before, but for what has been changed since', async () => {
    expect((await show('winter-run', 'pier')).released.changed).toEqual([{ sentence: 'box P-033 has changed' }]);
  });

  it('goes on working: a tick, a new plan, a hold given back', async () => {
    const { released } = await show('harbour-lights', 'quayside');
    const step = released.plan.picks.hangs[0].runningOrder.goingUp[0].key;
    const tick = 'mutation($id: ID!, $what: String!) { tick(planId: $id, what: $what, done: true) { ticks } }';
    const barred = await system.graphql(tick, { id: released.id, what: step });
    expect(barred.errors?.[0]?.message).toContain('P-033 (quarantined');
    const safety = await test.as('safety');
    await safety.graphql('mutation { releaseFromQuarantine(itemId: "P-033", reason: "driver changed") { summary { state } } }');
    const ticked = await ask(tick, { id: released.id, what: step });
    expect(ticked.ticks).toContain(step);
    expect(await ask('mutation { makePackPlan(tourId: "winter-run", showId: "pier") { ... on PlanMade { plan { state } } } }')).toEqual({
      plan: { state: 'draft' },
    });
  });
});
