import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const planned = `mutation($depot: Float = 1, $dock: Float = 3, $fixedUntil: Int = 0, $tour: ID = "harbour-lights") {
  planWholeTour(tourId: $tour, depot: $depot, dock: $dock, fixedUntil: $fixedUntil) { __typename ... on PlanningRefusal { code sentence } } }`;
const read = '{ wholeTour(tourId: "harbour-lights") { plan madeAt madeBy } }';

describe('a tour planned as a whole', () => {
  let test: TestApp;
  let system: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    system = await test.as('system');
  });
  afterAll(() => test.close());

  const onFile = async () => (await system.graphql(read)).data.wholeTour;

  it('is on file with who asked, and is what everybody reads', async () => {
    expect(await onFile()).toBeNull();
    const { data, errors } = await system.graphql(planned);
    expect(errors).toBeUndefined();
    expect(data.planWholeTour).toEqual({ __typename: 'TourPlanned' });
    const { plan, madeBy } = (await (await test.as('safety')).graphql(read)).data.wholeTour;
    expect(plan.stops.map((each: { show: string }) => each.show)).toEqual(['quayside', 'old-mill', 'fenland']);
    expect(plan.cost).toBeLessThanOrEqual(plan.costApart);
    expect(plan.weights).toEqual({ depot: 1, dock: 3 });
    expect(madeBy).not.toBeNull();
  });

  it('keeps the first shows as they were where that is asked for, also once a box has been moved', async () => {
    const before = (await onFile()).plan;
    const [move] = before.stops[0].moves;
    await test.dataSource.query(`UPDATE item SET stack_cart = NULL, stack_slot = NULL WHERE id = $1`, [move.box]);
    expect((await system.graphql(planned, { fixedUntil: 2 })).data.planWholeTour.__typename).toBe('TourPlanned');
    const after = (await onFile()).plan;
    expect(after.fixedUntil).toBe(2);
    expect(after.stops.slice(0, 2).map((each: { moves: object }) => each.moves)).toEqual(
      before.stops.slice(0, 2).map((each: { moves: object }) => each.moves),
    );
  });

  it('says which show cannot stay as it is, and leaves the plan on file', async () => {
    const before = await onFile();
    const box = before.plan.stops[0].loads[0].boxes[0];
    await (await test.as('warehouse')).graphql(`mutation { quarantine(itemId: "${box}", reason: "a horn is cracked") { item } }`);
    const { data } = await system.graphql(planned, { fixedUntil: 1 });
    expect(data.planWholeTour).toMatchObject({ __typename: 'PlanningRefusal', code: 'tour-not-as-kept' });
    expect(data.planWholeTour.sentence).toContain(box);
    expect(await onFile()).toEqual(before);
  });

  it.each([
    [{ dock: 0 }, 'dock'],
    [{ depot: 1000 }, 'depot'],
    [{ fixedUntil: -1 }, 'fixedUntil'],
    [{ fixedUntil: 4 }, 'fixedUntil'],
  ])('refuses %p, naming the field', async (given, field) => {
    const { errors } = await system.graphql(planned, given);
    expect(JSON.stringify(errors)).toContain(`"${field}"`);
  });

  it('is planned by the system tech and the warehouse, of a tour that is on file', async () => {
    expect(JSON.stringify((await (await test.as('safety')).graphql(planned)).errors)).toMatch(/NOT_ALLOWED/);
    expect(JSON.stringify((await system.graphql(planned, { tour: 'nowhere' })).errors)).toContain('NOT_FOUND');
  });
});
