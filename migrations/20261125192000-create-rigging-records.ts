import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Load-cell readings beside the computed loads; inspections after assembly and handovers, signed. */
export class CreateRiggingRecords20261125192000 implements MigrationInterface {
  name = 'CreateRiggingRecords20261125192000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "load_reading" ("id" uuid NOT NULL, "plan_id" uuid NOT NULL, "hang" text NOT NULL, "hole" text NOT NULL, "place" text NOT NULL, "reading_kg" double precision NOT NULL, "read_at" TIMESTAMP WITH TIME ZONE NOT NULL, "read_by" text NOT NULL, CONSTRAINT "load_reading_place_known" CHECK (place IN ('at the hook', 'above the hoist')), CONSTRAINT "load_reading_positive" CHECK (reading_kg >= 0), CONSTRAINT "load_reading_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "load_reading_plan_index" ON "load_reading" ("plan_id")`);
    await runner.query(
      `ALTER TABLE "load_reading" ADD CONSTRAINT "load_reading_plan_fkey" FOREIGN KEY ("plan_id") REFERENCES "pack_plan"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `CREATE TABLE "sign_off" ("id" uuid NOT NULL, "plan_id" uuid NOT NULL, "hang" text NOT NULL, "kind" text NOT NULL, "name" text NOT NULL, "remark" text NOT NULL, "signed_at" TIMESTAMP WITH TIME ZONE NOT NULL, "signed_by" text NOT NULL, CONSTRAINT "sign_off_kind_known" CHECK (kind IN ('inspected', 'handed over')), CONSTRAINT "sign_off_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "sign_off_plan_index" ON "sign_off" ("plan_id")`);
    await runner.query(
      `ALTER TABLE "sign_off" ADD CONSTRAINT "sign_off_plan_fkey" FOREIGN KEY ("plan_id") REFERENCES "pack_plan"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    for (const table of ['load_reading', 'sign_off'])
      await runner.query(
        `CREATE TRIGGER ${table}_append_only BEFORE UPDATE OR DELETE ON ${table} FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
      );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "sign_off"');
    await runner.query('DROP TABLE "load_reading"');
  }
}
