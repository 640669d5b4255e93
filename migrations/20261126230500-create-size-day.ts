import type { MigrationInterface, QueryRunner } from 'typeorm';

/** How large the database and its tables were on each day, kept by the house itself, so that growth is seen before a disk is full. */
export class CreateSizeDay20261126230500 implements MigrationInterface {
  name = 'CreateSizeDay20261126230500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "size_day" ("day" date NOT NULL, "bytes" bigint NOT NULL, "tables" jsonb NOT NULL, CONSTRAINT "size_day_pkey" PRIMARY KEY ("day"))`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "size_day"');
  }
}
