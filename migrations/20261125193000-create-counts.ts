import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Hardware counted at return: append only, corrected by further records. */
export class CreateCounts20261125193000 implements MigrationInterface {
  name = 'CreateCounts20261125193000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "hardware_count" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "tour_id" text NOT NULL, "shows" text array NOT NULL, "key" text NOT NULL, "sent" integer NOT NULL, "returned" integer NOT NULL, "damaged" integer NOT NULL, "uses" integer NOT NULL, "corrects" bigint, "reason" text, "counted_by" text NOT NULL, "counted_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "hardware_count_corrects_unique" UNIQUE ("corrects"), CONSTRAINT "hardware_count_reason_with_correction" CHECK ((corrects IS NULL) = (reason IS NULL)), CONSTRAINT "hardware_count_adds_up" CHECK (0 <= damaged AND damaged <= returned AND returned <= sent AND uses >= 0), CONSTRAINT "hardware_count_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "hardware_count_tour_index" ON "hardware_count" ("tour_id", "id")`);
    await runner.query(
      `ALTER TABLE "hardware_count" ADD CONSTRAINT "hardware_count_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "hardware_count" ADD CONSTRAINT "hardware_count_corrects_fkey" FOREIGN KEY ("corrects") REFERENCES "hardware_count"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `CREATE TRIGGER hardware_count_append_only BEFORE UPDATE OR DELETE ON hardware_count FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "hardware_count"');
  }
}
