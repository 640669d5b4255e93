import { AsyncLocalStorage } from 'node:async_hooks';
import { DataSource } from 'typeorm';
import { canonicalJson } from '#kernel';
import { changedInputs, wholePlan } from '#pack-plan';
import { PlanFreshness, noteFresh } from '../../apps/api/src/features/plan/stored/plan-freshness.reader.js';
import { TourFileReader } from '../../apps/api/src/planning/snapshot/tour-file.reader.js';
import { type TestApp, startTestApp } from '../support/test-app.js';

const tour = 'harbour-lights';

/** What is kept and followed must at any time be what a comparison with everything on file gives. */
describe('staleness that is followed instead of worked out', () => {
  let test: TestApp;
  let plans: string[];
  let statements: string[];
  /** Only what a look asks is counted: the jobs of the house go on meanwhile. */
  const asking = new AsyncLocalStorage<true>();
  /** What happens, once, before a look goes on with a statement like this. */
  let meanwhile: { readonly before: RegExp; readonly happens: () => Promise<unknown> } | undefined;
  const look = () => asking.run(true, () => test.app.get(PlanFreshness).changed(plans));
  beforeAll(async () => {
    test = await startTestApp();
    const system = await test.as('system');
    plans = [];
    for (const show of ['quayside', 'fenland']) {
      const { data } = await system.graphql(
        `mutation { makePackPlan(tourId: "${tour}", showId: "${show}") { ... on PlanMade { plan { id } } } }`,
      );
      plans.push(data.makePackPlan.plan.id);
    }
    statements = [];
    const { manager } = test.app.get(DataSource);
    const query = manager.query.bind(manager);
    manager.query = (async (text: string, values: unknown[]) => {
      if (asking.getStore()) statements.push(text);
      const now = meanwhile;
      if (now?.before.test(text)) {
        meanwhile = undefined;
        await now.happens();
      }
      return query(text, values);
    }) as never;
  });
  afterAll(() => test.close());

  async function expectAgreement(): Promise<readonly (readonly object[])[]> {
    statements.length = 0;
    const found = await look();
    const followed = [...statements];
    const file = await test.app.get(TourFileReader).load(test.app.get(DataSource).manager, tour);
    const all = [];
    for (const id of plans) {
      const [row] = await test.dataSource.query('SELECT plan FROM pack_plan WHERE id = $1', [id]);
      const wanted = changedInputs(wholePlan(row.plan), file);
      expect(found.get(id)!.map(canonicalJson).sort()).toEqual(wanted.map(canonicalJson).sort());
      all.push(wanted);
    }
    statements.length = 0;
    statements.push(...followed);
    return all;
  }

  const readsTheRegister = () => statements.some((text) => /FROM item\b/.test(text) && !/ANY\(/.test(text));

  it('begins fresh, and a look at an unchanged house is one statement', async () => {
    expect(await expectAgreement()).toEqual([[], []]);
    await look();
    statements.length = 0;
    await look();
    expect(statements).toHaveLength(1);
  });

  it.each([
    ['a serial quarantined', `UPDATE item SET state = 'quarantined' WHERE id = 'P-001'`, 2],
    ['and released again', `UPDATE item SET state = 'in service' WHERE id = 'P-001'`, 0],
    [
      'an examination',
      `INSERT INTO examination (item_id, data, recorded_by, recorded_at) VALUES ('H-01', '{"on": "2027-02-01", "outcome": "pass"}', 'x', now())`,
      2,
    ],
    ['an item that only counts its uses', `UPDATE item SET rest = rest || '{"uses": 77}' WHERE id = 'H-02'`, 2],
    ['a model', `UPDATE model SET data = data || '{"massKg": 99}' WHERE kind = 'boxes'`, 2],
    ['a rule', `UPDATE rule SET data = data || '{"source": "another"}' WHERE kind = 'load'`, 2],
    ['the venue of one show', `UPDATE tour SET data = jsonb_set(data, '{shows,0,venue}', '"Elsewhere"') WHERE id = '${tour}'`, 2],
    [
      'a promise to another tour',
      `INSERT INTO booking (id, item_id, holder_kind, holder_id, tour_name, period) VALUES (gen_random_uuid(), 'P-002', 'named', 'Another', 'Another', '[2027-03-01,2027-03-05]')`,
      2,
    ],
    [
      'a new item',
      `INSERT INTO item (id, kind, model, state, depot, rest) VALUES ('P-999', 'box', 'Plover', 'in service', 'Ferry Lane', '{}')`,
      2,
    ],
    [
      'a box taken off its cart',
      `UPDATE item SET stack_cart = NULL, stack_slot = NULL WHERE stack_slot = 1 AND stack_cart = (SELECT min(stack_cart) FROM item)`,
      2,
    ],
  ])('follows %s', async (_what, statement, stale) => {
    await expectAgreement();
    await test.dataSource.query(statement);
    const changed = await expectAgreement();
    expect(changed.filter((each) => each.length > 0)).toHaveLength(stale);
    expect(readsTheRegister()).toBe(/^INSERT INTO item/.test(statement));
  });

  it('follows the end of a hold, which nobody writes', async () => {
    await test.dataSource.query(
      `INSERT INTO booking (id, item_id, holder_kind, holder_id, tour_name, period, hold_until) VALUES (gen_random_uuid(), 'P-003', 'hold', 'h-1', 'A hold', '[2027-03-01,2027-03-05]', now() + interval '1 hour')`,
    );
    await expectAgreement();
    const [kept] = await test.dataSource.query(`SELECT holds_until > now() AS waits FROM plan_freshness`);
    expect(kept.waits).toBe(true);
    await test.dataSource.query(`ALTER TABLE booking DISABLE TRIGGER USER`);
    await test.dataSource.query(`UPDATE booking SET hold_until = now() - interval '1 second' WHERE hold_until IS NOT NULL`);
    await test.dataSource.query(`ALTER TABLE booking ENABLE TRIGGER USER`);
    await test.dataSource.query(`UPDATE plan_freshness SET holds_until = now() - interval '1 second'`);
    await expectAgreement();
  });

  it('sees what a transaction wrote that was open while others looked', async () => {
    const runner = test.dataSource.createQueryRunner();
    await runner.startTransaction();
    await runner.query(`UPDATE item SET depot = 'Northgate' WHERE id = 'P-004'`);
    await test.dataSource.query(`UPDATE item SET depot = 'Northgate' WHERE id = 'P-005'`);
    const before = await expectAgreement();
    await runner.commitTransaction();
    await runner.release();
    const after = await expectAgreement();
    expect(after[0]!.length).toBe(before[0]!.length + 1);
  });

  it.each([
    ['read what was kept', /^SELECT pg_current_snapshot/, 'P-010'],
    ['read what changed', /^INSERT INTO plan_freshness/, 'P-011'],
  ])('loses nothing where another looks while one has just %s', async (_what, before, item) => {
    const quarantine = (id: string) => test.dataSource.query(`UPDATE item SET state = 'quarantined' WHERE id = $1`, [id]);
    await test.dataSource.query(`UPDATE item SET depot = depot || '!' WHERE id = 'P-012'`);
    meanwhile = { before, happens: () => quarantine(item).then(look) };
    await look();
    expect(meanwhile).toBeUndefined();
    const told = JSON.stringify(await expectAgreement());
    expect(told).toContain(item);
  });

  it('sees what was written, looked at and forgotten by others while a plan was being saved', async () => {
    const [saved, other] = plans as [string, string];
    await look();
    await test.dataSource.query('DELETE FROM plan_freshness WHERE plan_id = $1', [saved]);
    const runner = test.dataSource.createQueryRunner();
    await runner.startTransaction('REPEATABLE READ');
    await runner.query('SELECT FROM item');
    await test.dataSource.query(`UPDATE item SET state = 'quarantined' WHERE id = 'P-013'`);
    await test.app.get(PlanFreshness).changed([other]);
    await noteFresh(runner.manager, saved);
    await runner.commitTransaction();
    await runner.release();
    expect(JSON.stringify(await expectAgreement())).toContain('P-013');
  });

  it('is worked out anew where the snapshot is of another cluster, and after a very large write', async () => {
    await test.dataSource.query(`UPDATE plan_freshness SET cluster = 1, changes = '[]'`);
    await expectAgreement();
    expect(readsTheRegister()).toBe(true);
    await test.dataSource.query(
      `INSERT INTO item (id, kind, model, state, depot, rest) SELECT 'S-' || n, 'pin', 'none', 'in service', 'x', '{}' FROM generate_series(1, 1200) n`,
    );
    await expectAgreement();
    const lines = await test.dataSource.query(`SELECT count(*)::int AS n FROM input_change`);
    expect(lines[0].n).toBeLessThan(100);
  });
});
