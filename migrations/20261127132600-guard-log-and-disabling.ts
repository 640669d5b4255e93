import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Lines of rows come from the tables' own triggers alone, dated by the database: nobody writes or dates one by hand. Whoever may not sign in any more, or
 * may again, has a line of another person's that says so in the same act. The owner of the tables is let through, for restoring.
 */
export class GuardLogAndDisabling20261127132600 implements MigrationInterface {
  name = 'GuardLogAndDisabling20261127132600';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of statements) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TRIGGER account_disabled_said ON account');
    await runner.query('DROP FUNCTION disabled_said()');
    await runner.query('DROP TRIGGER event_row_by_trigger ON event');
    await runner.query('DROP FUNCTION event_row_by_trigger()');
  }
}

const isOwner = '(SELECT pg_get_userbyid(relowner) FROM pg_class WHERE oid = TG_RELID) = current_user';

const statements = [
  `CREATE FUNCTION event_row_by_trigger() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public, pg_temp AS $$
    BEGIN
      IF ${isOwner} THEN RETURN NEW; END IF;
      RAISE EXCEPTION 'a line of a row is written by its table alone' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'event_row_by_trigger';
    END $$`,
  `CREATE TRIGGER event_row_by_trigger BEFORE INSERT ON event FOR EACH ROW
     WHEN (pg_trigger_depth() = 0 AND (NEW.what IN ('row', 'outside', 'reworded') OR NEW.row_table IS NOT NULL)) EXECUTE FUNCTION event_row_by_trigger()`,
  `CREATE FUNCTION disabled_said() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public, pg_temp AS $$
    BEGIN
      IF ${isOwner} OR EXISTS (SELECT FROM event JOIN account ON account.id = event.person_id
          WHERE event.act = act_id() AND event.what = 'person' AND account.id <> NEW.id AND account.role <> 'warehouse')
        THEN RETURN NULL; END IF;
      RAISE EXCEPTION 'who may sign in is said in the log, by another' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'account_disabled_said';
    END $$`,
  // Looked at as the last of the transaction: the line comes after the change.
  `CREATE CONSTRAINT TRIGGER account_disabled_said AFTER UPDATE OF disabled_at ON account DEFERRABLE INITIALLY DEFERRED FOR EACH ROW
     WHEN (OLD.disabled_at IS DISTINCT FROM NEW.disabled_at) EXECUTE FUNCTION disabled_said()`,
];
