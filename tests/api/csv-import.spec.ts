import { randomUUID } from 'node:crypto';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const state = `query($id: ID!) { csvImport(id: $id) { state code step askedBy rowsTotal rowsChecked rowsWritten rowsDated
  outcome { added changed unchanged faulty waiting firstAdded faults { column wanted count first { row value } } } } }`;

/** Files with many rows come in beside the requests. */
describe('a CSV file that comes in beside the requests', () => {
  let test: TestApp;
  let warehouse: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    warehouse = await test.as('warehouse');
  });
  afterAll(() => test.close());

  const boxes = (prefix: string, count: number, model = 'Plover') =>
    ['serial,model,depot', ...Array.from({ length: count }, (_, index) => `NEW-${prefix}-${index},${model},Ferry Lane`)].join('\r\n');
  const sendAs = (agent: Agent, body: string, query = 'dryRun=false', headers: Record<string, string> = {}, of = 'items/box') =>
    agent.fetch(`/api/imports/${of}?${query}`, {
      method: 'POST',
      headers: { 'content-type': 'text/csv', 'x-cartwright': '1', ...headers },
      body,
    });
  const idOf = async (reply: Response) => ((await reply.json()) as { id: string }).id;
  const look = async (id: string) => (await warehouse.graphql(state, { id })).data.csvImport;
  const ended = async (id: string) => {
    for (;;) {
      const one = await look(id);
      if (one.state !== 'going') return one;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  };
  const onFile = async (prefix: string) =>
    (await test.dataSource.query('SELECT count(*)::int AS count FROM item WHERE id LIKE $1', [`NEW-${prefix}-%`]))[0].count;

  it('is taken at once, and all of it is on file at its end, with its days of use', async () => {
    const reply = await sendAs(warehouse, boxes('A', 6_000));
    expect(reply.status).toBe(202);
    const one = await ended(await idOf(reply));
    expect(one).toMatchObject({ state: 'done', rowsTotal: 6000, rowsChecked: 6000, rowsWritten: 6000, rowsDated: 6000 });
    expect(one.outcome).toMatchObject({ added: 6000, changed: 0, faulty: 0 });
    expect(one.outcome.firstAdded).toHaveLength(30);
    expect(await onFile('A')).toBe(6000);
    const unknown = await test.dataSource.query(`SELECT count(*)::int AS count FROM item WHERE NOT due_known AND id LIKE 'NEW-A-%'`);
    expect(unknown).toEqual([{ count: 0 }]);
  });

  it('says what would be without writing', async () => {
    const one = await ended(await idOf(await sendAs(warehouse, boxes('B', 3), 'dryRun=true')));
    expect(one).toMatchObject({ state: 'done', rowsWritten: 0, outcome: { added: 3 } });
    expect(await onFile('B')).toBe(0);
  });

  it('tells all faults at once by what is wanted, with their number and the first rows, and writes nothing', async () => {
    const text = `${boxes('C', 2_500, 'No such model')}\r\nNEW-C-1,Plover,Ferry Lane\r\nNEW-C-good,Plover,Ferry Lane`;
    const twice = await ended(await idOf(await sendAs(warehouse, text)));
    expect(twice).toMatchObject({
      state: 'refused',
      outcome: {
        faulty: 2501,
        faults: [
          { column: 'model', count: 2500 },
          { column: 'serial', wanted: 'each serial once', count: 1 },
        ],
      },
    });
    const one = await ended(await idOf(await sendAs(warehouse, `${boxes('C', 2_500, 'No such model')}\r\nNEW-C-good,Plover,Ferry Lane`)));
    expect(one).toMatchObject({ state: 'refused', outcome: { faulty: 2500, added: 2501 } });
    expect(one.outcome.faults).toHaveLength(1);
    expect(one.outcome.faults[0]).toMatchObject({ column: 'model', count: 2500 });
    expect(one.outcome.faults[0].first[0]).toEqual({ row: 2, value: 'No such model' });
    expect(await onFile('C')).toBe(0);
  });

  it('is cancelled, and nothing of it is on file', async () => {
    const id = await idOf(await sendAs(warehouse, boxes('D', 30_000)));
    const { data } = await warehouse.graphql('mutation($id: ID!) { cancelCsvImport(id: $id) { state } }', { id });
    expect(data.cancelCsvImport.state).toBe('cancelled');
    // The next one waits for the thread of the one before it.
    expect(await ended(await idOf(await sendAs(warehouse, boxes('E', 2))))).toMatchObject({ state: 'done' });
    expect(await look(id)).toMatchObject({ state: 'cancelled' });
    expect(await onFile('D')).toBe(0);
  });

  it('comes in once, however often it is sent under one request id', async () => {
    const headers = { 'idempotency-key': `"${randomUUID()}"` };
    const [first, second] = [
      await idOf(await sendAs(warehouse, boxes('F', 5), 'dryRun=false', headers)),
      await idOf(await sendAs(warehouse, boxes('F', 5), 'dryRun=false', headers)),
    ];
    expect(second).toBe(first);
    expect(await ended(first)).toMatchObject({ state: 'done', outcome: { added: 5 } });
  });

  it('whose process died is told to have failed, and can never be saved afterwards', async () => {
    const [{ id: person }] = await test.dataSource.query(`SELECT id FROM account WHERE role = 'warehouse'`);
    const id = randomUUID();
    await test.dataSource.query(
      `INSERT INTO csv_import (id, "of", dry_run, asked_by_id, asked_at, step, rows_total, rows_checked, rows_written, rows_dated, alive_until)
       VALUES ($1, 'items/box', false, $2, now(), 'writing', 10, 10, 5, 0, now() - interval '1 second')`,
      [id, person],
    );
    expect(await look(id)).toMatchObject({ state: 'failed', code: 'house-stopped' });
    await expect(test.dataSource.query(`INSERT INTO csv_import_end (import_id, state) VALUES ($1, 'done')`, [id])).rejects.toThrow(
      'csv_import_end_pkey',
    );
  });

  it('models come in the same way', async () => {
    const one = await ended(await idOf(await sendAs(warehouse, 'model,mass kg\nNew pin 7,0.1\n', 'dryRun=false', {}, 'models/pins')));
    expect(one).toMatchObject({ state: 'done', outcome: { added: 1 } });
    expect(await test.dataSource.query(`SELECT count(*)::int AS count FROM model WHERE model = 'New pin 7'`)).toEqual([{ count: 1 }]);
  });

  it('leaves what others wrote about a box meanwhile: a box out of service stays so', async () => {
    const safety = await test.as('safety');
    await safety.graphql('mutation { quarantine(itemId: "P-006", reason: "dent") { summary { state } } }');
    const row = (await (await warehouse.fetch('/api/csv/items/box')).text())
      .split('\r\n')
      .filter((line, index) => index === 0 || line.startsWith('P-006,'));
    const one = await ended(await idOf(await sendAs(warehouse, row.join('\r\n').replace(',quarantined,', ',in repair,'))));
    expect(one).toMatchObject({ state: 'refused', outcome: { faults: [{ column: 'state', count: 1 }] } });
  });

  it('a route that answers when it is done takes two thousand rows', async () => {
    const reply = await warehouse.fetch('/api/csv/items/box', {
      method: 'POST',
      headers: { 'content-type': 'text/csv', 'x-cartwright': '1' },
      body: boxes('G', 2_001),
    });
    expect(reply.status).toBe(422);
    expect(await reply.json()).toMatchObject({ faults: [{ wanted: 'at most 2,000 rows here; larger files go to /api/imports' }] });
    expect(await onFile('G')).toBe(0);
  });
});
