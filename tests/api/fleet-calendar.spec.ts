import { addDays } from '#kernel';
import { fleetCalendar } from '#pack-plan';
import { DataSource } from 'typeorm';
import { FleetQuery } from '../../apps/api/src/features/plan/bookings/fleet.query.js';
import { KitReader } from '../../apps/api/src/features/register/kit.reader.js';
import { TourReader } from '../../apps/api/src/features/tour/tour.reader.js';
import { type TestApp, startTestApp } from '../support/test-app.js';

/** The calendar that the database counts must be the one that is worked out box by box and day by day. */
describe('the fleet calendar', () => {
  let test: TestApp;
  beforeAll(async () => {
    test = await startTestApp();
    await test.dataSource.query(`UPDATE item SET rest = rest || '{"hire": {"from": "2027-03-05", "to": "2027-03-20"}}' WHERE id = 'P-001'`);
    await test.dataSource.query(`UPDATE item SET rest = rest || '{"intervals": ["P1Y"], "declaredOn": "2026-03-09"}' WHERE id = 'P-002'`);
    await test.dataSource.query(`UPDATE item SET rest = rest || '{"intervals": ["P1Y"]}' WHERE id = 'P-003'`);
    await test.dataSource.query(`UPDATE item SET depot = 'Northgate' WHERE id IN ('P-004', 'P-005')`);
    await test.dataSource.query(`UPDATE item SET state = 'retired' WHERE id = 'P-006'`);
    await test.dataSource.query(
      `INSERT INTO examination (item_id, data, recorded_by, recorded_at) SELECT id, '{"on": "2026-03-15", "outcome": "pass", "satisfies": ["P1Y"]}', 'x', now() FROM item WHERE id = 'P-003'`,
    );
    for (const [item, period, hold] of [
      ['P-001', '[2027-03-18,2027-03-25]', null],
      ['P-004', '[2027-03-01,2027-03-02]', null],
      ['P-006', '[2027-03-01,2027-03-02]', null],
      ['P-007', '[2027-03-10,2027-03-11]', `now() + interval '1 day'`],
      ['P-008', '[2027-03-10,2027-03-11]', `now() - interval '1 day'`],
    ])
      await test.dataSource.query(
        `INSERT INTO booking (id, item_id, holder_kind, holder_id, tour_name, period, hold_until) VALUES (gen_random_uuid(), $1, ${hold ? "'hold'" : "'named'"}, 'Another' || $1, 'Another', $2, ${hold ?? 'NULL'})`,
        [item, period],
      );
  });
  afterAll(() => test.close());

  const worked = async (depot: string | null, from: string, days: number) => {
    const { manager } = test.app.get(DataSource);
    const bookings = await manager.query(
      `SELECT item_id AS item, count, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", tour_name AS tour,
         CASE WHEN holder_kind = 'tour' THEN holder_id END AS "tourId"
       FROM booking WHERE hold_until IS NULL OR hold_until > now()`,
    );
    return fleetCalendar(
      {
        kit: await test.app.get(KitReader).load(manager),
        tours: (await test.app.get(TourReader).tours(manager)).map((each) => each.data),
        bookings: bookings.map(({ count, tourId, ...each }: any) => ({
          ...each,
          ...(tourId === null ? {} : { tourId }),
          ...(count === null ? {} : { count }),
        })),
        ...(depot === null ? {} : { depot }),
      },
      from,
      addDays(from, days - 1),
    );
  };

  it.each([
    [null, '2027-02-26', 40],
    ['Ferry Lane', '2027-03-01', 30],
    ['Northgate', '2027-03-01', 30],
    [null, '2027-02-20', 3],
    [null, '2028-01-01', 60],
  ])('at depot %s from %s for %s days', async (depot, from, days) => {
    const counted = await test.app.get(FleetQuery).calendar(from, days, depot);
    const wanted = await worked(depot, from, days);
    expect(counted).toEqual(wanted);
    expect(counted.flatMap((each) => each.days).length).toBeGreaterThan(days);
  });
});
