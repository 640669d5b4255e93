import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Which examinations stood on file when an incident was recorded: none of them can have answered it, whatever days it names. */
export class AddIncidentOrder20261126104500 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE incident ADD COLUMN after_examination bigint');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE incident DROP COLUMN after_examination');
  }
}
