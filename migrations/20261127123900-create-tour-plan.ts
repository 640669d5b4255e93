import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A tour planned as a whole stands beside the tour, one plan a tour; planning it is a job. */
export class CreateTourPlan20261127123900 implements MigrationInterface {
  name = 'CreateTourPlan20261127123900';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "tour_plan" ("tour_id" text NOT NULL, "plan" jsonb NOT NULL, "made_at" TIMESTAMP WITH TIME ZONE NOT NULL, "made_by_id" uuid, CONSTRAINT "tour_plan_pkey" PRIMARY KEY ("tour_id"))`,
    );
    await runner.query(
      'ALTER TABLE "tour_plan" ADD CONSTRAINT "tour_plan_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE CASCADE ON UPDATE NO ACTION',
    );
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', ['tour_plan', `SELECT 'tour/' || tour_id FROM changed`]);
    await runner.query('ALTER TABLE job DROP CONSTRAINT job_kind_known');
    await runner.query(
      `ALTER TABLE job ADD CONSTRAINT job_kind_known CHECK (kind IN ('make', 'swap', 'loading', 'search', 'improve', 'tour'))`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "tour_plan"');
    await runner.query(`DELETE FROM job WHERE kind = 'tour'`);
    await runner.query('ALTER TABLE job DROP CONSTRAINT job_kind_known');
    await runner.query(`ALTER TABLE job ADD CONSTRAINT job_kind_known CHECK (kind IN ('make', 'swap', 'loading', 'search', 'improve'))`);
  }
}
