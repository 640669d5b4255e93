import { connectionsOfOne } from '../../apps/api/src/platform/database/server-check.js';
import { SizeDays } from '../../apps/api/src/platform/database/size-days.js';
import { type TestApp, startTestApp } from '../support/test-app.js';

const state = `{ houseState { version upSince databaseBytes tables { name bytes rows changedInMonth grownBytes } sizes { day bytes } grownSince connections connectionsLimit connectionsOfOne
  lastBackup jobsWaiting jobsFailed requests turnedAway faults diskFreeBytes processes } }`;

describe('how the house is', () => {
  let test: TestApp;
  beforeAll(async () => {
    test = await startTestApp();
  });
  afterAll(() => test.close());

  const look = async () => (await (await test.as('system')).graphql(state)).data.houseState;

  it('is told to the system tech alone, with the figures of /metrics', async () => {
    const { errors } = await (await test.as('safety')).graphql(state);
    expect(errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    const told = await look();
    const text = await (await fetch(`${test.address}/metrics`)).text();
    const figure = (name: string) => Number(new RegExp(`^${name} (\\S+)$`, 'm').exec(text)?.[1]);
    expect(told.databaseBytes).toBe(figure('cartwright_database_bytes'));
    expect(told.connectionsLimit).toBe(figure('cartwright_server_connections_limit'));
    expect(told.processes).toBe(figure('cartwright_processes_alive'));
    expect(told.connectionsOfOne).toBe(connectionsOfOne());
    expect(told.tables[0].bytes).toBeGreaterThanOrEqual(told.tables[1].bytes);
    expect(told.diskFreeBytes).toBeGreaterThan(0);
    const changed = (name: string) => told.tables.find((each: any) => each.name === name).changedInMonth;
    expect({ event: changed('event'), item: changed('item') }).toEqual({ event: null, item: expect.any(Number) });
  });

  it('counts what was turned away and what was changed, and knows the last backup', async () => {
    const before = await look();
    expect(before.lastBackup).toBeNull();
    await fetch(`${test.address}/api/csv/items/box`, {
      method: 'POST',
      headers: { 'content-type': 'text/csv', 'x-cartwright': '1' },
      body: 'x',
    });
    await (await test.as('safety')).graphql('mutation { quarantine(itemId: "P-005", reason: "dent") { summary { state } } }');
    await test.dataSource.query(`INSERT INTO event (at, who, what, sentence) VALUES ('2027-02-26T08:00:00Z', '', 'backed up', '')`);
    const after = await look();
    expect(after.turnedAway).toBeGreaterThan(before.turnedAway);
    expect(new Date(after.lastBackup).toISOString()).toBe('2027-02-26T08:00:00.000Z');
  });

  it('keeps its size once a day, and tells what has grown since', async () => {
    const sizes = test.app.get(SizeDays);
    await sizes.keep();
    expect((await look()).grownSince).toBeNull();
    await test.dataSource.query(
      `INSERT INTO size_day (day, bytes, tables) SELECT current_date - days, 1000000 + days, jsonb_build_object('item', 1000) FROM unnest(ARRAY[20, 45, 4000]) AS days`,
    );
    await sizes.keep();
    const { rows } = { rows: await test.dataSource.query(`SELECT (current_date - day)::int AS ago FROM size_day ORDER BY 1`) };
    expect(rows.map((each: { ago: number }) => each.ago)).toEqual([0, 20, 45]);
    const told = await look();
    const item = told.tables.find((each: any) => each.name === 'item');
    expect(item.grownBytes).toBe(item.bytes - 1000);
    expect(told.sizes.map((each: any) => each.bytes).slice(1)).toEqual([1_000_020, 1_000_045]);
    expect(told.sizes[0].bytes).toBeGreaterThan(1_000_045);
  });
});
