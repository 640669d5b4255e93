import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What changes is written down as topics by the tables themselves, inside the transaction that changes them, and all APIs are woken when it
 * commits. `tell_changes_of(table, query)` makes the three statement triggers; the query gives the topics of the rows of `changed`.
 */
export class TellChanges20261126010500 implements MigrationInterface {
  name = 'TellChanges20261126010500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "change" ("number" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "topic" text NOT NULL, "transaction" xid8 NOT NULL DEFAULT pg_current_xact_id(), "at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "change_pkey" PRIMARY KEY ("number"))`,
    );
    await runner.query(`CREATE INDEX "change_transaction_index" ON "change" ("transaction")`);
    await runner.query(`CREATE INDEX "change_at_index" ON "change" ("at")`);
    await runner.query(`CREATE FUNCTION tell_change() RETURNS trigger LANGUAGE plpgsql AS $$
      DECLARE told bigint;
      BEGIN
        EXECUTE 'INSERT INTO change (topic) ' || TG_ARGV[1] || ' SELECT DISTINCT topic FROM (' || TG_ARGV[0] || ') AS topics (topic)';
        GET DIAGNOSTICS told = ROW_COUNT;
        IF told > 0 THEN PERFORM pg_notify('change', ''); END IF;
        RETURN NULL;
      END $$`);
    await runner.query(`CREATE FUNCTION tell_changes_of(told_table regclass, topics text) RETURNS void LANGUAGE plpgsql AS $$
      BEGIN
        EXECUTE format('CREATE TRIGGER told_insert AFTER INSERT ON %s REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION tell_change(%L, %L)', told_table, topics, '');
        EXECUTE format('CREATE TRIGGER told_update AFTER UPDATE ON %s REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION tell_change(%L, %L)', told_table, topics, '');
        EXECUTE format('CREATE TRIGGER told_delete AFTER DELETE ON %s REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION tell_change(%L, %L)', told_table, topics, '');
      END $$`);
    for (const [table, topics] of Object.entries(topicsOf)) await runner.query('SELECT tell_changes_of($1::regclass, $2)', [table, topics]);
    // Days of use that a reader has worked out again are no change to the item.
    await runner.query('DROP TRIGGER told_update ON item');
    await runner.query(
      `CREATE TRIGGER told_update AFTER UPDATE ON item REFERENCING OLD TABLE AS was NEW TABLE AS is_now FOR EACH STATEMENT
       EXECUTE FUNCTION tell_change($topics$${topicsOf.item}$topics$, $changed$${itemsChanged}$changed$)`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP FUNCTION tell_changes_of(regclass, text)');
    await runner.query('DROP FUNCTION tell_change() CASCADE');
    await runner.query('DROP TABLE "change"');
  }
}

/** A statement over many items tells of all items at once: `item` covers every `item/...`. */
const items = (id: string) =>
  `SELECT 'register' FROM changed UNION ALL SELECT CASE WHEN (SELECT count(DISTINCT ${id}) FROM changed) > 50 THEN 'item' ELSE 'item/' || ${id} END FROM changed`;

const derived = ['due_on', 'due_state', 'due_holds_through', 'due_known'];
const of = (row: string) => derived.map((column) => `${row}.${column}`).join(', ');
const itemsChanged = `WITH changed AS (SELECT is_now.* FROM is_now JOIN was USING (id) WHERE (${of('is_now')}) IS NOT DISTINCT FROM (${of('was')})
  OR to_jsonb(is_now) - ARRAY['${derived.join("', '")}'] <> to_jsonb(was) - ARRAY['${derived.join("', '")}'])`;

const topicsOf: Readonly<Record<string, string>> = {
  account: `SELECT 'people' FROM changed`,
  booking: `SELECT 'booking' FROM changed`,
  cart_check: `SELECT 'done/' || plan_id FROM changed`,
  examination: items('item_id'),
  hardware_count: `SELECT 'count/' || tour_id FROM changed`,
  incident: items('item_id'),
  item: items('id'),
  load_reading: `SELECT 'rigging/' || plan_id FROM changed`,
  loading_act: `SELECT 'show/' || tour_id || '/' || show_id FROM changed`,
  model: `SELECT 'catalogue' FROM changed`,
  pack_plan: `SELECT 'show/' || tour_id || '/' || show_id FROM changed`,
  rule: `SELECT 'catalogue' FROM changed`,
  search: `SELECT 'search/' || tour_id || '/' || show_id FROM changed`,
  sign_off: `SELECT 'rigging/' || plan_id FROM changed`,
  tick: `SELECT 'done/' || plan_id FROM changed`,
  tour: `SELECT 'tour/' || id FROM changed`,
};
