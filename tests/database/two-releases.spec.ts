import { readFileSync } from 'node:fs';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const make = 'mutation($tour: ID!, $show: ID!) { makePackPlan(tourId: $tour, showId: $show) { ... on PlanMade { plan { id plan } } } }';
const release =
  'mutation($id: ID!) { releasePackPlan(planId: $id, despite: "a race, nothing flies") { __typename ... on PlanView { revision } ... on BookingRefusal { sentence clashes { item from to tour } } } }';

describe('two people who release at the same moment', () => {
  let test: TestApp;
  let system: Agent;
  beforeAll(async () => {
    test = await startTestApp();
    system = await test.as('system');
    // A second tour on the same kit and the same days.
    const demo = JSON.parse(readFileSync('tests/examples/demo-tour.json', 'utf8'));
    const saved = await system.graphql('mutation($tour: TourJson!) { saveTour(tour: $tour) { id } }', {
      tour: { ...demo.tour, id: 'second-tour', name: 'Second tour', freight: [], trucks: [], spares: [] },
    });
    expect(saved.errors).toBeUndefined();
  });
  afterAll(() => test.close());

  it('one wins, the other is told the box, the dates and the tour, and nothing is promised twice', async () => {
    for (let round = 0; round < 3; round++) {
      await test.dataSource.query(`DELETE FROM booking WHERE tour_name IN ('Harbour Lights', 'Second tour')`);
      const plans = await Promise.all(
        ['harbour-lights', 'second-tour'].map(
          async (tour) => (await system.graphql(make, { tour, show: 'quayside' })).data.makePackPlan.plan.id,
        ),
      );
      const answers = (await Promise.all(plans.map((id) => system.graphql(release, { id })))).map((reply) => reply.data?.releasePackPlan);
      expect(answers.map((each) => each?.__typename).sort()).toEqual(['BookingRefusal', 'PlanView']);
      const refusal = answers.find((each) => each.__typename === 'BookingRefusal');
      expect(refusal.clashes.length).toBeGreaterThan(0);
      expect(refusal.clashes[0]).toMatchObject({ item: expect.any(String), from: '2027-03-01', to: '2027-03-17' });
      expect(refusal.sentence).toMatch(/is promised to (Harbour Lights|Second tour) from 2027-03-01 to 2027-03-17/);
      const twice = await test.dataSource.query(
        `SELECT a.item_id FROM booking a JOIN booking b ON a.item_id = b.item_id AND a.id < b.id AND a.period && b.period WHERE a.count IS NULL AND b.count IS NULL`,
      );
      expect(twice).toEqual([]);
    }
  });

  it('the database itself refuses a second promise of one serial', async () => {
    await test.dataSource.query(`DELETE FROM booking WHERE item_id = 'P-001'`);
    const insert = (tour: string, period: string) =>
      test.dataSource.query(
        `INSERT INTO booking (id, item_id, holder_kind, holder_id, tour_name, period) VALUES (gen_random_uuid(), 'P-001', 'named', $1::text, $1::text, $2)`,
        [tour, period],
      );
    await insert('One', '[2028-01-01,2028-01-10]');
    await expect(insert('Two', '[2028-01-10,2028-01-12]')).rejects.toThrow('booking_no_overlap');
    await insert('Two', '[2028-01-11,2028-01-12]');
  });

  it('events and examinations are append only', async () => {
    await expect(test.dataSource.query(`UPDATE event SET sentence = 'x'`)).rejects.toThrow('append only');
    await expect(test.dataSource.query(`DELETE FROM examination`)).rejects.toThrow('append only');
  });
});
