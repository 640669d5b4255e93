import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Reports of examinations, kept as they were handed in. */
export class CreateReportFile20261125161500 implements MigrationInterface {
  name = 'CreateReportFile20261125161500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "report_file" ("id" uuid NOT NULL, "item_id" text NOT NULL, "name" text NOT NULL, "type" text NOT NULL, "bytes" bytea NOT NULL, "kept_by" text NOT NULL, "kept_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "report_file_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "report_file_item_index" ON "report_file" ("item_id")`);
    await runner.query(
      `ALTER TABLE "report_file" ADD CONSTRAINT "report_file_item_fkey" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `CREATE TRIGGER report_file_append_only BEFORE UPDATE OR DELETE ON report_file FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "report_file"');
  }
}
