import pg from 'pg';
import { type EventStream, openEventStream } from '../support/event-stream.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const quarantine = 'mutation($item: ID!, $reason: String!) { quarantine(itemId: $item, reason: $reason) { item } }';

/** Tables that say nothing of their own: what they hold is private, or always comes with a row of a table that is told. */
const untold = [
  'answering',
  'answering_part',
  'calendar_entry',
  'change',
  'edition',
  'event',
  'input_change',
  'item_record',
  'lot_split',
  'migrations',
  'officer_proposal',
  'plan_freshness',
  'plan_improvement',
  'plan_part',
  'report_file',
  'request',
  'seal',
  'sealed_line',
  'session',
  'sign_in_try',
  'size_day',
];

describe('what changed is told', () => {
  let one: TestApp;
  let other: TestApp;
  let at: { one: Agent; other: Agent };
  const streams: EventStream[] = [];
  beforeAll(async () => {
    one = await startTestApp();
    other = await startTestApp({ beside: one });
    at = { one: await one.as('warehouse'), other: await other.as('system') };
  });
  afterEach(() => {
    for (const stream of streams.splice(0)) stream.close();
  });
  afterAll(async () => {
    await other.close();
    await one.close();
  });

  const open = async (who: Agent, headers?: Record<string, string>) => {
    const stream = await openEventStream(who, headers);
    streams.push(stream);
    if (stream.status === 200) await stream.opened();
    return stream;
  };
  const changed = async (since?: string, who = at.one): Promise<{ position: string; topics: string[] }> =>
    (await (await who.fetch(`/api/changes${since === undefined ? '' : `?since=${since}`}`)).json()) as never;
  const ask = (item: string, who = at.one) => who.graphql(quarantine, { item, reason: 'Told to others' });

  it('by one API to who listens at another', async () => {
    const stream = await open(at.other);
    await ask('P-001');
    expect(await stream.until('item/P-001')).toEqual(expect.arrayContaining(['item/P-001', 'register']));
    expect((await stream.opened()).filter((each) => /^(tour|show|catalogue)/.test(each))).toEqual([]);
  });

  it('a tick through one API is told through the other', async () => {
    const made = await at.other.graphql(
      'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan } } } }',
    );
    const { id, plan } = made.data.makePackPlan.plan;
    const stream = await open(at.other);
    const row = `row:${plan.truck.trucks[0].id}:1`;
    const ticked = await at.one.graphql('mutation($id: ID!, $row: String!) { tick(planId: $id, what: $row, done: true) { ticks } }', {
      id,
      row,
    });
    expect(ticked.errors).toBeUndefined();
    expect(await stream.until(`done/${id}`)).not.toContain('tour/harbour-lights');
  });

  it('after coming back with the last position, what was missed is told at once', async () => {
    const first = await open(at.other);
    await ask('P-002');
    await first.until('item/P-002');
    const position = first.position()!;
    first.close();
    await ask('P-003');
    await ask('P-004');
    const again = await openEventStream(at.other, { 'last-event-id': position });
    streams.push(again);
    expect(await again.opened()).toEqual(expect.arrayContaining(['item/P-003', 'item/P-004']));
  });

  it('a change that was begun before a position was given and saved after it is not missed', async () => {
    const client = new pg.Client({ connectionString: one.databaseUrl });
    await client.connect();
    await client.query('BEGIN');
    await client.query(`UPDATE item SET depot = depot WHERE id = 'P-005'`);
    await ask('P-006');
    const before = await changed();
    await ask('P-007');
    const { position, topics } = await changed(before.position);
    expect(topics).toContain('item/P-007');
    expect(topics).not.toContain('item/P-005');
    await client.query('COMMIT');
    await client.end();
    expect((await changed(position)).topics).toContain('item/P-005');
  });

  it('a write that was refused or rolled back is not told', async () => {
    const { position } = await changed();
    expect((await at.one.graphql(quarantine, { item: 'P-008', reason: ' ' })).errors).toBeDefined();
    await one.dataSource
      .transaction(async (manager) => {
        await manager.query(`UPDATE item SET depot = depot WHERE id = 'P-008'`);
        throw new Error('rolled back');
      })
      .catch(() => undefined);
    expect((await changed(position)).topics).not.toContain('item/P-008');
  });

  it('an API whose connection to the database was ended tells afterwards what it slept through', async () => {
    const stream = await open(at.other);
    const ended = await one.dataSource.query(
      `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'cartwright live' AND datname = current_database()`,
    );
    expect(ended.length).toBeGreaterThan(0);
    await ask('P-009');
    expect(await stream.until('item/P-009')).toContain('register');
    await ask('P-010');
    await stream.until('item/P-010');
  });

  it('a position of another database, of long ago or of nonsense means: read everything again', async () => {
    const { position } = await changed();
    const [transaction, second] = position.split('-').map(Number) as [number, number];
    for (const since of ['nonsense', `${transaction + 1_000_000}-${second}`, `${transaction}-${second - 25 * 3600}`])
      expect((await changed(since)).topics).toEqual(['*']);
    expect((await changed(position)).topics).not.toContain('*');
  });

  it('days of use that a reader works out again are no change', async () => {
    const { position } = await changed();
    await one.dataSource.query(`UPDATE item SET due_known = NOT due_known`);
    expect((await changed(position)).topics).not.toContain('item');
    await one.dataSource.query(`UPDATE item SET due_known = NOT due_known, depot = depot || '!' WHERE id = 'P-013'`);
    expect((await changed(position)).topics).toContain('item/P-013');
  });

  it('a change of more than fifty items is told as one of all items', async () => {
    const { position } = await changed();
    await one.dataSource.query('UPDATE item SET depot = depot');
    const { topics } = await changed(position);
    expect(topics).toContain('item');
    expect(topics.filter((each) => each.startsWith('item/')).length).toBeLessThan(50);
  });

  it('asking what changed costs a few bytes', async () => {
    const { position } = await changed();
    await ask('P-011');
    const reply = await at.one.fetch(`/api/changes?since=${position}`);
    expect((await reply.arrayBuffer()).byteLength).toBeLessThan(1024);
  });

  it('nobody listens who is not signed in, and nobody with a hundred streams', async () => {
    const stranger = await fetch(`${one.address}/api/events`);
    expect(stranger.status).toBe(401);
    const own = await Promise.all(Array.from({ length: 12 }, () => open(at.one)));
    expect(own.map((each) => each.status)).toEqual(Array<number>(12).fill(200));
    expect((await open(at.one)).status).toBe(429);
    own[0]!.close();
    // The end of the first is seen by the API a moment later.
    for (let status = 429; status === 429; ) {
      const next = await open(at.one);
      status = next.status;
    }
    expect((await open(at.one)).status).toBe(429);
  });

  it('every table tells its changes, or stands on the list of those that need not', async () => {
    const rows: { name: string; told: string }[] = await one.dataSource.query(
      `SELECT c.relname AS name, (SELECT count(*) FROM pg_trigger t WHERE t.tgrelid = c.oid AND t.tgname IN ('told_insert', 'told_update', 'told_delete')) AS told
       FROM pg_class c WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p') ORDER BY 1`,
    );
    expect(rows.filter((each) => each.told !== '3').map((each) => each.name)).toEqual(untold);
  });
});
