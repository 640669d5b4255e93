import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Whoever did something is kept by id beside the name as it was written then: a person may change names. No foreign key: a record outlives the account.
 * What is on file finds its person where exactly one has that name.
 */
export class NamePersons20261126014500 implements MigrationInterface {
  name = 'NamePersons20261126014500';

  async up(runner: QueryRunner): Promise<void> {
    for (const [table, name, id] of records) {
      await runner.query(`ALTER TABLE "${table}" ADD "${id}" uuid`);
      // Append-only tables refuse a change; what was written stays as it is, the id comes beside it.
      await runner.query(`ALTER TABLE "${table}" DISABLE TRIGGER USER`);
      await runner.query(
        `UPDATE "${table}" SET "${id}" = one.id FROM (SELECT name, (array_agg(id))[1] AS id FROM account GROUP BY name HAVING count(*) = 1) AS one
         WHERE one.name = "${table}"."${name}"`,
      );
      await runner.query(`ALTER TABLE "${table}" ENABLE TRIGGER USER`);
    }
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const [table, , id] of records) await runner.query(`ALTER TABLE "${table}" DROP COLUMN "${id}"`);
  }
}

/** Table, column of the name, column of the id. */
const records = [
  ['event', 'who', 'person_id'],
  ['pack_plan', 'made_by', 'made_by_id'],
  ['pack_plan', 'released_by', 'released_by_id'],
  ['cart_check', 'checked_by', 'checked_by_id'],
  ['tick', 'ticked_by', 'ticked_by_id'],
  ['examination', 'recorded_by', 'recorded_by_id'],
  ['report_file', 'kept_by', 'kept_by_id'],
  ['loading_act', 'who', 'person_id'],
  ['load_reading', 'read_by', 'read_by_id'],
  ['sign_off', 'signed_by', 'signed_by_id'],
  ['hardware_count', 'counted_by', 'counted_by_id'],
  ['job', 'asked_by', 'asked_by_id'],
] as const;
