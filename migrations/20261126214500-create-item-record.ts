import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What the dates of an item follow from, kept beside them: without the records that no longer set any. Worked out with the dates when they are next read. */
export class CreateItemRecord20261126214500 implements MigrationInterface {
  name = 'CreateItemRecord20261126214500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "item_record" ("item_id" text NOT NULL, "facts" jsonb NOT NULL, CONSTRAINT "item_record_pkey" PRIMARY KEY ("item_id"))`,
    );
    await runner.query(
      `ALTER TABLE "item_record" ADD CONSTRAINT "item_record_item_fkey" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE CASCADE ON UPDATE NO ACTION`,
    );
    await runner.query(`UPDATE item SET due_known = false WHERE due_known`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "item_record"');
  }
}
