import { readFileSync } from 'node:fs';
import { type Agent, type TestApp, post, postListed, startTestApp } from '../support/test-app.js';

describe('the register', () => {
  let test: TestApp;
  let system: Agent;
  let warehouse: Agent;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [system, warehouse, safety] = await Promise.all([test.as('system'), test.as('warehouse'), test.as('safety')]);
  });
  afterAll(() => test.close());

  const sendTourFile = (agent: Agent, body: string) =>
    agent.fetch('/api/tours/file', { method: 'POST', headers: { 'content-type': 'application/json', 'x-cartwright': '1' }, body });
  const upload = (agent: Agent, kind: string, body: string | Buffer, dryRun = false) =>
    agent.fetch(`/api/csv/items/${kind}?dryRun=${dryRun}`, {
      method: 'POST',
      headers: { 'content-type': 'text/csv', 'x-cartwright': '1' },
      body: body as never,
    });

  it('asks for a sign-in, and refuses a wrong password in words', async () => {
    const reply = await (await post(test.address, '', '{ items { totalCount } }')).json();
    expect(reply).toMatchObject({ errors: [{ extensions: { code: 'NOT_SIGNED_IN' } }] });
    const wrong = await (await postListed(test.address, 'SignIn', { email: 'system@cartwright.example', password: 'no' })).json();
    expect(wrong).toMatchObject({ data: { signIn: { __typename: 'SignInRefusal', sentence: expect.stringContaining('No account') } } });
    expect((await fetch(`${test.address}/api/csv/items/box`)).status).toBe(401);
  });

  it('searches, filters and pages by key without leaving one out', async () => {
    const query =
      'query($after: String) { items(kind: "box", first: 20, after: $after) { totalCount pageInfo { hasNextPage endCursor } edges { node { id place } } } }';
    const seen: string[] = [];
    for (let after: string | null = null, more = true; more; ) {
      const items: { totalCount: number; pageInfo: { hasNextPage: boolean; endCursor: string }; edges: { node: { id: string } }[] } = (
        await warehouse.graphql(query, { after })
      ).data.items;
      seen.push(...items.edges.map((edge) => edge.node.id));
      expect(items.totalCount).toBe(69);
      more = items.pageInfo.hasNextPage;
      after = items.pageInfo.endCursor;
    }
    expect(new Set(seen).size).toBe(69);
    const found = (await warehouse.graphql('{ items(search: "rear link bent") { edges { node { id state place } } } }')).data.items.edges;
    expect(found).toEqual([{ node: { id: 'P-047', state: 'quarantined', place: 'K07, slot 2' } }]);
  });

  it('records an examination by the safety officer only, and the item is in date again', async () => {
    const examine =
      'mutation($id: ID!, $e: AnyJson!) { recordExamination(itemId: $id, examination: $e) { summary { dueOn dueState } history(first: 1) { edges { node { who sentence } } } } }';
    const examination = { on: '2027-02-25', outcome: 'pass', examiner: 'R. Okafor', report: 'NI-900' };
    expect((await system.graphql(examine, { id: 'H-08', e: examination })).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    const done = (await safety.graphql(examine, { id: 'H-08', e: examination })).data.recordExamination;
    expect(done.summary).toEqual({ dueOn: '2028-02-25', dueState: 'in date' });
    expect(done.history.edges[0].node).toEqual({
      who: 'Ines Aldous',
      sentence: 'Examined on 2027-02-25 by R. Okafor: passed, report NI-900.',
    });
  });

  it.each([
    ['a day that is not', { on: '2027-02-30', outcome: 'pass' }, 'on'],
    ['a day to come', { on: '2027-03-01', outcome: 'pass' }, 'on'],
    ['an outcome that is none', { on: '2027-02-01', outcome: 'fine' }, 'outcome'],
  ])('refuses an examination with %s and saves nothing', async (_what, examination, field) => {
    const before = await test.dataSource.query('SELECT count(*) FROM examination');
    const reply = await safety.graphql('mutation($e: AnyJson!) { recordExamination(itemId: "H-01", examination: $e) { summary { id } } }', {
      e: { examiner: 'R. Okafor', report: 'NI-901', ...examination },
    });
    expect(reply.errors?.[0]?.extensions).toMatchObject({
      code: 'BAD_INPUT',
      faults: [{ field, value: expect.anything(), wanted: expect.any(String) }],
    });
    expect(await test.dataSource.query('SELECT count(*) FROM examination')).toEqual(before);
  });

  it('lets anybody quarantine, and only the safety officer release', async () => {
    const reply = await warehouse.graphql(
      'mutation { quarantine(itemId: "SH-1", reason: "pin thread worn") { summary { state } history { edges { node { sentence } } } } }',
    );
    expect(reply.data.quarantine).toMatchObject({
      summary: { state: 'quarantined' },
      history: { edges: [{ node: { sentence: 'Quarantined: pin thread worn.' } }, expect.anything()] },
    });
    expect(
      (await warehouse.graphql('mutation { releaseFromQuarantine(itemId: "SH-1", reason: "ok") { summary { state } } }')).errors?.[0]
        ?.extensions.code,
    ).toBe('NOT_ALLOWED');
    expect(
      (await safety.graphql('mutation { releaseFromQuarantine(itemId: "SH-1", reason: "re-threaded, examined") { summary { state } } }'))
        .data.releaseFromQuarantine.summary.state,
    ).toBe('in service');
  });

  it('gives each kind as CSV that comes in again unchanged', async () => {
    for (const kind of ['box', 'cart', 'grid', 'hoist', 'shackle', 'sling', 'pin', 'loom', 'case', 'truck']) {
      const text = await (await warehouse.fetch(`/api/csv/items/${kind}`)).text();
      const answer = await (await upload(warehouse, kind, text, true)).json();
      expect(answer).toMatchObject({ added: [], changed: [] });
      const example = await (await warehouse.fetch(`/api/csv/items/${kind}/example`)).text();
      expect(example.split('\r\n')[0]).toBe(text.split('\r\n')[0]);
    }
  });

  it('shows first what would change, then brings all rows in', async () => {
    const text =
      'serial,model,depot,state,reason\r\nP-901,Plover,Ferry Lane,in service,\r\nP-001,Plover,"Ferry Lane",in repair,"fan, left"\r\n';
    expect(await (await upload(warehouse, 'box', text, true)).json()).toMatchObject({
      added: ['P-901'],
      changed: [{ id: 'P-001', what: expect.stringContaining('state in service to in repair') }],
    });
    expect((await warehouse.graphql('{ items(search: "P-901") { totalCount } }')).data.items.totalCount).toBe(0);
    expect((await upload(warehouse, 'box', text)).status).toBe(200);
    expect((await warehouse.graphql('{ item(id: "P-001") { item } }')).data.item.item).toMatchObject({
      state: 'in repair',
      reason: 'fan, left',
    });
    expect((await warehouse.graphql('{ items(search: "P-901") { totalCount } }')).data.items.totalCount).toBe(1);
  });

  it.each([
    ['an unknown model', 'serial,model,depot\nX-1,Swan,Ferry Lane\n', { row: 2, column: 'model', value: 'Swan' }],
    ['an unknown heading', 'serial,model,depot,colour\nX-1,Plover,Ferry Lane,red\n', { row: 1, column: 'colour' }],
    [
      'a serial twice',
      'serial,model,depot\nX-1,Plover,Ferry Lane\nX-1,Plover,Ferry Lane\n',
      { row: 3, column: 'serial', value: 'X-1, as in row 2' },
    ],
    ['a missing field', 'serial,model,depot\nX-1,Plover\n', { row: 2 }],
    ['a quote that never ends', 'serial,model,depot\n"X-1,Plover,Ferry Lane\n', { wanted: expect.stringContaining('RFC 4180') }],
    ['UTF-16', Buffer.from('\ufeffserial,model,depot\n', 'utf16le'), { value: 'UTF-16' }],
    ['an empty byte', Buffer.from('serial,model,depot\nP-001,A\0B,\n'), { row: 2, value: 'an empty byte (NUL) at byte 27' }],
    ['an empty file', '', { wanted: expect.stringContaining('CSV') }],
    ['a serial of another kind', 'serial,model,depot\nK01,Plover,Ferry Lane\n', { row: 2, column: 'serial', value: 'K01' }],
    ['a reversed hire', 'serial,model,depot,hired from,hired to\nX-1,Plover,Ferry Lane,2027-03-02,2027-03-01\n', { row: 2 }],
  ])('refuses %s with row, column, value and what would be right, and saves nothing', async (_what, body, fault) => {
    const before = await test.dataSource.query('SELECT count(*) FROM item');
    const reply = await upload(warehouse, 'box', body);
    expect(reply.status).toBe(422);
    expect(((await reply.json()) as { faults: object[] }).faults[0]).toMatchObject(fault);
    expect(await test.dataSource.query('SELECT count(*) FROM item')).toEqual(before);
  });

  it('refuses one box on two carts', async () => {
    const reply = await upload(
      warehouse,
      'cart',
      'serial,model,depot,"boxes, top first"\nK01,Cart of four,Ferry Lane,P-008 P-003 P-002 P-001\nK02,Cart of four,Ferry Lane,P-008 P-007\n',
    );
    expect(reply.status).toBe(422);
    expect(((await reply.json()) as { faults: object[] }).faults[0]).toMatchObject({
      column: 'boxes, top first',
      value: 'P-008',
      wanted: expect.stringContaining('one place'),
    });
  });

  it('answers a file of 50 MB, a body that is not JSON and a foreign write in words, never with 5xx', async () => {
    const large = await upload(warehouse, 'box', Buffer.alloc(50_000_000, 'a'));
    expect(large.status).toBe(413);
    expect(await large.json()).toMatchObject({ faults: [{ wanted: 'a file of at most 20 MB' }] });
    const broken = await sendTourFile(system, '{ nope');
    expect(broken.status).toBe(400);
    const foreign = await system.fetch('/api/tours/file', { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' });
    expect(foreign.status).toBe(403);
    const empty = await sendTourFile(system, '{"format":"cart\0wright"}');
    expect(await empty.json()).toMatchObject({ faults: [{ field: '(whole file)', value: 'an empty byte (NUL)' }] });
    // Who may not send it has nothing of it read.
    expect((await sendTourFile(warehouse, '{ nope')).status).toBe(403);
    const operation = await post(test.address, system.cookie, `{ items(search: "${'a'.repeat(1_500_000)}") { totalCount } }`);
    expect([operation.status, await operation.json()]).toMatchObject([
      413,
      { message: 'Nothing was read: wanted an operation of at most 1 MB.', faults: [{ field: '(whole operation)' }] },
    ]);
    expect(await (await system.fetch('/api/nowhere')).json()).toEqual({ message: 'There is nothing for GET at /api/nowhere.' });
    expect(await (await system.fetch('/api/requests/x')).json()).toMatchObject({ faults: [{ field: 'id', value: 'x' }] });
    expect(
      (await fetch(`${test.address}/graphql`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{ nope' })).status,
    ).toBe(400);
  });

  it('gives back an imported tour file equal, and refuses it a second time by name', async () => {
    const written = JSON.parse(readFileSync('tests/examples/demo-tour.json', 'utf8'));
    const fresh = await startTestApp({ demo: true });
    try {
      const agent = await fresh.as('system');
      const file = await (await agent.fetch('/api/tours/harbour-lights/file')).json();
      // The test day makes the demo start on its own written dates.
      expect(file).toEqual(written);
      const again = await agent.fetch('/api/tours/file', {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-cartwright': '1' },
        body: JSON.stringify(written),
      });
      expect(again.status).toBe(422);
      expect(await again.json()).toMatchObject({ faults: [{ field: 'tour.id', value: 'harbour-lights' }] });
    } finally {
      await fresh.close();
    }
  });
});
