import type { MigrationInterface, QueryRunner } from 'typeorm';

const topics = `SELECT 'job/' || id FROM changed UNION ALL SELECT 'planning/' || tour_id || '/' || show_id FROM changed`;
const stateChanged = 'WITH changed AS (SELECT is_now.* FROM is_now JOIN was USING (id) WHERE is_now.state <> was.state)';

/** Planning that people asked for is a job, whatever its kind; longer searches are one of them. */
export class CreateJob20261126013500 implements MigrationInterface {
  name = 'CreateJob20261126013500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "job" ("id" uuid NOT NULL, "number" BIGSERIAL NOT NULL, "kind" text NOT NULL, "tour_id" text NOT NULL, "show_id" text NOT NULL, "subject" jsonb NOT NULL, "urgent" boolean NOT NULL, "asked_by" text NOT NULL, "state" text NOT NULL, "progress" double precision NOT NULL, "attempt" integer NOT NULL, "lease_until" TIMESTAMP WITH TIME ZONE, "answer" jsonb, "error_code" text, "stopped_by" text, "asked_at" TIMESTAMP WITH TIME ZONE NOT NULL, "started_at" TIMESTAMP WITH TIME ZONE, "ended_at" TIMESTAMP WITH TIME ZONE, CONSTRAINT "job_kind_known" CHECK (kind IN ('make', 'swap', 'loading', 'search')), CONSTRAINT "job_state_known" CHECK (state IN ('waiting', 'running', 'done', 'refused', 'failed', 'cancelled')), CONSTRAINT "job_lease_while_running" CHECK ((state = 'running') = (lease_until IS NOT NULL)), CONSTRAINT "job_ended_when_over" CHECK ((state IN ('waiting', 'running')) = (ended_at IS NULL)), CONSTRAINT "job_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "job_open_index" ON "job" ("urgent", "number") WHERE state IN ('waiting', 'running')`);
    await runner.query(`CREATE INDEX "job_show_index" ON "job" ("tour_id", "show_id", "number")`);
    await runner.query(
      `CREATE UNIQUE INDEX "job_one_search_at_a_time" ON "job" ("tour_id", "show_id") WHERE kind = 'search' AND state IN ('waiting', 'running')`,
    );
    await runner.query(
      `ALTER TABLE "job" ADD CONSTRAINT "job_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    // Searches that were asked for before go on; those that are over keep what came of them.
    await runner.query(
      `INSERT INTO "job" ("id", "kind", "tour_id", "show_id", "subject", "urgent", "asked_by", "state", "progress", "attempt", "answer", "error_code", "asked_at", "ended_at")
       SELECT "id", 'search', "tour_id", "show_id", jsonb_build_object('tourId', "tour_id", 'showId', "show_id"), false, "asked_by",
         CASE "state" WHEN 'running' THEN 'waiting' WHEN 'stopped' THEN 'cancelled' ELSE "state" END,
         CASE "state" WHEN 'running' THEN 0 ELSE "progress" END, 0,
         CASE "state" WHEN 'done' THEN jsonb_build_object('ok', true, 'value', jsonb_build_object('draftId', NULL, 'sentence', "sentence"))
           WHEN 'stopped' THEN jsonb_build_object('ok', false, 'error', jsonb_build_object('code', 'cancelled', 'sentence', "sentence"))
           WHEN 'failed' THEN jsonb_build_object('ok', false, 'error', jsonb_build_object('code', 'fault', 'sentence', "sentence")) END,
         CASE "state" WHEN 'stopped' THEN 'cancelled' WHEN 'failed' THEN 'fault' END,
         "asked_at", CASE WHEN "state" IN ('waiting', 'running') THEN NULL ELSE "asked_at" END
       FROM "search" ORDER BY "number"`,
    );
    await runner.query('DROP TABLE "search"');
    // What is told: that one was asked for, and every change of its state; not that its worker lives.
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', ['job', topics]);
    await runner.query('DROP TRIGGER told_update ON job');
    await runner.query(
      `CREATE TRIGGER told_update AFTER UPDATE ON job REFERENCING OLD TABLE AS was NEW TABLE AS is_now FOR EACH STATEMENT
       EXECUTE FUNCTION tell_change($topics$${topics}$topics$, $changed$${stateChanged}$changed$)`,
    );
    await runner.query('DROP SCHEMA IF EXISTS job_queue CASCADE');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "search" ("id" uuid NOT NULL, "number" BIGSERIAL NOT NULL, "tour_id" text NOT NULL, "show_id" text NOT NULL, "state" text NOT NULL, "progress" double precision NOT NULL, "sentence" text NOT NULL, "asked_by" text NOT NULL, "asked_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "search_state_known" CHECK (state IN ('waiting', 'running', 'done', 'stopped', 'failed')), CONSTRAINT "search_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE UNIQUE INDEX "search_one_at_a_time" ON "search" ("tour_id", "show_id") WHERE state IN ('waiting', 'running')`,
    );
    await runner.query(
      `ALTER TABLE "search" ADD CONSTRAINT "search_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', [
      'search',
      `SELECT 'search/' || tour_id || '/' || show_id FROM changed`,
    ]);
    await runner.query('DROP TABLE "job"');
  }
}
