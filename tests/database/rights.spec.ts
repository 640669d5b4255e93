import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { prepareDatabase } from '../../apps/api/src/prepare-database.js';
import { type Agent, type TestApp, startTestApp } from '../support/test-app.js';

const plan = `mutation { makePackPlan(tourId: "harbour-lights", showId: "quayside", waitMs: 60000) { ... on PlanMade { planId } } }`;
const release = `mutation($id: ID!) { releasePackPlan(planId: $id, despite: "Tried in a test") { __typename } }`;

describe('the application in the database', () => {
  let test: TestApp;
  let application: pg.Client;
  let safety: Agent;
  let planId: string;
  beforeAll(async () => {
    test = await startTestApp();
    const { applicationUrl } = await prepareDatabase({ databaseUrl: test.databaseUrl, ownerUrl: null });
    application = new pg.Client({ connectionString: applicationUrl });
    await application.connect();
    const system = await test.as('system');
    safety = await test.as('safety');
    const made = await system.graphql(plan);
    planId = made.data.makePackPlan.planId;
    await safety.graphql(release, { id: planId });
    const [{ state }] = await test.dataSource.query('SELECT state FROM pack_plan WHERE id = $1', [planId]);
    if (state !== 'released') {
      const reply = await system.graphql(release, { id: planId });
      throw new Error(`the plan was not released: ${JSON.stringify(reply)}`);
    }
  });
  afterAll(async () => {
    await application.end();
    await test.close();
  });

  const codeOf = (statement: string, values: unknown[] = []): Promise<string> =>
    application.query(statement, values).then(
      ({ rowCount }) => `done to ${rowCount}`,
      (fault: { code: string }) => fault.code,
    );

  const leaver = randomUUID();
  const idOf = async (role: string): Promise<string> =>
    (await application.query('SELECT id FROM account WHERE role = $1 LIMIT 1', [role])).rows[0].id;

  it('is no superuser, owns nothing and makes nothing', async () => {
    const { rows } = await application.query(
      `SELECT rolsuper, rolcreaterole, rolcreatedb, rolbypassrls, rolreplication, (SELECT count(*)::int FROM pg_class WHERE relowner = pg_roles.oid) AS owned,
         pg_has_role(current_user, $1, 'MEMBER') AS "isOwner" FROM pg_roles WHERE rolname = current_user`,
      [decodeURIComponent(new URL(test.databaseUrl).username)],
    );
    expect(rows).toEqual([
      { rolsuper: false, rolcreaterole: false, rolcreatedb: false, rolbypassrls: false, rolreplication: false, owned: 0, isOwner: false },
    ]);
    for (const statement of [
      'CREATE TABLE public.mine (id int)',
      'ALTER TABLE pack_plan DISABLE TRIGGER ALL',
      'DROP TRIGGER pack_plan_released_kept ON pack_plan',
      `SET session_replication_role = 'replica'`,
      'CREATE OR REPLACE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RETURN NEW; END $$',
      `SET ROLE ${decodeURIComponent(new URL(test.databaseUrl).username)}`,
      `COPY item TO PROGRAM 'cat'`,
      `UPDATE migrations SET name = 'x'`,
    ])
      expect({ statement, code: await codeOf(statement) }).toEqual({ statement, code: '42501' });
  });

  it.each([
    [`released_by = 'Somebody else'`],
    [`released_by_id = '00000000-0000-4000-8000-000000000001'`],
    [`made_by = 'Somebody else'`],
    [`made_by_id = '00000000-0000-4000-8000-000000000001'`],
    [`show_id = 'fenland'`],
    [`id = '00000000-0000-4000-8000-000000000002'`],
    [`made_at = now()`],
    [`released_at = now()`],
    [`released_despite = 'Another reason'`],
    [`revision = 'Z'`],
    [`state = 'draft', revision = NULL`],
    [`plan = plan || '{"findings": []}'`],
    [`state = 'superseded', released_by = 'Somebody else'`],
  ])('cannot change a released revision: %s', async (change) => {
    expect(await codeOf(`UPDATE pack_plan SET ${change} WHERE id = $1`, [planId])).toBe('23001');
  });

  it('cannot remove a released revision, nor write its parts, nor empty its table', async () => {
    expect(await codeOf('DELETE FROM pack_plan WHERE id = $1', [planId])).toBe('23001');
    expect(await codeOf(`UPDATE plan_part SET data = '{}' WHERE plan_id = $1`, [planId])).toBe('42501');
    expect(await codeOf('DELETE FROM plan_part WHERE plan_id = $1', [planId])).toBe('42501');
    expect(await codeOf('TRUNCATE pack_plan CASCADE')).toBe('42501');
  });

  it.each(['event', 'examination', 'incident', 'report_file', 'loading_act', 'load_reading', 'sign_off', 'hardware_count'])(
    'only adds to what is append only: %s; and its owner does not empty it by mistake',
    async (table) => {
      const [{ column }] = await test.dataSource.query(
        `SELECT column_name AS column FROM information_schema.columns WHERE table_name = $1 AND is_identity = 'NO' LIMIT 1`,
        [table],
      );
      expect(await codeOf(`UPDATE ${table} SET ${column} = ${column}`)).toBe('42501');
      expect(await codeOf(`DELETE FROM ${table}`)).toBe('42501');
      expect(await codeOf(`TRUNCATE ${table} CASCADE`)).toBe('42501');
      await expect(test.dataSource.query(`TRUNCATE ${table} CASCADE`)).rejects.toMatchObject({ driverError: { code: '23001' } });
    },
  );

  it('no longer ticks, takes back or confirms on a revision that is superseded; nor does anybody by the screens', async () => {
    const insert = `INSERT INTO cart_check (plan_id, load, checked_at, checked_by) VALUES ($1, 'left 1', now(), 'Somebody')`;
    expect(await codeOf(insert, [planId])).toBe('done to 1');
    expect(await codeOf(`UPDATE pack_plan SET state = 'superseded' WHERE id = $1`, [planId])).toBe('done to 1');
    expect(await codeOf(insert.replace('left 1', 'left 2'), [planId])).toBe('23001');
    expect(await codeOf('DELETE FROM cart_check WHERE plan_id = $1', [planId])).toBe('23001');
    const tick = `INSERT INTO tick (plan_id, kind, subject, place, ticked_at, ticked_by) VALUES ($1, 'move', '', 1, now(), 'Somebody')`;
    expect(await codeOf(tick, [planId])).toBe('23001');
    const asked = [
      await safety.graphql(`mutation($id: ID!) { confirmCart(planId: $id, load: "left 1", serials: ["B-001"]) { agrees } }`, {
        id: planId,
      }),
      await safety.graphql(`mutation($id: ID!) { tick(planId: $id, what: "move 1", done: true) { __typename } }`, { id: planId }),
    ];
    for (const reply of asked)
      expect(reply.errors?.[0]?.extensions.faults?.[0]).toMatchObject({ field: 'planId', wanted: expect.stringContaining('superseded') });
    expect(await codeOf(`UPDATE pack_plan SET state = 'released' WHERE id = $1`, [planId])).toBe('23001');
  });

  it('executes nothing with the rights of the owner but the door for who leaves', async () => {
    const { rows } = await application.query(
      `SELECT oid::regprocedure::text AS name FROM pg_proc WHERE prosecdef AND pronamespace = 'public'::regnamespace AND has_function_privilege(oid, 'EXECUTE')`,
    );
    expect(rows).toEqual([{ name: 'leave_house(uuid)' }]);
    const officer = await idOf('safety');
    expect(await codeOf('SELECT person_leaves($1)', [officer])).toBe('42501');
    expect(await codeOf(`SELECT officer_leaves('{Ines Aldous}', 'Nobody')`)).toBe('42501');
    expect(await codeOf(`SELECT log_leaves($1, '{Ines Aldous}', 'Nobody', 0)`, [officer])).toBe('42501');
  });

  it('lets nobody leave who works here, and takes no name of theirs with one who does', async () => {
    const officer = await idOf('safety');
    expect(await codeOf('SELECT leave_house($1)', [officer])).toBe('23001');
    const namesOfTheLiving = `SELECT (SELECT released_by FROM pack_plan WHERE id = $1) AS released, (SELECT count(*)::int FROM event WHERE strpos(sentence, 'Ines Aldous') > 0) AS lines`;
    await application.query('BEGIN');
    await application.query(
      `INSERT INTO event (at, who, person_id, what, sentence) VALUES (now(), 'Ines Aldous', $1, 'person', 'Ines Aldous was here, Ines was not.')`,
      [leaver],
    );
    await application.query(
      `INSERT INTO account (id, name, email, role, password_hash, disabled_at) VALUES ($1, 'Ines', 'ines@example.org', 'warehouse', '', now())`,
      [leaver],
    );
    const before = (await application.query(namesOfTheLiving, [planId])).rows;
    expect(before[0]).toMatchObject({ released: 'Ines Aldous' });
    const label = (await application.query('SELECT leave_house($1) AS label', [leaver])).rows[0].label;
    expect((await application.query(namesOfTheLiving, [planId])).rows).toEqual(before);
    const said = await application.query('SELECT who, sentence FROM event WHERE person_id = $1', [leaver]);
    expect(said.rows).toEqual([{ who: label, sentence: `Ines Aldous was here, ${label} was not.` }]);
    expect(await codeOf('SELECT leave_house($1)', [leaver])).toBe('23001');
    await application.query('ROLLBACK');
  });

  it('makes no safety officer by a proposal that was never decided, or not by another officer', async () => {
    const [officer, system, person] = [await idOf('safety'), await idOf('system'), await idOf('warehouse')];
    const become = () => codeOf(`UPDATE account SET role = 'safety' WHERE id = $1`, [person]);
    const propose = (by: string | null, accepted: boolean | null, proposer = system) =>
      codeOf(
        `INSERT INTO officer_proposal (id, account_id, proposed_by_id, proposed_by, proposed_at, decided_by_id, accepted) VALUES (gen_random_uuid(), $1, $2, 'Somebody', now(), $3, $4)`,
        [person, proposer, by, accepted],
      );
    const accept = (by: string | null) =>
      codeOf('UPDATE officer_proposal SET accepted = true, decided_by_id = $2 WHERE account_id = $1', [person, by]);
    expect(await propose(officer, true)).toBe('23001');
    expect(await become()).toBe('23514');
    expect(await propose(null, null, officer)).toBe('done to 1');
    expect(await accept(officer)).toBe('23514');
    expect(await accept(system)).toBe('23001');
    expect(await accept(null)).toBe('23001');
    expect(await become()).toBe('23514');
    expect(await codeOf('DELETE FROM officer_proposal WHERE account_id = $1', [person])).toBe('done to 1');
    expect(await propose(null, null)).toBe('done to 1');
    expect(await accept(officer)).toBe('done to 1');
    expect(await codeOf('DELETE FROM officer_proposal WHERE account_id = $1', [person])).toBe('23001');
    expect(await codeOf('UPDATE officer_proposal SET account_id = $2 WHERE account_id = $1', [person, randomUUID()])).toBe('23001');
    await application.query('BEGIN');
    expect(await become()).toBe('done to 1');
    await application.query('ROLLBACK');
  });

  it('writes and dates no line of a row by hand', async () => {
    const line = (what: string, table: string) =>
      codeOf(`INSERT INTO event (at, who, what, sentence, row_table) VALUES ('2020-01-01', '', $1, '', $2)`, [
        what,
        table === '' ? null : table,
      ]);
    expect([await line('row', 'item'), await line('outside', ''), await line('reworded', 'account'), await line('noted', 'item')]).toEqual(
      Array(4).fill('23001'),
    );
  });

  it('shuts nobody out and lets nobody in again without a line of another in the same act', async () => {
    const [system, person] = [await idOf('system'), await idOf('warehouse')];
    const disable = `UPDATE account SET disabled_at = now() WHERE id = '${person}'`;
    const say = (who: string) =>
      `INSERT INTO event (at, who, person_id, what, sentence) VALUES (now(), 'Somebody', '${who}', 'person', 'May not sign in any more.')`;
    expect(await codeOf(disable)).toBe('23001');
    expect(await codeOf(`BEGIN; ${disable}; ${say(person)}; COMMIT`)).toBe('23001');
    await application.query(`BEGIN; ${disable}; ${say(system)}; COMMIT`);
    expect(await codeOf('UPDATE account SET disabled_at = NULL WHERE disabled_at IS NOT NULL')).toBe('23001');
    await application.query(`BEGIN; UPDATE account SET disabled_at = NULL WHERE id = '${person}'; ${say(system)}; COMMIT`);
  });

  it('makes no temporary tables, and every trigger keeps to the tables of the house', async () => {
    expect(await codeOf('CREATE TEMP TABLE account (LIKE public.account)')).toBe('42501');
    const { rows } = await application.query(
      `SELECT oid::regprocedure::text AS trigger FROM pg_proc WHERE pronamespace = 'public'::regnamespace AND prorettype = 'trigger'::regtype
         AND NOT coalesce(proconfig::text LIKE '%search_path%', false)`,
    );
    expect(rows).toEqual([]);
  });

  it('works all the same: a house as the application plans and writes', async () => {
    const warehouse = await test.as('warehouse');
    const reply = await warehouse.graphql(`mutation($r: String!) { quarantine(itemId: "P-001", reason: $r) { item } }`, {
      r: randomUUID(),
    });
    expect(reply.errors).toBe(undefined);
    expect(await codeOf(`UPDATE item SET state = state WHERE id = 'P-001'`)).toBe('done to 1');
  });
});
