import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * A house with one safety officer may say that one person judges alone; every word on it is kept, the newest counts. It ends by itself when a second
 * safety officer is on file. A proposal accepted by who proposed it says so itself.
 */
export class CreateOnePerson20261127072900 implements MigrationInterface {
  name = 'CreateOnePerson20261127072900';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of statements) await runner.query(statement);
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', ['one_person', `SELECT 'people' FROM changed`]);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const statement of back) await runner.query(statement);
  }
}

const byTwo = `decided_by_id IS NOT NULL AND decided_by_id IS DISTINCT FROM proposed_by_id`;

const statements = [
  `CREATE TABLE "one_person" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "is_on" boolean NOT NULL, "reason" text NOT NULL, "set_by_id" uuid, "set_at" TIMESTAMP WITH TIME ZONE NOT NULL,
   CONSTRAINT "one_person_set_by_somebody" CHECK (NOT is_on OR set_by_id IS NOT NULL), CONSTRAINT "one_person_pkey" PRIMARY KEY ("id"))`,
  'ALTER TABLE "one_person" ADD CONSTRAINT "one_person_set_by_fkey" FOREIGN KEY ("set_by_id") REFERENCES "account"("id") ON DELETE NO ACTION ON UPDATE NO ACTION',
  'CREATE TRIGGER one_person_append_only BEFORE UPDATE OR DELETE ON one_person FOR EACH ROW EXECUTE FUNCTION refuse_change()',
  `CREATE FUNCTION one_person_ends() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      IF (SELECT is_on FROM one_person ORDER BY id DESC LIMIT 1) AND (SELECT count(*) > 1 FROM account WHERE role = 'safety' AND disabled_at IS NULL) THEN
        INSERT INTO one_person (is_on, reason, set_at) VALUES (false, 'a second safety officer is on file', now());
      END IF;
      RETURN NULL;
    END $$`,
  `CREATE TRIGGER account_ends_one_person AFTER INSERT OR UPDATE OF role, disabled_at ON account FOR EACH STATEMENT EXECUTE FUNCTION one_person_ends()`,
  'ALTER TABLE "proposal" ADD "by_one_person" boolean NOT NULL DEFAULT false, DROP CONSTRAINT "proposal_by_two"',
  `ALTER TABLE "proposal" ADD CONSTRAINT "proposal_by_two" CHECK (state <> 'accepted' OR ${byTwo} OR by_one_person AND decided_by_id = proposed_by_id)`,
];

const back = [
  'ALTER TABLE "proposal" DROP CONSTRAINT "proposal_by_two", DROP "by_one_person"',
  `ALTER TABLE "proposal" ADD CONSTRAINT "proposal_by_two" CHECK (state <> 'accepted' OR ${byTwo}) NOT VALID`,
  'DROP TRIGGER account_ends_one_person ON account',
  'DROP FUNCTION one_person_ends()',
  'DROP TABLE "one_person"',
];
