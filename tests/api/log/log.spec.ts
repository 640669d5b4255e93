import { parse } from 'csv-parse/sync';
import { type Agent, type TestApp, startTestApp, testDay } from '../../support/test-app.js';

const read = `query($act: ID, $item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $first: Int, $after: String) {
  log(act: $act, item: $item, tour: $tour, person: $person, day: $day, zone: $zone, first: $first, after: $after) {
    pageInfo { hasNextPage endCursor } edges { node { id at who personId via sentence itemId tourId rows { table key before after } moreRows } } } }`;

describe('the log', () => {
  let test: TestApp;
  let safety: Agent;
  let warehouse: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [safety, warehouse] = await Promise.all([test.as('safety'), test.as('warehouse')]);
    await warehouse.graphql('mutation { quarantine(itemId: "P-010", reason: "horn cracked") { item } }');
    await safety.graphql('mutation { releaseFromQuarantine(itemId: "P-010", reason: "new horn") { item } }');
  });
  afterAll(() => test.close());

  const ask = async (filter: object, agent = safety) => {
    const { data, errors } = await agent.graphql(read, filter);
    expect(errors).toBeUndefined();
    return { page: data.log.pageInfo, lines: data.log.edges.map((each: any) => each.node) };
  };
  const me = async (agent: Agent) => (await agent.graphql('{ me { id } }')).data.me.id as string;

  it('says of an item who did what, and what was there before and after', async () => {
    const { lines } = await ask({ item: 'P-010' });
    expect(lines.slice(0, 2)).toEqual([
      expect.objectContaining({ who: 'Ines Aldous', via: 'releaseFromQuarantine', itemId: 'P-010' }),
      expect.objectContaining({ who: 'Wren Castellan', sentence: 'Quarantined: horn cracked.', personId: await me(warehouse) }),
    ]);
    expect(lines[1].rows).toMatchObject([
      { table: 'item', key: 'P-010', before: { state: 'in service' }, after: { state: 'quarantined', rest: { reason: 'horn cracked' } } },
    ]);
    expect(lines[0].rows[0].before).toMatchObject({ state: 'quarantined' });
  });

  it('is filtered by person and by day in a zone', async () => {
    const { lines } = await ask({ person: await me(warehouse) });
    expect(new Set(lines.map((each: any) => each.who))).toEqual(new Set(['Wren Castellan']));
    const day = (zone: string, of = testDay) => ask({ item: 'P-010', day: of, zone }).then((found) => found.lines.length);
    // Both were done at 09:00 UTC of the day of the test.
    expect(await day('UTC')).toBeGreaterThanOrEqual(2);
    expect(await day('Pacific/Kiritimati')).toBeGreaterThanOrEqual(2);
    expect(await day('Pacific/Pago_Pago')).toBe(0);
    expect(await day('Pacific/Pago_Pago', '2027-02-25')).toBe(await day('UTC'));
    expect(await day('UTC', '2027-02-27')).toBe(0);
    expect(await day('UTC', '2027-02-25')).toBe(0);
  });

  it('is filtered by tour, also where the act was said of a show', async () => {
    const system = await test.as('system');
    await system.graphql('mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { __typename } }');
    const { lines } = await ask({ tour: 'harbour-lights' });
    expect(lines[0]).toMatchObject({ who: 'Sol Achterberg', tourId: 'harbour-lights' });
    expect((await ask({ tour: 'nowhere' })).lines).toEqual([]);
  });

  it('is read page by page without a line twice or left out', async () => {
    const whole = (await ask({ first: 100 })).lines.map((each: any) => each.id);
    const found: string[] = [];
    for (let after: string | null = null; ; ) {
      const { page, lines } = await ask({ first: 27, after });
      found.push(...lines.map((each: any) => each.id));
      if (!page.hasNextPage || found.length >= whole.length) break;
      after = page.endCursor;
    }
    expect(found.slice(0, whole.length)).toEqual(whole);
  });

  it('tells what was done at once as one, which opens to its lines', async () => {
    const acts = `query($item: ID, $first: Int, $after: String) { logActs(item: $item, first: $first, after: $after) {
      pageInfo { hasNextPage endCursor } edges { node { id lines isMoreThanCounted line { id } } } } }`;
    const askActs = async (filter: object) => (await safety.graphql(acts, filter)).data.logActs;
    const told: any[] = (await askActs({ first: 200 })).edges.map((each: any) => each.node);
    const ofAct = `query($act: ID, $item: ID) { log(act: $act, item: $item, first: 200) { pageInfo { hasNextPage } edges { node { id itemId } } } }`;
    const linesOf = async (act: string, item?: string) =>
      (await safety.graphql(ofAct, { act, item })).data.log.edges.map((each: any) => each.node);
    const [counted] = await test.dataSource.query(
      `SELECT count(*)::int AS lines, count(DISTINCT act)::int AS acts FROM event WHERE what <> 'row'`,
    );
    expect(told).toHaveLength(counted.acts);
    expect(new Set(told.map((each) => each.id)).size).toBe(counted.acts);
    expect(told.reduce((sum, each) => sum + each.lines, 0)).toBe(counted.lines);
    const largest = told.reduce((one, other) => (other.lines > one.lines ? other : one));
    expect(largest.lines).toBeGreaterThan(100);
    const lines = await linesOf(largest.id);
    expect(lines).toHaveLength(largest.lines);
    expect(lines.map((each: any) => each.id)).toContain(largest.line.id);

    const paged: string[] = [];
    for (let after: string | null = null; ; ) {
      const page: any = await askActs({ first: 2, after });
      paged.push(...page.edges.map((each: any) => each.node.id));
      if (!page.pageInfo.hasNextPage) break;
      after = page.pageInfo.endCursor;
    }
    expect(paged).toEqual(told.map((each) => each.id));

    const ofItem: any[] = (await askActs({ item: 'P-010' })).edges.map((each: any) => each.node);
    const came = ofItem.find((each) => each.id === largest.id);
    const concerned = await linesOf(largest.id, 'P-010');
    expect(concerned).toHaveLength(came.lines);
    expect(came.lines).toBeLessThan(largest.lines);
  });

  it('leaves as CSV what the screen shows, with changed rows as JSON', async () => {
    const reply = await safety.fetch('/api/csv/log?item=P-010');
    expect(reply.headers.get('content-type')).toContain('text/csv');
    const rows: Record<string, string>[] = parse(await reply.text(), { columns: true });
    const { lines } = await ask({ item: 'P-010' });
    expect(rows.map((each) => each['line'])).toEqual(lines.map((each: any) => each.id));
    expect(JSON.parse(rows[1]!['changed']!)).toEqual(lines[1].rows);
  });

  it('holds what somebody wrote past Cartwright, under the login of the database', async () => {
    const runner = test.dataSource.createQueryRunner();
    await runner.query(`SET application_name = 'a console'`);
    await runner.query(`UPDATE item SET state = 'retired' WHERE id = 'P-011'`);
    await runner.query(`SET application_name = 'cartwright'`);
    await runner.release();
    const [line] = (await ask({ item: 'P-011' })).lines;
    expect(line).toMatchObject({
      via: null,
      sentence: 'Changed in the database, not by Cartwright.',
      rows: [{ before: { state: 'in service' }, after: { state: 'retired' } }],
    });
    expect(line.who).not.toBe('');
  });

  it.each([
    ['a day that is none', { day: '2027-02-30' }, 'day'],
    ['a zone that is none', { day: testDay, zone: 'Mars/Olympus' }, 'zone'],
    ['a person that is none', { person: 'Wren' }, 'person'],
    ['an act that is none', { act: 'import' }, 'act'],
    ['a cursor that is none', { after: 'x' }, 'after'],
  ])('refuses %s', async (_what, filter, field) => {
    expect((await safety.graphql(read, filter)).errors?.[0]?.extensions).toMatchObject({ code: 'BAD_INPUT', faults: [{ field }] });
  });

  it('is not read by the warehouse', async () => {
    expect((await warehouse.graphql(read, {})).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    expect((await warehouse.fetch('/api/csv/log')).status).toBe(403);
  });
});
