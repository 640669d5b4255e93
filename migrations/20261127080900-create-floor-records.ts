import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What was seen of an item on the floor: that it came back, a fault of it, a test of it. Later records stand beside earlier ones. */
export class CreateFloorRecords20261127080900 implements MigrationInterface {
  name = 'CreateFloorRecords20261127080900';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "floor_record" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "tour_id" text, "show_id" text, "item_id" text NOT NULL, "kind" text NOT NULL, "data" jsonb NOT NULL, "at" TIMESTAMP WITH TIME ZONE NOT NULL, "done_at" TIMESTAMP WITH TIME ZONE, "by_id" uuid NOT NULL, CONSTRAINT "floor_record_kind_known" CHECK (kind IN ('returned', 'fault', 'bench', 'trunk', 'splays')), CONSTRAINT "floor_record_show_whole" CHECK ((tour_id IS NULL) = (show_id IS NULL)), CONSTRAINT "floor_record_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query('CREATE INDEX "floor_record_show_index" ON "floor_record" ("tour_id", "show_id", "kind")');
    await runner.query('CREATE INDEX "floor_record_item_index" ON "floor_record" ("item_id", "kind", "id")');
    await runner.query(
      'ALTER TABLE "floor_record" ADD CONSTRAINT "floor_record_item_fkey" FOREIGN KEY ("item_id") REFERENCES "item"("id")',
    );
    await runner.query(
      'CREATE TRIGGER floor_record_append_only BEFORE UPDATE OR DELETE ON floor_record FOR EACH ROW EXECUTE FUNCTION refuse_change()',
    );
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', [
      'floor_record',
      `SELECT 'item/' || item_id FROM changed UNION ALL SELECT 'floor/' || tour_id || '/' || show_id FROM changed WHERE tour_id IS NOT NULL
       UNION ALL SELECT 'show/' || tour_id || '/' || show_id FROM changed WHERE tour_id IS NOT NULL AND kind = 'returned'`,
    ]);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "floor_record"');
  }
}
