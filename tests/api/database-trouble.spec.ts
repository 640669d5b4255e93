import { randomUUID } from 'node:crypto';
import type pg from 'pg';
import type { PostgresDriver } from 'typeorm/driver/postgres/PostgresDriver.js';
import { type DatabaseProxy, startDatabaseProxy } from '../support/database-proxy.js';
import { type Agent, type TestApp, post, startTestApp } from '../support/test-app.js';

const quarantine = 'mutation($item: ID!, $reason: String!) { quarantine(itemId: $item, reason: $reason) { item } }';

describe('a house whose database is in trouble', () => {
  let between: DatabaseProxy;
  let test: TestApp;
  let system: Agent;
  beforeAll(async () => {
    test = await startTestApp({
      config: { logLevel: 'silent' },
      runsJobs: false,
      through: async (databaseUrl) => (between = await startDatabaseProxy(databaseUrl)).url,
    });
    system = await test.as('system');
  });
  afterAll(async () => {
    between.turn('open');
    await test.close();
    await between.close();
  });

  const write = (item: string, reason: string, headers: Record<string, string> = {}) =>
    system.graphql(quarantine, { item, reason }, headers);
  const saved = async (reason: string): Promise<number> =>
    (await test.dataSource.query(`SELECT count(*)::int AS count FROM event WHERE sentence LIKE '%' || $1 || '%'`, [reason]))[0].count;
  const failing = async (when: string, code: string, work: () => Promise<void>): Promise<void> => {
    await test.dataSource.query(
      `CREATE FUNCTION no_room() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE 'no room on purpose' USING ERRCODE = '${code}'; END $$`,
    );
    await test.dataSource.query(`CREATE TRIGGER no_room ${when} EXECUTE FUNCTION no_room()`);
    try {
      await work();
    } finally {
      await test.dataSource.query('DROP FUNCTION no_room() CASCADE');
    }
  };

  it('says that the disk is full and that nothing was saved, and goes on reading', async () => {
    const reason = randomUUID();
    await failing('BEFORE INSERT ON event FOR EACH STATEMENT', '53100', async () => {
      const reply = await post(test.address, system.cookie, quarantine, { item: 'P-001', reason });
      expect(((await reply.json()) as { errors: object[] }).errors[0]).toMatchObject({
        message: 'The disk of the database is full. Reading goes on; whoever runs the house has to make room on it. Nothing was saved.',
        extensions: { code: 'NO_ROOM' },
      });
      const read = await system.graphql('{ items(search: "P-001") { totalCount } }');
      expect(read.data.items.totalCount).toBeGreaterThan(0);
    });
    expect(await saved(reason)).toBe(0);
  });

  it('lives on when a connection that is lent out, and asked nothing, is ended by the server', async () => {
    const { master: pool } = test.dataSource.driver as PostgresDriver;
    const client = await (pool as pg.Pool).connect();
    const ended = new Promise<void>((resolve) => void client.on('end', resolve));
    await test.dataSource.query('SELECT pg_terminate_backend($1)', [(client as unknown as { processID: number }).processID]);
    await ended;
    await expect(client.query('SELECT 1')).rejects.toThrow();
    client.release(true);
    expect((await system.graphql('{ items(search: "P-001") { totalCount } }')).data.items.totalCount).toBeGreaterThan(0);
  });

  it('says so too of the end of a transaction, and of too many connections', async () => {
    const reason = randomUUID();
    await test.dataSource.query(
      `CREATE FUNCTION no_room() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE 'no room on purpose' USING ERRCODE = '53300'; END $$`,
    );
    await test.dataSource.query(
      `CREATE CONSTRAINT TRIGGER no_room AFTER INSERT ON event DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION no_room()`,
    );
    const reply = await write('P-001', reason);
    await test.dataSource.query('DROP FUNCTION no_room() CASCADE');
    expect(reply.errors?.[0]).toMatchObject({ message: expect.stringMatching(/no connection left.*Nothing was saved\.$/) });
    expect(await saved(reason)).toBe(0);
  });

  it('answers in a sentence while the database is down, to those who read and those who write, and works again by itself', async () => {
    const reason = randomUUID();
    between.turn('shut');
    for (const [query, variables] of [
      ['{ items(search: "P-001") { totalCount } }', {}],
      [quarantine, { item: 'P-002', reason }],
    ] as const) {
      const reply = await post(test.address, system.cookie, query, variables);
      expect(reply.status).toBe(503);
      const [error] = ((await reply.json()) as { errors: { message: string }[] }).errors;
      expect(error).toMatchObject({
        message: 'The database does not answer just now. Nothing was saved. It is started again by itself; try again in a few seconds.',
        extensions: { code: 'DATABASE_AWAY' },
      });
    }
    const route = await system.fetch('/api/changes');
    expect([route.status, await route.json()]).toEqual([503, { message: expect.stringContaining('does not answer just now'), faults: [] }]);
    between.turn('open');
    expect((await write('P-002', reason)).errors).toBe(undefined);
    expect(await saved(reason)).toBe(1);
  });

  it('looks the id of a write up where the answer to its commit was lost: saved, once', async () => {
    const reason = randomUUID();
    between.loseNextCommit();
    const before = between.lost();
    const reply = await write('P-003', reason, { 'idempotency-key': `"${randomUUID()}"` });
    expect([between.lost() - before, reply.errors, await saved(reason)]).toEqual([1, undefined, 1]);
  });

  it('never says that nothing was saved where that is not known', async () => {
    const reason = randomUUID();
    between.loseNextCommit();
    const reply = await write('P-004', reason);
    expect(reply.errors?.[0]).toMatchObject({
      message: expect.stringContaining('not known yet'),
      extensions: { code: 'OUTCOME_UNKNOWN' },
    });
    expect(await saved(reason)).toBe(1);
  });

  it('every box that leaves a cart, or comes on it, has that on its record', async () => {
    const [{ cart, boxes }] = await test.dataSource.query(
      `SELECT stack_cart AS cart, array_agg(id ORDER BY stack_slot) AS boxes FROM item WHERE stack_cart IS NOT NULL GROUP BY 1 HAVING count(*) > 1 ORDER BY 1 LIMIT 1`,
    );
    const set = 'mutation($cart: ID!, $serials: [String!]!) { setStack(cart: $cart, serials: $serials) { item } }';
    const last = async (id: string) =>
      (await test.dataSource.query('SELECT sentence, place FROM event WHERE item_id = $1 ORDER BY id DESC LIMIT 1', [id]))[0];
    const warehouse = await test.as('warehouse');
    expect((await warehouse.graphql(set, { cart, serials: [] })).errors).toBe(undefined);
    for (const box of boxes) expect(await last(box)).toEqual({ sentence: `Taken off ${cart}: stands on the floor.`, place: 'floor' });
    expect((await warehouse.graphql(set, { cart, serials: boxes })).errors).toBe(undefined);
    for (const [index, box] of boxes.entries())
      expect(await last(box)).toEqual({ sentence: `Stands on ${cart}, slot ${index + 1}.`, place: `${cart} ${index + 1}` });
  });
});
