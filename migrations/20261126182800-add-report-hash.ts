import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The SHA-256 of every report file, worked out by the database and held to its bytes. */
export class AddReportHash20261126182800 implements MigrationInterface {
  name = 'AddReportHash20261126182800';

  async up(runner: QueryRunner): Promise<void> {
    // Worked out as the column is made, since what is kept is never written again; after that a column like any other.
    await runner.query(`ALTER TABLE "report_file" ADD "sha256" text NOT NULL GENERATED ALWAYS AS (encode(sha256(bytes), 'hex')) STORED`);
    await runner.query(`ALTER TABLE "report_file" ALTER COLUMN "sha256" DROP EXPRESSION`);
    await runner.query(`ALTER TABLE "report_file" ADD CONSTRAINT "report_file_hash_agrees" CHECK (sha256 = encode(sha256(bytes), 'hex'))`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "report_file" DROP COLUMN "sha256"`);
  }
}
