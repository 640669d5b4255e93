import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const sheetFields = `notCountedBefore { showId } lines { key item fitted spares learned { priorMean losses uses posteriorMean sparesByPriorAlone } counted { id losses } }
  records { id key shows sent returned damaged losses uses corrects reason countedBy countedAt inForce }`;
const sheet = `query($show: ID!) { countSheet(tourId: "harbour-lights", showId: $show) { ${sheetFields} } }`;
const record = `mutation($shows: [ID!]!, $lines: [CountInput!]!) { recordCounts(tourId: "harbour-lights", showIds: $shows, lines: $lines) {
  __typename ... on CountSheet { ${sheetFields} } ... on CountRefusal { sentence already { id key } } } }`;
const correct = `mutation($id: ID!, $sent: Int!, $returned: Int!, $damaged: Int!, $reason: String!) {
  correctCount(id: $id, sent: $sent, returned: $returned, damaged: $damaged, reason: $reason) { ${sheetFields} } }`;
const takeBack = `mutation($id: ID!, $reason: String!) { takeCountBack(id: $id, reason: $reason) { ${sheetFields} } }`;
const make =
  'mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { id plan changed { sentence } } } } }';

describe('counts at return', () => {
  let test: TestApp;
  let system: Agent;
  let warehouse: Agent;
  let safety: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    [system, warehouse, safety] = await Promise.all([test.as('system'), test.as('warehouse'), test.as('safety')]);
  });
  afterAll(() => test.close());

  const read = async (show = 'quayside') => (await warehouse.graphql(sheet, { show })).data.countSheet;
  const lineOf = (from: any, key: string) => from.lines.find((each: any) => each.key === key);
  const exported = async () => JSON.parse(await (await system.fetch('/api/tours/harbour-lights/file')).text());
  const pin = { key: 'Link pin 12', sent: 132, returned: 132, damaged: 0 };
  const faultOf = async (agent: Agent, query: string, variables: object) =>
    (await agent.graphql(query, variables)).errors?.[0]?.extensions.faults?.[0];

  it('gives the lines of a show as they are designed, before anything is planned or counted', async () => {
    const before = await read('fenland');
    expect(before).toMatchObject({ notCountedBefore: [{ showId: 'quayside' }, { showId: 'old-mill' }], records: [] });
    expect(lineOf(before, 'Link pin 12')).toMatchObject({ item: 'front link pin', fitted: 120, counted: null });
    expect(lineOf(before, 'Link pin 12').learned).toMatchObject({ priorMean: 0.00025, losses: 3, uses: 9600 });
    expect(lineOf(before, 'Bow shackle 3.25').learned).toBeNull();
  });

  it('takes a count, learns from it, and makes the plan stale; the next plan uses it', async () => {
    const first = (await system.graphql(make)).data.makePackPlan.plan;
    expect(first.changed).toEqual([]);
    const { data, errors } = await warehouse.graphql(record, {
      shows: ['quayside'],
      lines: [
        { ...pin, returned: 112, damaged: 4 },
        { key: 'Base pin 12', sent: 63, returned: 63, damaged: 0 },
      ],
    });
    expect(errors).toBeUndefined();
    expect(data.recordCounts.__typename).toBe('CountSheet');
    // 3 in 9,600 came with the file; 20 + 4 in the 120 uses of the show.
    expect(lineOf(data.recordCounts, 'Link pin 12').learned).toMatchObject({ losses: 27, uses: 9720, posteriorMean: 28 / 13_720 });
    expect(data.recordCounts.records[0]).toMatchObject({ countedBy: 'Wren Castellan', inForce: true, corrects: null });
    const stale = (await system.graphql('query($id: ID!) { plan(id: $id) { changed { sentence } } }', { id: first.id })).data.plan;
    expect(stale.changed).toEqual([{ sentence: 'the spares wanted and the losses counted have changed' }]);
    const next = (await system.graphql(make)).data.makePackPlan.plan;
    expect(next.changed).toEqual([]);
    const [was, is] = [first, next].map((each) => each.plan.hardware.lines.find((line: any) => line.key === 'Link pin 12'));
    expect(was.learned.counted).toMatchObject({ losses: 3, uses: 9600 });
    expect(is.learned.counted).toMatchObject({ losses: 27, uses: 9720 });
    expect(is.levelReached).toBeLessThan(was.levelReached);
  });

  it('refuses to count a line twice for a show, and records none of the others', async () => {
    const before = await read();
    const { data } = await warehouse.graphql(record, {
      shows: ['old-mill', 'quayside'],
      lines: [{ key: 'Lock pin 8', sent: 66, returned: 60, damaged: 0 }, pin],
    });
    expect(data.recordCounts).toMatchObject({ __typename: 'CountRefusal', already: [{ key: 'Link pin 12' }] });
    expect(data.recordCounts.sentence).toMatch(/Link pin 12 has been counted for quayside by Wren Castellan on 2027-02-26/);
    expect(await read()).toEqual(before);
  });

  it('corrects by a record of its own and takes back by another; the wrong ones stay readable and count no more', async () => {
    const id = lineOf(await read(), 'Link pin 12').counted.id;
    const fixed = (
      await warehouse.graphql(correct, { id, sent: 132, returned: 131, damaged: 0, reason: 'Nineteen lay in the cable trunk' })
    ).data.correctCount;
    expect(lineOf(fixed, 'Link pin 12').learned).toMatchObject({ losses: 4, uses: 9720 });
    expect(fixed.records.find((each: any) => each.id === id)).toMatchObject({ inForce: false, returned: 112 });
    expect(await faultOf(warehouse, correct, { id, sent: 1, returned: 1, damaged: 0, reason: 'again' })).toMatchObject({
      field: 'id',
      wanted: expect.stringContaining('a count in force'),
    });
    const newer = lineOf(fixed, 'Link pin 12').counted.id;
    const without = (await warehouse.graphql(takeBack, { id: newer, reason: 'Counted on the wrong show' })).data.takeCountBack;
    expect(lineOf(without, 'Link pin 12')).toMatchObject({ counted: null, learned: { losses: 3, uses: 9600 } });
    expect(without.records).toHaveLength(4);
    // What was taken back may be counted anew.
    const anew = (await warehouse.graphql(record, { shows: ['quayside', 'old-mill'], lines: [{ ...pin, returned: 130 }] })).data
      .recordCounts;
    // 120 pieces in the first show and 112 in the second, where each side has 22 boxes.
    expect(lineOf(anew, 'Link pin 12').learned).toMatchObject({ losses: 5, uses: 9600 + 120 + 112 });
  });

  it('is written into the exported file as one sum, and counted once where that file comes back', async () => {
    const file = await exported();
    const setting = file.tour.spares.find((each: any) => each.item === 'Link pin 12');
    expect(setting.counted).toEqual({ losses: 5, uses: 9832, through: '2027-02-26T09:00:00.000Z' });
    file.tour.id = 'again';
    file.tour.name = 'Harbour Lights again';
    const reply = await system.fetch('/api/tours/file', {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-cartwright': '1' },
      body: JSON.stringify(file),
    });
    expect(reply.status).toBeLessThan(300);
    const { data } = await system.graphql(
      `{ countSheet(tourId: "again", showId: "quayside") { lines { key learned { losses uses } } records { id } } }`,
    );
    expect(lineOf(data.countSheet, 'Link pin 12').learned).toEqual({ losses: 5, uses: 9832 });
    expect(data.countSheet.records).toEqual([]);
  });

  it.each([
    ['more back than sent', [{ ...pin, returned: 133 }], 'lines[0].returned'],
    ['more unfit than back', [{ ...pin, returned: 2, damaged: 3 }], 'lines[0].damaged'],
    ['nothing sent', [{ ...pin, sent: 0, returned: 0 }], 'lines[0].sent'],
    ['a negative number', [{ ...pin, damaged: -1 }], 'lines[0].damaged'],
    ['a line that the show has not', [{ ...pin, key: 'Link pin 99' }], 'lines[0].key'],
    [
      'a line twice',
      [
        { key: 'Lock pin 8', sent: 1, returned: 1, damaged: 0 },
        { key: 'Lock pin 8', sent: 1, returned: 1, damaged: 0 },
      ],
      'lines[1].key',
    ],
    ['no line', [], 'lines'],
  ])('refuses %s, names the field and records nothing', async (_what, lines, field) => {
    const before = await read('fenland');
    expect(await faultOf(warehouse, record, { shows: ['fenland'], lines })).toMatchObject({ field });
    expect(await read('fenland')).toEqual(before);
  });

  it('refuses a show that is not of the tour, none, one twice, a count that is not on file, and a correction without a reason', async () => {
    expect(await faultOf(warehouse, record, { shows: ['nowhere'], lines: [pin] })).toMatchObject({ field: 'showIds[0]', value: 'nowhere' });
    expect(await faultOf(warehouse, record, { shows: [], lines: [pin] })).toMatchObject({ field: 'showIds' });
    expect(await faultOf(warehouse, record, { shows: ['fenland', 'fenland'], lines: [pin] })).toMatchObject({ field: 'showIds[1]' });
    for (const id of ['999999', 'x', '']) {
      const { errors } = await warehouse.graphql(takeBack, { id, reason: 'why' });
      expect(errors?.[0]?.extensions.code).toBe('NOT_FOUND');
    }
    const id = lineOf(await read(), 'Link pin 12').counted.id;
    expect(await faultOf(warehouse, takeBack, { id, reason: '  ' })).toMatchObject({ field: 'reason' });
    expect(await faultOf(warehouse, correct, { id, sent: 5, returned: 6, damaged: 0, reason: 'typo' })).toMatchObject({
      field: 'returned',
    });
  });

  it('is for the warehouse and the system tech; everybody may read; nobody may change a record', async () => {
    const { errors } = await safety.graphql(record, { shows: ['fenland'], lines: [pin] });
    expect(errors?.[0]?.extensions.code).toBe('NOT_ALLOWED');
    expect((await safety.graphql(sheet, { show: 'quayside' })).data.countSheet.records.length).toBeGreaterThan(0);
    await expect(test.dataSource.query('UPDATE hardware_count SET returned = 0')).rejects.toThrow(/append only/);
    await expect(test.dataSource.query('DELETE FROM hardware_count')).rejects.toThrow(/append only/);
  });

  it('lets one of two who count the same at the same moment through', async () => {
    const lines = [{ key: 'Lock pin 8', sent: 66, returned: 65, damaged: 0 }];
    const answers = await Promise.all([warehouse, system, warehouse].map((agent) => agent.graphql(record, { shows: ['fenland'], lines })));
    const names = answers.map(({ data }) => data.recordCounts.__typename).sort();
    expect(names).toEqual(['CountRefusal', 'CountRefusal', 'CountSheet']);
  });
});
