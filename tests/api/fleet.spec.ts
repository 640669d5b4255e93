import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const place = `mutation($hold: HoldInput!) { placeHold(hold: $hold) { __typename ... on Hold { name until items } ... on BookingRefusal { sentence clashes { item tour } } } }`;
const back = 'mutation($id: ID!) { giveHoldBack(id: $id) }';

describe('the fleet and its holds', () => {
  let test: TestApp;
  let warehouse: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    warehouse = await test.as('warehouse');
  });
  afterAll(() => test.close());

  const hold = async (name: string, items: string[], from = '2027-06-01', to = '2027-06-04', hours = 48) =>
    (await warehouse.graphql(place, { hold: { name, items, from, to, hours } })).data?.placeHold;

  it('holds serials, tells the second who was first, and gives them back', async () => {
    expect(await hold('First', ['P-001', 'P-002'])).toMatchObject({ __typename: 'Hold', items: ['P-001', 'P-002'] });
    expect(await hold('Second', ['P-002', 'P-003'], '2027-06-04', '2027-06-08')).toEqual({
      __typename: 'BookingRefusal',
      sentence: 'P-002 is promised to First from 2027-06-01 to 2027-06-04. Nothing was held for Second.',
      clashes: [{ item: 'P-002', tour: 'First' }],
    });
    const { openHolds } = (await warehouse.graphql('{ openHolds { id name from to items } }')).data;
    expect(openHolds).toEqual([{ id: expect.any(String), name: 'First', from: '2027-06-01', to: '2027-06-04', items: ['P-001', 'P-002'] }]);
    expect((await warehouse.graphql(back, { id: openHolds[0].id })).data.giveHoldBack).toBe(2);
    expect(await hold('Second', ['P-002', 'P-003'], '2027-06-04', '2027-06-08')).toMatchObject({ __typename: 'Hold' });
  });

  it('ends a hold by itself', async () => {
    expect(await hold('Short', ['P-010'], '2027-07-01', '2027-07-02', 1)).toMatchObject({ __typename: 'Hold' });
    await test.dataSource.query(`UPDATE booking SET hold_until = '2020-01-01' WHERE tour_name = 'Short'`);
    expect(await hold('Long', ['P-010'], '2027-07-02', '2027-07-03')).toMatchObject({ __typename: 'Hold' });
  });

  it.each([
    ['an unknown serial', { items: ['P-999'] }, 'items[0]'],
    ['a batch', { items: ['SH-1'] }, 'items[0]'],
    ['one serial twice', { items: ['P-001', 'P-001'] }, 'items[1]'],
    ['reversed days', { from: '2027-06-05' }, 'to'],
    ['a day that is none', { from: '2027-02-30' }, 'from'],
    ['days that are over', { from: '2026-06-01', to: '2026-06-04' }, 'to'],
    ['the name of a tour', { name: 'Harbour Lights' }, 'name'],
    ['the name of a hold', { name: 'Second' }, 'name'],
    ['no time', { hours: 0 }, 'hours'],
    ['no name', { name: ' ' }, 'name'],
    ['nothing to hold', { items: [] }, 'items'],
  ])('refuses a hold of %s', async (_what, change, field) => {
    const { errors } = await warehouse.graphql(place, {
      hold: { name: 'X', items: ['P-005'], from: '2027-06-01', to: '2027-06-04', hours: 2, ...change },
    });
    expect(errors?.[0]?.extensions).toMatchObject({ code: 'BAD_INPUT', faults: [{ field }] });
  });

  it('refuses to give back what nobody holds', async () => {
    const { errors } = await warehouse.graphql(back, { id: 'Nobody' });
    expect(errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field: 'id', value: 'Nobody' });
  });

  it('counts boxes of another depot as out, and says where they are', async () => {
    const query =
      '{ fleetCalendar(from: "2027-03-20", days: 1, depot: "Northgate") { model days { free out } } remedies(model: "Dunlin", day: "2027-03-20", depot: "Northgate") { kind sentence } depots }';
    const { data } = await warehouse.graphql(query);
    expect(data.depots).toContain('Ferry Lane');
    expect(data.fleetCalendar.map((each: any) => [each.model, each.days[0].free])).toEqual([
      ['Dunlin', 0],
      ['Plover', 0],
    ]);
    expect(data.remedies).toContainEqual({ kind: 'another depot', sentence: 'D-001 is free at Ferry Lane: bring it over.' });
  });

  it('shows every model on every day, and where it runs short', async () => {
    const { data } = await warehouse.graphql(
      '{ fleetCalendar(from: "2027-03-13", days: 3) { model count days { day free promised out short } } }',
    );
    const dunlin = data.fleetCalendar.find((each: { model: string }) => each.model === 'Dunlin');
    expect(dunlin.days.map((each: { day: string }) => each.day)).toEqual(['2027-03-13', '2027-03-14', '2027-03-15']);
    for (const each of dunlin.days) expect(each.free + each.promised + each.out).toBe(dunlin.count);
    // Town Fair holds D-003 on the 14th, and the tour, not yet released, wants them all.
    expect(dunlin.days[1].promised).toBe(dunlin.days[0].promised + 1);
    expect(dunlin.days[1].short).toBe(dunlin.days[0].short + 1);
  });

  it('ranks what would free a box, and finds the first day from which a design can be served', async () => {
    const remedies = (await warehouse.graphql('{ remedies(model: "Dunlin", day: "2027-03-14") { serial kind sentence } }')).data.remedies;
    expect(remedies).toContainEqual({
      serial: 'D-003',
      kind: 'return',
      sentence: expect.stringContaining('promised to Town Fair, one day until 2027-03-14; it is free from 2027-03-15'),
    });
    const kinds = ['examination', 'release from quarantine', 'repair', 'return', 'longer hire'];
    const ranks = remedies.map((each: { kind: string }) => kinds.indexOf(each.kind));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    const first = 'query($from: String!) { firstDayFor(tourId: "harbour-lights", showId: "fenland", from: $from, days: 2) }';
    expect((await warehouse.graphql(first, { from: '2027-03-14' })).data.firstDayFor).toBe('2027-03-15');
    expect((await warehouse.graphql(first, { from: '2027-03-20' })).data.firstDayFor).toBe('2027-03-20');
  });
});
