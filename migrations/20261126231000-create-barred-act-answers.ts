import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What the safety officer, or a deputy, says of something done although barred: once for each, kept as it is. */
export class CreateBarredActAnswers20261126231000 implements MigrationInterface {
  name = 'CreateBarredActAnswers20261126231000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "barred_act_answer" ("act_id" bigint NOT NULL, "because" text NOT NULL, "answered_by_id" uuid NOT NULL, "answered_for_id" uuid, "answered_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "barred_act_answer_pkey" PRIMARY KEY ("act_id"))`,
    );
    await runner.query(
      `ALTER TABLE "barred_act_answer" ADD CONSTRAINT "barred_act_answer_act_fkey" FOREIGN KEY ("act_id") REFERENCES "barred_act"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      'CREATE TRIGGER barred_act_answer_append_only BEFORE UPDATE OR DELETE ON barred_act_answer FOR EACH ROW EXECUTE FUNCTION refuse_change()',
    );
    // Told to whoever looks at any plan of the show: it stands in the notes of all of them.
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', [
      'barred_act_answer',
      `SELECT unnest(ARRAY['show/' || act.tour_id || '/' || act.show_id, 'done/' || plan.id]) FROM changed JOIN barred_act act ON act.id = changed.act_id
       JOIN pack_plan plan ON plan.tour_id = act.tour_id AND plan.show_id = act.show_id`,
    ]);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "barred_act_answer"');
  }
}
