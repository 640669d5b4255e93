import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const read = 'query { tour(id: "harbour-lights") { version tour } }';
const save = 'mutation($tour: TourJson!, $v: Int) { saveTour(tour: $tour, expectedVersion: $v) { version tour } }';

describe('tours, shows and hangs', () => {
  let test: TestApp;
  let system: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    system = await test.as('system');
  });
  afterAll(() => test.close());

  const bent = async (bend: (tour: any) => void) => {
    const { version, tour } = (await system.graphql(read)).data.tour;
    bend(tour);
    return system.graphql(save, { tour, v: version });
  };

  it('saves a changed splay, counts the version up and refuses whoever saves an older one', async () => {
    const { version, tour } = (await system.graphql(read)).data.tour;
    tour.shows[0].hangs[0].boxes[5].splayDeg = 1;
    expect((await system.graphql(save, { tour, v: version })).data.saveTour.version).toBe(version + 1);
    const late = await system.graphql(save, { tour, v: version });
    expect(late.errors?.[0]?.extensions.faults?.[0]).toMatchObject({
      field: 'expectedVersion',
      wanted: expect.stringContaining('somebody else'),
    });
  });

  it.each([
    ['an unknown model', (tour: any) => (tour.shows[0].hangs[0].boxes[2].model = 'Swan'), 'tour.shows[0].hangs[0].boxes[2].model'],
    [
      'a splay that the model has not',
      (tour: any) => (tour.shows[0].hangs[0].boxes[2].splayDeg = 7.3),
      'tour.shows[0].hangs[0].boxes[2].splayDeg',
    ],
    ['a hole that the grid has not', (tour: any) => (tour.shows[0].hangs[0].picks[0].hole = 'Z'), 'tour.shows[0].hangs[0].picks[0].hole'],
    ['both picks in one hole', (tour: any) => (tour.shows[0].hangs[0].picks[1].hole = 'C'), 'tour.shows[0].hangs[0].picks[1].hole'],
    [
      'one serial in two places',
      (tour: any) => {
        tour.shows[0].hangs[0].boxes[0].serial = 'P-001';
        tour.shows[0].hangs[0].boxes[1].serial = 'P-001';
      },
      'tour.shows[0].hangs[0] (serial)',
    ],
    ['a reversed date range', (tour: any) => (tour.shows[0].to = '2027-03-03'), 'tour.shows[0].from'],
    ['a day that does not exist', (tour: any) => (tour.shows[0].from = '2027-02-30'), 'shows[0].from'],
    ['a show outside its tour', (tour: any) => (tour.shows[2].to = '2027-04-30'), 'tour.shows[2].to'],
    ['two hangs of one name', (tour: any) => (tour.shows[0].hangs[2].id = 'Main left'), 'tour.shows[0].hangs[2].id'],
    ['a mirror of nothing', (tour: any) => (tour.shows[0].hangs[1].mirrorOf = 'Out left'), 'tour.shows[0].hangs[1].mirrorOf'],
    ['a text for a number', (tour: any) => (tour.shows[0].hangs[0].tiltDownDeg = 'NaN'), 'shows[0].hangs[0].tiltDownDeg'],
    ['an absurd trim height', (tour: any) => (tour.shows[0].hangs[0].trimHeightMm = 1e9), 'shows[0].hangs[0].trimHeightMm'],
    ['an unknown field', (tour: any) => (tour.shows[0].colour = 'red'), 'shows[0].colour'],
    ['a truck that is none', (tour: any) => tour.trucks.push('K01'), 'tour.trucks[2]'],
  ])('refuses %s, naming field, value and what would be right', async (_what, bend, field) => {
    const reply = await bent(bend);
    expect(reply.errors?.[0]?.extensions.code).toBe('BAD_INPUT');
    expect(reply.errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field, wanted: expect.any(String) });
  });

  it('keeps a mirror a mirror: a change of the original shows in the plan of both', async () => {
    expect((await bent((tour) => (tour.shows[0].hangs[0].tiltDownDeg = 2.5))).errors).toBeUndefined();
    const { plan } = (
      await system.graphql('mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside") { ... on PlanMade { plan { plan } } } }')
    ).data.makePackPlan.plan;
    const [left, right] = plan.picks.hangs;
    expect([left.tiltDownDeg, right.tiltDownDeg]).toEqual([2.5, 2.5]);
    expect(right.mirrorOf).toBe('Main left');
    expect(right.stage.yMm).toBe(-left.stage.yMm);
  });

  it('masks a fault and never shows a stack', async () => {
    // A fault of the house: the table that the query reads is away for a moment.
    await test.dataSource.query('ALTER TABLE tour RENAME TO tour_away');
    try {
      const reply = await system.graphql(read);
      expect(reply.errors?.[0]?.message).toMatch(/^Something went wrong here, .* Incident [0-9a-f-]{36}\.$/);
      expect(JSON.stringify(reply)).not.toMatch(/node_modules|at [A-Z]\w+\.|relation|SELECT|tour_away/);
    } finally {
      await test.dataSource.query('ALTER TABLE tour_away RENAME TO tour');
    }
    expect((await system.graphql(read)).errors).toBeUndefined();
  });
});
