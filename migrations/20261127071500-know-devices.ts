import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A device is known again by a cookie of its own, whatever its address; a wrong try makes wait until an instant that can be said. */
export class KnowDevices20261127071500 implements MigrationInterface {
  name = 'KnowDevices20261127071500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "session" ADD "device_hash" text`);
    await runner.query(`ALTER TABLE "sign_in_try" ADD "wait_until" TIMESTAMP WITH TIME ZONE`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "sign_in_try" DROP COLUMN "wait_until"`);
    await runner.query(`ALTER TABLE "session" DROP COLUMN "device_hash"`);
  }
}
