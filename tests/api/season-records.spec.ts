import { loadSeason } from '../../apps/api/src/features/visit/season-snapshot.js';
import { workOutDates } from '../../apps/api/src/features/register/item-dates.writer.js';
import { loadItems } from '../../apps/api/src/planning/snapshot/kit-snapshot.js';
import { findDueDate } from '../../libs/inspection-calendar/dates/index.js';
import { addDays, seededRandom } from '../../libs/kernel/index.js';
import { type TestApp, startTestApp, testDay } from '../support/test-app.js';

/** A season reads the examinations alone that can still set a date; whoever reads all of them comes to the same dates. */
describe('the records that a season reads', () => {
  let test: TestApp;
  beforeAll(async () => {
    test = await startTestApp();
  });
  afterAll(() => test.close());

  it('give the dates that all records give, over random histories', async () => {
    const random = seededRandom(11);
    const upTo = (most: number): number => Math.floor(random() * most);
    const { manager } = test.dataSource;
    const items: { id: string }[] = await manager.query(
      `SELECT id FROM item WHERE due_state IS NOT NULL OR kind IN ('hoist', 'shackle', 'sling')`,
    );
    for (const { id } of items)
      for (let number = 0; number < 8; number++) {
        const on = addDays(testDay, -1 - upTo(12) * 40);
        const satisfies = [undefined, undefined, ['P12M'], ['P6M'], ['P6M', 'P12M']][upTo(5)];
        const data = { on, outcome: random() < 0.85 ? 'pass' : 'fail', examiner: 'Rosa Tamm (invented)', report: `R-${number}`, satisfies };
        await manager.query(`INSERT INTO examination (item_id, data, recorded_by, recorded_at) VALUES ($1, $2, 'Ines Aldous', now())`, [
          id,
          JSON.stringify(data),
        ]);
      }
    await manager.query(`UPDATE item SET rest = rest || '{"intervals": ["P6M", "P12M"]}' WHERE id = ANY($1) AND place % 2 = 0`, [
      items.map((each) => each.id),
    ]);
    await workOutDates(manager, testDay);
    const subject = { from: testDay, to: addDays(testDay, 3000), depot: null, withIdle: true, without: [], check: 'examination' as const };
    const { season } = await loadSeason(manager, subject, testDay);
    const whole = new Map((await loadItems(manager)).map((each) => [each.id, each.examinations]));
    const all = season.items.map((each) => ({ ...each, examinations: whole.get(each.id)! }));
    const read = (given: typeof season.items): number => given.reduce((sum, each) => sum + each.examinations.length, 0);
    expect(season.items.length).toBeGreaterThan(10);
    expect(read(season.items)).toBeLessThan(read(all));
    expect(season.items.map((each) => [each.id, findDueDate(each, testDay)])).toEqual(
      all.map((each) => [each.id, findDueDate(each, testDay)]),
    );
  });
});
