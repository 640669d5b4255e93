import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What is read of a plan, part by part, and what is needed to say at a look whether it is stale. A plan's parts are put down with it and go with it.
 * Every write of something that plans are made from leaves a line in `input_change` with the transaction that wrote it; `plan_freshness` keeps what
 * was found for a plan and the snapshot in which it was found, so that only lines which that snapshot did not see have to be looked at again.
 * These tables are read and written by SQL alone and have no row class.
 */
export class AddPlanParts20261126011500 implements MigrationInterface {
  name = 'AddPlanParts20261126011500';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [...parts, ...changes]) await runner.query(statement);
    for (const table of ['item', 'model', 'rule', 'tour', 'booking', 'hardware_count', 'loading_act', 'examination', 'incident'])
      for (const act of ['INSERT', 'UPDATE', 'DELETE']) {
        const seen = [act === 'INSERT' ? '' : 'OLD TABLE AS before', act === 'DELETE' ? '' : 'NEW TABLE AS after'].join(' ').trim();
        await runner.query(
          `CREATE TRIGGER ${table}_${act.toLowerCase()}_is_noted AFTER ${act} ON ${table} REFERENCING ${seen} FOR EACH STATEMENT EXECUTE FUNCTION ${functionOf(table, act)}`,
        );
      }
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TRIGGER pack_plan_has_parts ON pack_plan');
    await runner.query('DROP FUNCTION put_plan_parts() CASCADE');
    for (const name of ['note_item_insert', 'note_item_update', 'note_item_delete', 'note_record', 'note_tour_change', 'note_other_change'])
      await runner.query(`DROP FUNCTION ${name}() CASCADE`);
    for (const table of ['plan_freshness', 'input_change', 'plan_part']) await runner.query(`DROP TABLE ${table}`);
    await runner.query('DROP FUNCTION plan_parts(jsonb)');
    await runner.query('DROP FUNCTION this_cluster()');
  }
}

function functionOf(table: string, act: string): string {
  if (table === 'item') return `note_item_${act.toLowerCase()}()`;
  if (table === 'examination' || table === 'incident') return act === 'INSERT' ? `note_record()` : `note_other_change('many')`;
  if (table === 'tour' || table === 'loading_act') return act === 'DELETE' ? `note_other_change('many')` : `note_tour_change()`;
  return `note_other_change('${table}')`;
}

const parts = [
  `CREATE TABLE plan_part (plan_id uuid NOT NULL, part text NOT NULL, place integer NOT NULL, key text NOT NULL, data jsonb NOT NULL,
     CONSTRAINT plan_part_pkey PRIMARY KEY (plan_id, part, place), CONSTRAINT plan_part_plan_fkey FOREIGN KEY (plan_id) REFERENCES pack_plan (id) ON DELETE CASCADE)`,
  `CREATE FUNCTION plan_parts(plan jsonb) RETURNS TABLE (part text, place integer, key text, data jsonb) LANGUAGE sql IMMUTABLE AS $$
     SELECT 'head', 0, '', jsonb_build_object('tour', plan->'tour', 'show', plan->'show')
     UNION ALL SELECT name, 0, '', plan->name FROM unnest('{findings,carts,hardware,due,fingerprint,uses}'::text[]) name WHERE plan ? name
     UNION ALL SELECT 'picks', 0, '', (plan->'picks') - 'hangs' WHERE plan ? 'picks'
     UNION ALL SELECT 'hang', number::int, coalesce(hang->>'id', hang->>'hang', ''), hang FROM jsonb_array_elements(plan->'picks'->'hangs') WITH ORDINALITY each (hang, number)
     UNION ALL SELECT 'trucks', 0, '', (plan->'truck') - 'trucks' WHERE plan ? 'truck'
     UNION ALL SELECT 'truck', number::int, coalesce(truck->>'id', ''), truck FROM jsonb_array_elements(plan->'truck'->'trucks') WITH ORDINALITY each (truck, number)
   $$`,
  `CREATE FUNCTION put_plan_parts() RETURNS trigger LANGUAGE plpgsql AS $$
     BEGIN
       IF TG_OP = 'UPDATE' THEN
         IF NEW.plan IS NOT DISTINCT FROM OLD.plan THEN RETURN NULL; END IF;
         DELETE FROM plan_part WHERE plan_id = NEW.id;
         DELETE FROM plan_freshness WHERE plan_id = NEW.id;
       END IF;
       INSERT INTO plan_part (plan_id, part, place, key, data) SELECT NEW.id, made.* FROM plan_parts(NEW.plan) made;
       RETURN NULL;
     END $$`,
  `CREATE TRIGGER pack_plan_has_parts AFTER INSERT OR UPDATE OF plan ON pack_plan FOR EACH ROW EXECUTE FUNCTION put_plan_parts()`,
  `INSERT INTO plan_part (plan_id, part, place, key, data) SELECT pack_plan.id, made.* FROM pack_plan, plan_parts(pack_plan.plan) made`,
];

const changes = [
  // Transaction ids mean something in one cluster only: what was restored into another is worked out anew.
  `CREATE FUNCTION this_cluster() RETURNS bigint LANGUAGE sql STABLE AS $$ SELECT system_identifier FROM pg_control_system() $$`,
  `CREATE TABLE input_change (number bigint GENERATED ALWAYS AS IDENTITY, kind text NOT NULL, key text NOT NULL, cluster bigint NOT NULL DEFAULT this_cluster(),
     written_in xid8 NOT NULL DEFAULT pg_current_xact_id(), CONSTRAINT input_change_pkey PRIMARY KEY (number))`,
  `CREATE INDEX input_change_written_index ON input_change (written_in)`,
  `CREATE TABLE plan_freshness (plan_id uuid NOT NULL, cluster bigint NOT NULL, seen pg_snapshot NOT NULL, changes jsonb NOT NULL, floor_fits boolean NOT NULL,
     holds_until timestamptz, CONSTRAINT plan_freshness_pkey PRIMARY KEY (plan_id),
     CONSTRAINT plan_freshness_plan_fkey FOREIGN KEY (plan_id) REFERENCES pack_plan (id) ON DELETE CASCADE)`,
  `CREATE FUNCTION note_item_insert() RETURNS trigger LANGUAGE plpgsql AS $$
     BEGIN
       IF (SELECT count(*) FROM (SELECT FROM after LIMIT 1001) few) > 1000 THEN INSERT INTO input_change (kind, key) VALUES ('many', '');
       ELSE
         INSERT INTO input_change (kind, key) SELECT 'item', id FROM after;
         INSERT INTO input_change (kind, key) SELECT 'items', '' WHERE EXISTS (SELECT FROM after);
         INSERT INTO input_change (kind, key) SELECT DISTINCT 'stack', stack_cart FROM after WHERE stack_cart IS NOT NULL;
       END IF;
       RETURN NULL;
     END $$`,
  `CREATE FUNCTION note_item_delete() RETURNS trigger LANGUAGE plpgsql AS $$
     BEGIN
       INSERT INTO input_change (kind, key) SELECT 'many', '' WHERE EXISTS (SELECT FROM before);
       RETURN NULL;
     END $$`,
  `CREATE FUNCTION note_item_update() RETURNS trigger LANGUAGE plpgsql AS $$
     BEGIN
       WITH changed AS (
         SELECT after.id, before.stack_cart AS was_on, after.stack_cart AS is_on,
           (before.kind, before.model, before.state, before.depot, before.count, before.rest) IS DISTINCT FROM
           (after.kind, after.model, after.state, after.depot, after.count, after.rest) AS itself,
           (before.stack_cart, before.stack_slot) IS DISTINCT FROM (after.stack_cart, after.stack_slot) AS moved
         FROM before JOIN after ON after.id = before.id),
       lines AS (
         SELECT 'item' AS kind, id AS key FROM changed WHERE itself
         UNION SELECT 'stack', was_on FROM changed WHERE moved AND was_on IS NOT NULL
         UNION SELECT 'stack', is_on FROM changed WHERE moved AND is_on IS NOT NULL
         UNION SELECT 'many', '' WHERE (SELECT count(*) FROM before) <> (SELECT count(*) FROM changed))
       INSERT INTO input_change (kind, key)
         SELECT kind, key FROM lines WHERE (SELECT count(*) FROM lines) <= 1000 UNION ALL SELECT 'many', '' WHERE (SELECT count(*) FROM lines) > 1000;
       RETURN NULL;
     END $$`,
  `CREATE FUNCTION note_record() RETURNS trigger LANGUAGE plpgsql AS $$
     BEGIN
       IF (SELECT count(*) FROM (SELECT FROM after LIMIT 1001) few) > 1000 THEN INSERT INTO input_change (kind, key) VALUES ('many', '');
       ELSE INSERT INTO input_change (kind, key) SELECT DISTINCT 'item', item_id FROM after;
       END IF;
       RETURN NULL;
     END $$`,
  `CREATE FUNCTION note_tour_change() RETURNS trigger LANGUAGE plpgsql AS $$
     BEGIN
       INSERT INTO input_change (kind, key)
         SELECT DISTINCT 'tour', CASE TG_TABLE_NAME WHEN 'tour' THEN to_jsonb(after)->>'id' ELSE to_jsonb(after)->>'tour_id' END FROM after;
       RETURN NULL;
     END $$`,
  `CREATE FUNCTION note_other_change() RETURNS trigger LANGUAGE plpgsql AS $$
     BEGIN
       INSERT INTO input_change (kind, key) VALUES (TG_ARGV[0], '');
       RETURN NULL;
     END $$`,
];
