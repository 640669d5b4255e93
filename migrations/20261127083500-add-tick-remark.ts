import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A tick may say who did it together, or that it was entered late from paper. */
export class AddTickRemark20261127083500 implements MigrationInterface {
  name = 'AddTickRemark20261127083500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "tick" ADD "remark" text');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "tick" DROP COLUMN "remark"');
  }
}
