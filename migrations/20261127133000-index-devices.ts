import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Whether a device is known is asked at the door. */
export class IndexDevices20261127133000 implements MigrationInterface {
  name = 'IndexDevices20261127133000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('CREATE INDEX "session_device_index" ON "session" ("device_hash")');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP INDEX "session_device_index"');
  }
}
