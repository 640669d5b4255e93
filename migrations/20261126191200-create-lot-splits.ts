import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Some pieces of a batch go another way than the rest: both parts know where they came from. */
export class CreateLotSplits20261126191200 implements MigrationInterface {
  name = 'CreateLotSplits20261126191200';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "lot_split" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "parent_id" text NOT NULL, "child_id" text NOT NULL, "pieces" integer NOT NULL, "of_pieces" integer NOT NULL, "state" text NOT NULL, "reason" text NOT NULL, "made_by_id" uuid, "made_at" TIMESTAMP WITH TIME ZONE NOT NULL, "through_event" bigint NOT NULL, CONSTRAINT "lot_split_child_unique" UNIQUE ("child_id"), CONSTRAINT "lot_split_pieces_of_more" CHECK (pieces > 0 AND pieces < of_pieces), CONSTRAINT "lot_split_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query('CREATE INDEX "lot_split_parent_index" ON "lot_split" ("parent_id")');
    for (const end of ['parent', 'child'])
      await runner.query(
        `ALTER TABLE "lot_split" ADD CONSTRAINT "lot_split_${end}_fkey" FOREIGN KEY ("${end}_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
      );
    await runner.query(
      'CREATE TRIGGER lot_split_append_only BEFORE UPDATE OR DELETE ON lot_split FOR EACH ROW EXECUTE FUNCTION refuse_change()',
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "lot_split"');
  }
}
