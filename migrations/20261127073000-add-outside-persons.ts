import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Who signs from outside, such as the venue's rigger: by name, company, role and where, kept with the signature; as second person of a release or an inspection too. */
export class AddOutsidePersons20261127073000 implements MigrationInterface {
  name = 'AddOutsidePersons20261127073000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      'ALTER TABLE "sign_off" ADD "company" text, ADD "role" text, ADD "place" text, DROP CONSTRAINT "sign_off_kind_known"',
    );
    await runner.query(
      `ALTER TABLE "sign_off" ADD CONSTRAINT "sign_off_kind_known" CHECK (kind IN ('inspected', 'handed over', 'inspection countersigned', 'release countersigned'))`,
    );
    await runner.query(
      `ALTER TABLE "sign_off" ADD CONSTRAINT "sign_off_outside_whole" CHECK ((company IS NULL) = (role IS NULL) AND (role IS NULL) = (place IS NULL) AND (kind IN ('inspected', 'handed over') OR company IS NOT NULL))`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "sign_off" DROP CONSTRAINT "sign_off_outside_whole", DROP CONSTRAINT "sign_off_kind_known"');
    await runner.query(
      `ALTER TABLE "sign_off" ADD CONSTRAINT "sign_off_kind_known" CHECK (kind IN ('inspected', 'handed over')) NOT VALID`,
    );
    await runner.query('ALTER TABLE "sign_off" DROP "company", DROP "role", DROP "place"');
  }
}
