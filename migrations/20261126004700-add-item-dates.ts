import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The last day of use of every item, kept beside it so that lists can be read by it. Whoever writes what it depends on (a record, an incident, the item
 * itself, a rule) makes it unknown by trigger; who reads it has it worked out again first.
 */
export class AddItemDates20261126004700 implements MigrationInterface {
  name = 'AddItemDates20261126004700';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of statements) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const table of ['examination', 'incident']) await runner.query(`DROP TRIGGER ${table}_makes_due_unknown ON ${table}`);
    await runner.query('DROP TRIGGER item_makes_due_unknown ON item');
    await runner.query('DROP TRIGGER rule_makes_due_unknown ON rule');
    for (const name of ['record', 'item', 'rule']) await runner.query(`DROP FUNCTION forget_due_of_${name}()`);
    for (const name of ['item_search_index', 'item_serial_index', 'item_state_index', 'item_model_index', 'examination_supersedes_index'])
      await runner.query(`DROP INDEX ${name}`);
    for (const column of ['due_on', 'due_state', 'due_holds_through', 'due_known'])
      await runner.query(`ALTER TABLE "item" DROP COLUMN "${column}"`);
  }
}

const statements = [
  `ALTER TABLE "item" ADD "due_on" date, ADD "due_state" text, ADD "due_holds_through" date, ADD "due_known" boolean NOT NULL DEFAULT false`,
  `ALTER TABLE "item" ADD CONSTRAINT "item_due_state_known" CHECK (due_state IN ('due', 'failed', 'blocked', 'no record'))`,
  `CREATE FUNCTION forget_due_of_record() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      UPDATE item SET due_known = false FROM (SELECT DISTINCT item_id FROM written) changed WHERE id = changed.item_id AND due_known;
      RETURN NULL;
    END $$`,
  `CREATE TRIGGER examination_makes_due_unknown AFTER INSERT ON examination REFERENCING NEW TABLE AS written FOR EACH STATEMENT EXECUTE FUNCTION forget_due_of_record()`,
  `CREATE TRIGGER incident_makes_due_unknown AFTER INSERT ON incident REFERENCING NEW TABLE AS written FOR EACH STATEMENT EXECUTE FUNCTION forget_due_of_record()`,
  `CREATE FUNCTION forget_due_of_item() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      NEW.due_known := false;
      RETURN NEW;
    END $$`,
  `CREATE TRIGGER item_makes_due_unknown BEFORE UPDATE ON item FOR EACH ROW
    WHEN (OLD.kind IS DISTINCT FROM NEW.kind OR OLD.rest IS DISTINCT FROM NEW.rest) EXECUTE FUNCTION forget_due_of_item()`,
  `CREATE FUNCTION forget_due_of_rule() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      UPDATE item SET due_known = false WHERE due_known AND NOT rest ? 'intervals';
      RETURN NULL;
    END $$`,
  `CREATE TRIGGER rule_makes_due_unknown AFTER INSERT OR UPDATE OR DELETE ON rule FOR EACH STATEMENT EXECUTE FUNCTION forget_due_of_rule()`,
  `CREATE INDEX "item_due_unknown_index" ON "item" ("id") WHERE NOT due_known`,
  `CREATE INDEX "item_due_holds_index" ON "item" ("due_holds_through") WHERE due_holds_through IS NOT NULL`,
  `CREATE INDEX "item_due_index" ON "item" ((state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), "id") WHERE due_state IS NOT NULL AND state <> 'retired'`,
  `CREATE INDEX "item_state_index" ON "item" ("state", "id")`,
  `CREATE INDEX "item_model_index" ON "item" ("model", "id")`,
  `CREATE INDEX "item_serial_index" ON "item" (lower(id) text_pattern_ops)`,
  `CREATE INDEX "item_search_index" ON "item" USING gin ((id || ' ' || model || ' ' || depot || ' ' || rest::text) gin_trgm_ops)`,
  `CREATE INDEX "examination_supersedes_index" ON "examination" ("supersedes") WHERE supersedes IS NOT NULL`,
];
