import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What people at the dock want of the trucks, act by act; never changed, never removed. */
export class CreateLoading20261125190000 implements MigrationInterface {
  name = 'CreateLoading20261125190000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "loading_act" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "tour_id" text NOT NULL, "show_id" text NOT NULL, "at" TIMESTAMP WITH TIME ZONE NOT NULL, "who" text NOT NULL, "act" jsonb NOT NULL, CONSTRAINT "loading_act_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "loading_act_tour_index" ON "loading_act" ("tour_id", "id")`);
    await runner.query(
      `ALTER TABLE "loading_act" ADD CONSTRAINT "loading_act_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `CREATE TRIGGER loading_act_append_only BEFORE UPDATE OR DELETE ON loading_act FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "loading_act"');
  }
}
