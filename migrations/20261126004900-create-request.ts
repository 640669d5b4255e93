import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Every write once: what was done for a request id, kept for a stated time. */
export class CreateRequest20261126004900 implements MigrationInterface {
  name = 'CreateRequest20261126004900';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "request" ("id" uuid NOT NULL, "step" integer NOT NULL, "person_id" uuid NOT NULL, "operation" text NOT NULL, "values_hash" text NOT NULL, "state" text NOT NULL, "answer" jsonb, "done_at" TIMESTAMP WITH TIME ZONE, "at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "request_state_known" CHECK (state IN ('saved', 'given up')), CONSTRAINT "request_pkey" PRIMARY KEY ("id", "step"))`,
    );
    await runner.query(`CREATE INDEX "request_at_index" ON "request" ("at")`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "request"');
  }
}
