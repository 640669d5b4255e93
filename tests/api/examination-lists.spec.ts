import { writeCsv } from '#kernel';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const look = `query($id: ID!) { csvImport(id: $id) { state rowsTotal rowsChecked rowsWritten rowsDated
  outcome { rows added failed unchanged waiting faulty firstAdded firstFailed firstWaiting faults { column wanted count first { row value } } } } }`;
const heading = [
  'serial',
  'pieces',
  'examined on',
  'kind of examination',
  'outcome',
  'examiner',
  'report',
  'next no later than',
  'remarks',
];
const state = 'query($id: ID!) { item(id: $id) { summary { dueState dueOn } } }';

describe('an examiner’s list', () => {
  let test: TestApp;
  let warehouse: Agent;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [warehouse, safety] = await Promise.all([test.as('warehouse'), test.as('safety')]);
  });
  afterAll(() => test.close());

  const send = async (who: Agent, body: string, isDry = false) => {
    const headers = { 'content-type': 'text/csv', 'x-cartwright': '1' };
    const reply = await who.fetch(`/api/imports/examinations?dryRun=${isDry}`, { method: 'POST', headers, body });
    expect(reply.status).toBe(202);
    const { id } = (await reply.json()) as { id: string };
    for (;;) {
      const one = (await who.graphql(look, { id })).data.csvImport;
      if (one.state !== 'going') return one;
      await new Promise((soon) => setTimeout(soon, 50));
    }
  };
  const dueOf = async (id: string) => (await safety.graphql(state, { id })).data.item.summary;
  const count = async (table: string) => (await test.dataSource.query(`SELECT count(*)::int AS count FROM ${table}`))[0].count;
  const list = writeCsv([
    heading,
    ['H-01', '', '2027-02-20', 'P12M', 'pass', 'B. Ropemaker', 'RM-1', '2028-02-20', 'chain oiled'],
    ['H-02', '', '2027-02-20', '', 'fail', 'B. Ropemaker', 'RM-2', '', '=1+1'],
    ['SH-1', '16', '2027-02-20', '', 'pass', 'B. Ropemaker', 'RM-3', '', ''],
  ]);

  it('is shown before it comes in, and nothing of it is saved', async () => {
    const before = [await count('examination'), await count('proposal')];
    const one = await send(warehouse, list, true);
    expect(one).toMatchObject({
      state: 'done',
      outcome: { added: 3, failed: 1, waiting: 2, unchanged: 0, firstFailed: ['H-02, 2027-02-20, RM-2'] },
    });
    expect([await count('examination'), await count('proposal')]).toEqual(before);
  });

  it('comes in: what failed counts at once, what passed waits; once more it is there already', async () => {
    const was = await dueOf('H-01');
    const one = await send(warehouse, list);
    expect(one).toMatchObject({
      state: 'done',
      rowsTotal: 3,
      rowsChecked: 3,
      rowsWritten: 3,
      rowsDated: 3,
      outcome: { added: 3, waiting: 2 },
    });
    expect(await dueOf('H-02')).toMatchObject({ dueState: 'failed' });
    expect(await dueOf('H-01')).toEqual(was);
    expect((await send(warehouse, list)).outcome).toMatchObject({ added: 0, waiting: 0, unchanged: 3 });
    expect((await send(safety, list)).outcome).toMatchObject({ added: 0, waiting: 0, unchanged: 3 });
  });

  it('is accepted by the safety officer and counts from then on; brought by him it counts at once', async () => {
    const { newest } = (await safety.graphql('{ proposals { newest } }')).data.proposals;
    const answer = 'mutation($through: ID) { answerProposals(through: $through, accept: true, reason: "compared with the reports") }';
    expect((await safety.graphql(answer, { through: newest })).data).toEqual({ answerProposals: 2 });
    expect(await dueOf('H-01')).toMatchObject({ dueOn: '2028-02-20' });
    expect((await send(warehouse, list)).outcome).toMatchObject({ added: 0, unchanged: 3 });
    const own = writeCsv([heading, ['H-03', '', '2027-02-21', '', 'pass', 'B. Ropemaker', 'RM-4', '2027-12-01', '']]);
    expect((await send(safety, own)).outcome).toMatchObject({ added: 1, waiting: 0, failed: 0 });
    expect(await dueOf('H-03')).toMatchObject({ dueOn: '2027-12-01' });
  });

  it('with one row that is wrong nothing comes in, and the row says what would be right', async () => {
    const before = await count('examination');
    const wrong = writeCsv([
      heading,
      ['H-04', '', '2027-02-20', '', 'fail', 'B. Ropemaker', 'RM-5', '', ''],
      ['H-04', '', '2027-03-20', '', 'pass', 'B. Ropemaker', 'RM-6', '', ''],
      ['SH-1', '60', '2027-02-22', '', 'pass', 'B. Ropemaker', 'RM-7', '', ''],
      ['H-01', '', '2027-02-20', '', 'fail', 'B. Ropemaker', 'RM-1', '', ''],
    ]);
    const { state: ended, outcome } = await send(safety, wrong);
    expect(ended).toBe('refused');
    expect(outcome.faults.map((each: any) => [each.column, each.first[0].row, each.first[0].value])).toEqual(
      expect.arrayContaining([
        ['examined on', 3, '2027-03-20'],
        ['pieces', 4, '60'],
        ['report', 5, 'RM-1'],
      ]),
    );
    expect(await count('examination')).toBe(before);
  });

  it('leaves as it comes in: everything that counts, exported and imported, changes nothing', async () => {
    const text = await (await warehouse.fetch('/api/csv/examinations')).text();
    expect(text).toContain("'=1+1");
    const { state: ended, outcome } = await send(warehouse, text);
    expect(ended).toBe('done');
    expect(outcome).toMatchObject({ added: 0, waiting: 0, unchanged: text.trim().split('\r\n').length - 1 });
    const example = await (await warehouse.fetch('/api/csv/examinations/example')).text();
    expect(example.split('\r\n')[0]).toBe(text.split('\r\n')[0]);
  });
});
