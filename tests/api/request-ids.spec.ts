import { randomUUID } from 'node:crypto';
import { connect } from 'node:net';
import { Housekeeping } from '../../apps/api/src/platform/housekeeping.js';
import { type DatabaseProxy, startDatabaseProxy } from '../support/database-proxy.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const quarantine = 'mutation($item: ID!, $reason: String!) { quarantine(itemId: $item, reason: $reason) { item } }';
const key = (id: string) => ({ 'idempotency-key': `"${id}"` });

describe('a write that carries a request id', () => {
  let test: TestApp;
  let warehouse: Agent;
  let system: Agent;
  let proxy: DatabaseProxy;
  beforeAll(async () => {
    test = await startTestApp({
      through: async (url) => {
        proxy = await startDatabaseProxy(url);
        return proxy.url;
      },
    });
    warehouse = await test.as('warehouse');
    system = await test.as('system');
  });
  afterAll(async () => {
    await test.close();
    await proxy.close();
  });

  const events = async (item: string): Promise<number> =>
    Number((await test.dataSource.query(`SELECT count(*) FROM event WHERE item_id = $1 AND what = 'quarantined'`, [item]))[0].count);
  const told = async (reply: Promise<Response>): Promise<any> => (await reply).json();
  const outcome = async (id: string, who = warehouse) => (await told(who.fetch(`/api/requests/${id}`))).outcome;
  const settle = async (id: string, who = warehouse) =>
    (await told(who.fetch(`/api/requests/${id}/settle`, { method: 'POST', headers: { 'x-cartwright': '1' } }))).outcome;

  it('is done once when it is sent five times at once, and each of the five gets the same answer', async () => {
    const id = randomUUID();
    const replies = await Promise.all(
      Array.from({ length: 5 }, () => warehouse.graphql(quarantine, { item: 'P-001', reason: 'Sent five times' }, key(id))),
    );
    expect(replies[0]!.errors).toBeUndefined();
    expect(replies[0]!.data.quarantine.item.state).toBe('quarantined');
    for (const reply of replies) expect(reply).toEqual(replies[0]);
    expect(await events('P-001')).toBe(1);
    expect(await outcome(id)).toBe('saved');
  });

  it('is refused when the same id comes with other values, for another write or from somebody else', async () => {
    const id = randomUUID();
    await warehouse.graphql(quarantine, { item: 'P-002', reason: 'First' }, key(id));
    const again = (query: string, variables: object, who: Agent) => who.graphql(query, variables, key(id));
    const other = await again(quarantine, { item: 'P-003', reason: 'First' }, warehouse);
    expect(other.errors![0]!.extensions.faults![0]).toMatchObject({ field: 'Idempotency-Key', value: id });
    const incident = 'mutation($item: ID!, $reason: String!) { recordIncident(itemId: $item, on: "2027-02-26", what: $reason) { item } }';
    const values = { item: 'P-002', reason: 'First' };
    for (const reply of [await again(incident, values, warehouse), await again(quarantine, values, system)])
      expect(reply.errors![0]!.extensions.faults![0]).toMatchObject({ field: 'Idempotency-Key', value: id });
    expect(await events('P-003')).toBe(0);
    expect(await outcome(id, system)).toBe('unknown yet');
  });

  it('takes the same values in another order as the same', async () => {
    const id = randomUUID();
    const first = await warehouse.graphql(quarantine, { item: 'P-004', reason: 'Order' }, key(id));
    const second = await warehouse.graphql(quarantine, { reason: 'Order', item: 'P-004' }, { 'idempotency-key': id.toUpperCase() });
    expect(second).toEqual(first);
    expect(await events('P-004')).toBe(1);
  });

  it('keeps nothing of a refusal: the same id may come again', async () => {
    const id = randomUUID();
    const refused = await warehouse.graphql(quarantine, { item: 'P-005', reason: ' ' }, key(id));
    expect(refused.errors![0]!.extensions.code).toBe('BAD_INPUT');
    expect(await outcome(id)).toBe('unknown yet');
    expect((await warehouse.graphql(quarantine, { item: 'P-005', reason: 'Now with a reason' }, key(id))).errors).toBeUndefined();
    expect(await events('P-005')).toBe(1);
  });

  it('is known as saved when the connection was cut before the answer', async () => {
    const id = randomUUID();
    const { port } = new URL(test.address);
    const body = JSON.stringify({ query: quarantine, variables: { item: 'P-006', reason: 'Cut' } });
    const head = ['POST /graphql HTTP/1.1', 'host: localhost', `cookie: ${warehouse.cookie}`, 'content-type: application/json'];
    const socket = connect(Number(port), '127.0.0.1');
    // Nothing is ever read from this socket: the answer is lost whenever it comes.
    socket.pause();
    socket.write([...head, `idempotency-key: ${id}`, `content-length: ${body.length}`, '', body].join('\r\n'));
    while ((await outcome(id)) !== 'saved') await new Promise((done) => setImmediate(done));
    socket.destroy();
    expect(await settle(id)).toBe('saved');
    expect(await events('P-006')).toBe(1);
  });

  it('is known as not saved when it never came, and is not taken after that was said', async () => {
    const id = randomUUID();
    expect(await outcome(id)).toBe('unknown yet');
    expect(await settle(id)).toBe('not saved');
    const late = await warehouse.graphql(quarantine, { item: 'P-007', reason: 'Late' }, key(id));
    expect(late.errors![0]!.extensions.faults![0]!.wanted).toContain('a new id');
    expect(await events('P-007')).toBe(0);
  });

  it('is saved once, and said to be, when the database answered the commit and the answer was lost', async () => {
    const id = randomUUID();
    proxy.loseNextCommit();
    const reply = await warehouse.graphql(quarantine, { item: 'P-008', reason: 'Lost commit' }, key(id));
    expect(proxy.lost()).toBe(1);
    expect(reply.errors).toBeUndefined();
    expect(reply.data.quarantine.item.state).toBe('quarantined');
    expect(await events('P-008')).toBe(1);
  });

  it('without an id, a lost commit is told as not known, never as not saved', async () => {
    proxy.loseNextCommit();
    const reply = await warehouse.graphql(quarantine, { item: 'P-009', reason: 'Lost commit' });
    expect(proxy.lost()).toBe(2);
    expect(reply.errors![0]!.extensions.code).toBe('OUTCOME_UNKNOWN');
    expect(reply.errors![0]!.message).toContain('not known yet');
    expect(await events('P-009')).toBe(1);
  });

  it('holds for files as well: a CSV that comes twice is imported once', async () => {
    const id = randomUUID();
    const csv = await (await warehouse.fetch('/api/csv/items/box')).text();
    const [heading, row] = csv.split(/\r?\n/) as [string, string];
    const cells = row.split(',');
    cells[heading.split(',').findIndex((each) => /^(id|serial)/i.test(each))] = 'P-REPEAT';
    const send = () =>
      warehouse.fetch('/api/csv/items/box', {
        method: 'POST',
        headers: { 'content-type': 'text/csv', 'x-cartwright': '1', ...key(id) },
        body: `${heading}\n${cells.join(',')}\n`,
      });
    const first = await told(send());
    expect(first.added).toEqual(['P-REPEAT']);
    expect(await told(send())).toEqual(first);
  });

  it('refuses an id that is none, and two writes under one', async () => {
    const bad = await warehouse.graphql(quarantine, { item: 'P-010', reason: 'x' }, { 'idempotency-key': 'soon' });
    expect(bad.errors![0]!.extensions.faults![0]).toMatchObject({ field: 'Idempotency-Key', value: 'soon' });
    const two = 'mutation { a: quarantine(itemId: "P-010", reason: "x") { item } b: quarantine(itemId: "P-011", reason: "x") { item } }';
    expect((await warehouse.graphql(two, {}, key(randomUUID()))).errors![0]!.extensions.code).toBe('BAD_INPUT');
    expect((await events('P-010')) + (await events('P-011'))).toBe(0);
  });

  it('is forgotten after thirty days, a bounded number at a time', async () => {
    const before = Number((await test.dataSource.query('SELECT count(*) FROM request'))[0].count);
    await test.dataSource.query(
      `INSERT INTO request (id, step, person_id, operation, values_hash, state, at)
       SELECT gen_random_uuid(), 0, gen_random_uuid(), '', '', 'saved', timestamptz '2027-01-27T08:59:59Z' FROM generate_series(1, 1500)`,
    );
    await test.dataSource.query(
      `INSERT INTO request (id, step, person_id, operation, values_hash, state, at)
       VALUES (gen_random_uuid(), 0, gen_random_uuid(), '', '', 'saved', timestamptz '2027-01-27T09:00:01Z')`,
    );
    expect((await test.app.get(Housekeeping).once()).requests).toBe(1500);
    expect(Number((await test.dataSource.query('SELECT count(*) FROM request'))[0].count)).toBe(before + 1);
  });
});
