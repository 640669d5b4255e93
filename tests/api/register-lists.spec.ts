import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

describe('the register as a list', () => {
  let test: TestApp;
  let warehouse: Agent;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [warehouse, safety] = await Promise.all([test.as('warehouse'), test.as('safety')]);
  });
  afterAll(() => test.close());

  interface Line {
    readonly id: string;
    readonly kind: string;
    readonly model: string;
    readonly state: string;
    readonly depot: string;
    readonly dueOn: string | null;
  }
  interface Page {
    readonly pageInfo: { readonly hasNextPage: boolean; readonly endCursor: string };
    readonly edges: readonly { readonly node: Line }[];
  }
  const query = `query($sort: String, $descending: Boolean, $after: String, $kind: String, $search: String) {
    items(sort: $sort, descending: $descending, kind: $kind, search: $search, first: 7, after: $after) {
      pageInfo { hasNextPage endCursor } edges { node { id kind model state depot dueOn } } } }`;
  const all = async (variables: object): Promise<Line[]> => {
    const found: Line[] = [];
    for (let after: string | null = null, more = true; more; ) {
      const page: Page = (await warehouse.graphql(query, { ...variables, after })).data.items;
      found.push(...page.edges.map((edge) => edge.node));
      ({ hasNextPage: more, endCursor: after } = page.pageInfo);
    }
    return found;
  };
  const keys: Record<string, (line: Line) => string> = {
    serial: (line) => line.id,
    state: (line) => line.state,
    'last day': (line) => line.dueOn ?? '9999',
    kind: (line) => line.kind,
    model: (line) => line.model,
    depot: (line) => line.depot,
  };

  it.each(Object.keys(keys))('goes by %s up and down, page by page, each item once, equal ones by serial', async (sort) => {
    const up = await all({ sort, search: 'Ferry' });
    const down = await all({ sort, descending: true, search: 'Ferry' });
    expect(new Set(up.map((line) => line.id)).size).toBe(up.length);
    expect(up.length).toBeGreaterThan(50);
    expect(down.map((line) => line.id)).toEqual(up.map((line) => line.id).reverse());
    const words = up.map(keys[sort]!);
    const rises = words.every((word, at) => at === 0 || word.localeCompare(words[at - 1]!, 'en') >= 0);
    expect(rises).toBe(true);
  });

  it('finds serials by two letters in any order of the list', async () => {
    const up = await all({ search: 'h-', sort: 'last day' });
    expect(up.map((line) => line.id).sort()).toEqual((await all({ search: 'h-' })).map((line) => line.id).sort());
    expect(up.every((line) => line.id.startsWith('H-'))).toBe(true);
  });

  it('refuses an order that is none, and a cursor of another order', async () => {
    expect((await warehouse.graphql(query, { sort: 'colour' })).errors?.[0]?.extensions).toMatchObject({ faults: [{ field: 'sort' }] });
    const { endCursor } = (await warehouse.graphql(query, { sort: 'model' })).data.items.pageInfo;
    expect((await warehouse.graphql(query, { sort: 'kind', after: endCursor })).errors?.[0]?.extensions).toMatchObject({
      faults: [{ field: 'after' }],
    });
  });

  it('gives what is shown as CSV in the same order, and those picked out alone', async () => {
    const serials = (text: string) =>
      text
        .trim()
        .split('\r\n')
        .slice(1)
        .map((line) => line.split(',')[0]); // prettier-ignore
    const shown = await (await warehouse.fetch('/api/csv/register?kind=hoist&sort=-last%20day')).text();
    expect(serials(shown)).toEqual((await all({ kind: 'hoist', sort: 'last day', descending: true })).map((line) => line.id));
    const picked = await (await warehouse.fetch('/api/csv/register?serial=P-002&serial=K01')).text();
    expect(serials(picked)).toEqual(['K01', 'P-002']);
    expect((await warehouse.fetch('/api/csv/register?sort=colour')).status).toBe(422);
  });

  const change = `mutation($ids: [ID!]!, $cells: [CellInput!]!) { changeItems(ids: $ids, cells: $cells) {
    ... on ManyChanged { changed unchanged waits { id sentence } } ... on ManyRefusal { refused { id column wanted } } } }`;
  const itemOf = async (id: string) => (await warehouse.graphql('query($id: ID!) { item(id: $id) { item } }', { id })).data.item.item;

  it('changes many at once, each with its line of history', async () => {
    const cells = [
      { column: 'state', value: 'in repair' },
      { column: 'reason', value: 'to the workshop' },
    ];
    const ids = ['P-001', 'P-002', 'K01'];
    const done = (await warehouse.graphql(change, { ids, cells })).data.changeItems;
    expect(done).toMatchObject({ changed: 3, unchanged: 0, waits: [] });
    for (const id of ids) {
      expect(await itemOf(id)).toMatchObject({ state: 'in repair', reason: 'to the workshop' });
      const { history } = (
        await warehouse.graphql('query($id: ID!) { item(id: $id) { history(first: 1) { edges { node { sentence } } } } }', { id })
      ).data.item;
      expect(history.edges[0].node.sentence).toContain('in service to in repair');
    }
  });

  it('saves none where one is refused, and says which', async () => {
    const before = await itemOf('P-003');
    const { refused } = (await warehouse.graphql(change, { ids: ['P-003', 'P-047'], cells: [{ column: 'state', value: 'in service' }] }))
      .data.changeItems;
    expect(refused).toEqual([{ id: 'P-047', column: 'state', wanted: expect.stringContaining('only the safety officer') }]);
    expect(await itemOf('P-003')).toEqual(before);
    const missing = (await warehouse.graphql(change, { ids: ['P-003', 'P-999'], cells: [{ column: 'depot', value: 'North yard' }] })).data;
    expect(missing.changeItems.refused).toEqual([{ id: 'P-999', column: 'serial', wanted: 'an item on file' }]);
    expect(await itemOf('P-003')).toEqual(before);
  });

  it('lets wait what two pairs of eyes must see, of each item', async () => {
    const cells = [{ column: 'declared on', value: '2027-02-01' }];
    const done = (await warehouse.graphql(change, { ids: ['H-01', 'H-02'], cells })).data.changeItems;
    expect(done.waits.map((each: { id: string }) => each.id)).toEqual(['H-01', 'H-02']);
    expect(await itemOf('H-01')).not.toHaveProperty('declaredOn', '2027-02-01');
  });

  it('refuses columns that each thing has for itself', async () => {
    for (const column of ['serial', 'model', 'count'])
      expect((await warehouse.graphql(change, { ids: ['P-003'], cells: [{ column, value: '5' }] })).errors?.[0]?.extensions).toMatchObject({
        faults: [{ field: 'column', value: column }],
      });
  });

  const correct = `mutation($id: ID!, $serial: String!) { correctSerial(itemId: $id, serial: $serial, reason: "read wrong") { summary { id state } } }`;
  const upload = (text: string) =>
    warehouse.fetch('/api/csv/items/box?dryRun=false', {
      method: 'POST',
      headers: { 'content-type': 'text/csv', 'x-cartwright': '1' },
      body: text,
    });

  it('puts a mistyped serial right where nothing is on record of it', async () => {
    await upload('serial,model,depot\nP-9O1,Plover,Ferry Lane\n');
    expect((await warehouse.graphql(correct, { id: 'P-9O1', serial: 'P-901' })).data.correctSerial.summary).toEqual({
      id: 'P-901',
      state: 'in service',
    });
    const waiting = await test.dataSource.query(`SELECT subject FROM proposal WHERE subject LIKE 'P-9_1' AND state = 'proposed'`);
    expect(waiting).toEqual([{ subject: 'P-901' }]);
    expect((await warehouse.graphql('{ item(id: "P-9O1") { id } }')).errors?.[0]?.extensions.code).toBe('NOT_FOUND');
    expect((await warehouse.graphql(correct, { id: 'P-901', serial: 'P-002' })).errors?.[0]?.extensions).toMatchObject({
      faults: [{ field: 'serial', wanted: expect.stringContaining('not on file yet') }],
    });
  });

  it('leaves to the safety officer what was examined: the records go along, and the wrong serial is retired', async () => {
    const records = async (id: string) =>
      (await safety.graphql('query($id: ID!) { item(id: $id) { records(first: 50) { edges { node { examination } } } } }', { id })).data
        .item.records.edges;
    const id = 'SL-1';
    const [{ named }] = await test.dataSource.query(
      `SELECT EXISTS (SELECT FROM tour WHERE strpos(data::text, '"SL-1"') > 0) OR EXISTS (SELECT FROM booking WHERE item_id = 'SL-1') AS named`,
    );
    expect(named).toBe(false);
    const before = await records(id);
    expect(before.length).toBeGreaterThan(0);
    expect((await warehouse.graphql(correct, { id, serial: 'SL-1A' })).errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    expect((await safety.graphql(correct, { id, serial: 'SL-1A' })).data.correctSerial.summary).toEqual({
      id: 'SL-1A',
      state: 'in service',
    });
    expect(await records('SL-1A')).toEqual(before);
    expect(await records(id)).toEqual(before);
    expect(await itemOf(id)).toMatchObject({ state: 'retired', reason: 'The serial was typed wrong: it is SL-1A' });
  });

  it('takes the whole life along: what was corrected, by what and why, and after which record something happened', async () => {
    interface Lived {
      readonly id: string;
      readonly examination: { readonly outcome: string };
      readonly supersedes: string | null;
      readonly supersededBy: string | null;
      readonly reason: string | null;
      readonly recordedBy: string;
      readonly recordedAt: string;
    }
    const life = async (id: string) => {
      const { item } = (
        await safety.graphql(
          `query($id: ID!) { item(id: $id) { summary { dueOn dueState }
            records(first: 50) { edges { node { id examination supersedes supersededBy reason recordedBy recordedAt } } } } }`,
          { id },
        )
      ).data;
      const records: Lived[] = item.records.edges.map((edge: { node: Lived }) => edge.node).reverse();
      const place = (record: string | null) => (record === null ? null : records.findIndex((each) => each.id === record));
      const incidents: { day: string; what: string; after: string }[] = await test.dataSource.query(
        `SELECT on_day::text AS day, what, after_examination::text AS after FROM incident WHERE item_id = $1 ORDER BY id`,
        [id],
      );
      return {
        newest: records.at(-1)!,
        summary: item.summary,
        records: records.map((each) => ({
          ...each,
          id: place(each.id),
          supersedes: place(each.supersedes),
          supersededBy: place(each.supersededBy),
        })),
        incidents: incidents.map((each) => ({ ...each, after: place(each.after) })),
      };
    };
    const record = `mutation($of: AnyJson!, $old: ID, $reason: String) {
      recordExamination(itemId: "TP-1", examination: $of, supersedes: $old, reason: $reason) { summary { id } } }`;
    const { newest } = await life('TP-1');
    for (const report of ['TP-right', 'TP-right-2']) {
      const { id: old } = (await life('TP-1')).newest;
      const told = await safety.graphql(record, { of: { ...newest.examination, report }, old, reason: `the report is ${report}` });
      expect(told.errors).toBeUndefined();
    }
    await safety.graphql('mutation { recordIncident(itemId: "TP-1", on: "2027-02-10", what: "fell off the dock") { summary { id } } }');
    const before = await life('TP-1');
    expect(before.records.map(({ supersedes, supersededBy }) => [supersedes, supersededBy])).toEqual([
      [null, 1],
      [0, 2],
      [1, null],
    ]);
    expect(before.incidents).toEqual([{ day: '2027-02-10', what: 'fell off the dock', after: 2 }]);
    expect((await safety.graphql(correct, { id: 'TP-1', serial: 'TP-1A' })).errors).toBeUndefined();
    const { newest: copied, ...after } = await life('TP-1A');
    expect({ newest: before.newest, ...after }).toEqual(before);
    expect(copied.id).not.toBe(before.newest.id);
    const { records, incidents } = await life('TP-1');
    expect({ records, incidents }).toEqual({ records: before.records, incidents: before.incidents });
  });

  it('touches no serial that a tour names', async () => {
    const [{ id }] = await test.dataSource.query(
      `SELECT id FROM item WHERE EXISTS (SELECT FROM tour WHERE strpos(data::text, to_jsonb(item.id)::text) > 0) ORDER BY id LIMIT 1`,
    );
    expect((await safety.graphql(correct, { id, serial: 'X-1' })).errors?.[0]?.extensions).toMatchObject({
      faults: [{ field: 'itemId', wanted: expect.stringContaining('take it off first') }],
    });
  });
});
