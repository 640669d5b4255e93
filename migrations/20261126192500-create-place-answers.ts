import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A place without rules on file is judged on a tour by those of another, as the safety officer answers; every answer is kept, the newest counts. */
export class CreatePlaceAnswers20261126192500 implements MigrationInterface {
  name = 'CreatePlaceAnswers20261126192500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "place_answer" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "tour_id" text NOT NULL, "place" text NOT NULL, "rules_of" text, "because" text NOT NULL, "decided_by" text NOT NULL, "decided_by_id" uuid, "decided_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "place_answer_of_another_place" CHECK (rules_of <> place), CONSTRAINT "place_answer_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query('CREATE INDEX "place_answer_tour_index" ON "place_answer" ("tour_id", "place", "id")');
    await runner.query(
      `ALTER TABLE "place_answer" ADD CONSTRAINT "place_answer_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      'CREATE TRIGGER place_answer_append_only BEFORE UPDATE OR DELETE ON place_answer FOR EACH ROW EXECUTE FUNCTION refuse_change()',
    );
    await runner.query(
      'CREATE TRIGGER place_answer_notes_inputs AFTER INSERT ON place_answer REFERENCING NEW TABLE AS after FOR EACH STATEMENT EXECUTE FUNCTION note_tour_change()',
    );
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', ['place_answer', `SELECT 'tour/' || tour_id FROM changed`]);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "place_answer"');
  }
}
