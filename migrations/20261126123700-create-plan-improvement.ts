import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Work goes on with plans whose box moves are not proved to be the fewest; what comes of it is kept beside the plan until somebody takes it in. */
export class CreatePlanImprovement20261126123700 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "plan_improvement" ("plan_id" uuid NOT NULL, "fact" jsonb NOT NULL, "better" jsonb, "found_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "plan_improvement_better_where_shorter" CHECK ((fact ->> 'code' = 'shorter') = (better IS NOT NULL)), CONSTRAINT "plan_improvement_pkey" PRIMARY KEY ("plan_id"))`,
    );
    await runner.query(
      `ALTER TABLE "plan_improvement" ADD CONSTRAINT "plan_improvement_plan_fkey" FOREIGN KEY ("plan_id") REFERENCES "pack_plan"("id") ON DELETE CASCADE ON UPDATE NO ACTION`,
    );
    await runner.query('ALTER TABLE job DROP CONSTRAINT job_kind_known');
    await runner.query(`ALTER TABLE job ADD CONSTRAINT job_kind_known CHECK (kind IN ('make', 'swap', 'loading', 'search', 'improve'))`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE plan_improvement');
    await runner.query(`DELETE FROM job WHERE kind = 'improve'`);
    await runner.query('ALTER TABLE job DROP CONSTRAINT job_kind_known');
    await runner.query(`ALTER TABLE job ADD CONSTRAINT job_kind_known CHECK (kind IN ('make', 'swap', 'loading', 'search'))`);
  }
}
