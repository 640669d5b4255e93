import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Why a record was corrected. */
export class AddCorrectionReason20261126112800 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE examination ADD COLUMN reason text');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE examination DROP COLUMN reason');
  }
}
