import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Holds: promises that end by themselves. Why a plan that says stop was released. */
export class AddHoldUntil20261125173500 implements MigrationInterface {
  name = 'AddHoldUntil20261125173500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "booking" ADD "hold_until" TIMESTAMP WITH TIME ZONE`);
    await runner.query(`ALTER TABLE "pack_plan" ADD "released_despite" text`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "pack_plan" DROP COLUMN "released_despite"`);
    await runner.query(`ALTER TABLE "booking" DROP COLUMN "hold_until"`);
  }
}
