import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Where a box came from: what a move is taken back by. */
export class AddEventFromPlace20261126142700 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE event ADD COLUMN from_place text');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE event DROP COLUMN from_place');
  }
}
