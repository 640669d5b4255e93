import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What was done on the way up and out although it was barred meanwhile, by a device that could not know: kept as that, and never a tick or a signature. */
export class CreateBarredActs20261126225100 implements MigrationInterface {
  name = 'CreateBarredActs20261126225100';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "barred_act" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "tour_id" text NOT NULL, "show_id" text NOT NULL, "plan_id" uuid NOT NULL, "hang" text, "what" text NOT NULL, "words" text NOT NULL, "items" jsonb NOT NULL, "done_by_id" uuid NOT NULL, "done_at" TIMESTAMP WITH TIME ZONE NOT NULL, "told_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "barred_act_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query('CREATE INDEX "barred_act_show_index" ON "barred_act" ("tour_id", "show_id")');
    await runner.query(
      'CREATE TRIGGER barred_act_append_only BEFORE UPDATE OR DELETE ON barred_act FOR EACH ROW EXECUTE FUNCTION refuse_change()',
    );
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', [
      'barred_act',
      `SELECT unnest(ARRAY['show/' || tour_id || '/' || show_id, 'done/' || plan_id]) FROM changed`,
    ]);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "barred_act"');
  }
}
