import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Files with many rows come in beside the requests: how far each is stands in `csv_import`, how it ended in `csv_import_end`, once. The line of its end is
 * written in the transaction that writes its rows, so that an import ends one way, whoever else wants to end it.
 */
export class CreateCsvImport20261126183500 implements MigrationInterface {
  name = 'CreateCsvImport20261126183500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "csv_import" ("id" uuid NOT NULL, "number" BIGSERIAL NOT NULL, "of" text NOT NULL, "dry_run" boolean NOT NULL, "asked_by_id" uuid NOT NULL, "asked_at" TIMESTAMP WITH TIME ZONE NOT NULL, "step" text NOT NULL, "rows_total" integer NOT NULL, "rows_checked" integer NOT NULL, "rows_written" integer NOT NULL, "rows_dated" integer NOT NULL, "alive_until" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "csv_import_step_known" CHECK (step IN ('waiting', 'reading', 'checking', 'writing', 'dates')), CONSTRAINT "csv_import_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE TABLE "csv_import_end" ("import_id" uuid NOT NULL, "state" text NOT NULL, "code" text, "answer" jsonb, "ended_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT clock_timestamp(), CONSTRAINT "csv_import_end_state_known" CHECK (state IN ('done', 'refused', 'failed', 'cancelled')), CONSTRAINT "csv_import_end_pkey" PRIMARY KEY ("import_id"))`,
    );
    await runner.query(
      `CREATE TRIGGER csv_import_end_append_only BEFORE UPDATE OR DELETE ON csv_import_end FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
    );
    await runner.query(
      `CREATE TRIGGER csv_import_end_not_emptied BEFORE TRUNCATE ON csv_import_end FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`,
    );
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', ['csv_import', `SELECT 'import/' || id FROM changed`]);
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', ['csv_import_end', `SELECT 'import/' || import_id FROM changed`]);
    // In the middle of a large import nothing is known yet of how many rows there are: joining them row by row took four seconds for five thousand.
    await runner.query('ALTER FUNCTION note_item_update() SET enable_nestloop = off');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER FUNCTION note_item_update() RESET enable_nestloop');
    await runner.query('DROP TABLE csv_import_end');
    await runner.query('DROP TABLE csv_import');
  }
}
