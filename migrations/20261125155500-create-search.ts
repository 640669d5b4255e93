import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Longer searches for truck loads, one at a time for a show. */
export class CreateSearch20261125155500 implements MigrationInterface {
  name = 'CreateSearch20261125155500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "search" ("id" uuid NOT NULL, "number" BIGSERIAL NOT NULL, "tour_id" text NOT NULL, "show_id" text NOT NULL, "state" text NOT NULL, "progress" double precision NOT NULL, "sentence" text NOT NULL, "asked_by" text NOT NULL, "asked_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "search_state_known" CHECK (state IN ('waiting', 'running', 'done', 'stopped', 'failed')), CONSTRAINT "search_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE UNIQUE INDEX "search_one_at_a_time" ON "search" ("tour_id", "show_id") WHERE state IN ('waiting', 'running')`,
    );
    await runner.query(
      `ALTER TABLE "search" ADD CONSTRAINT "search_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "search"');
  }
}
