import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Days on which an examiner may come, or comes, to a depot or a show, with the list of what he sees there; what was entered on that list; and calendars
 * that people subscribe to, each under an address of its own of which the hash alone is kept, with every entry that was ever sent.
 */
export class CreateVisits20261126185200 implements MigrationInterface {
  name = 'CreateVisits20261126185200';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of statements) await runner.query(statement);
    for (const [table, topics] of Object.entries(topicsOf)) await runner.query('SELECT tell_changes_of($1::regclass, $2)', [table, topics]);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const table of ['calendar_entry', 'calendar_feed', 'visit_line', 'visit']) await runner.query(`DROP TABLE "${table}"`);
  }
}

const topicsOf: Readonly<Record<string, string>> = {
  visit: `SELECT 'visit' FROM changed`,
  visit_line: `SELECT 'visit' FROM changed`,
  calendar_feed: `SELECT 'people' FROM changed`,
};

const statements = [
  `CREATE TABLE "visit" ("id" uuid NOT NULL, "on_day" date NOT NULL, "depot" text, "tour_id" text, "show_id" text, "state" text NOT NULL, "remark" text, "list" jsonb, "version" integer NOT NULL DEFAULT 1, "changed_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "visit_state_known" CHECK (state IN ('possible', 'agreed', 'cancelled')), CONSTRAINT "visit_at_one_place" CHECK ((depot IS NULL) = (tour_id IS NOT NULL) AND (tour_id IS NULL) = (show_id IS NULL)), CONSTRAINT "visit_list_where_agreed" CHECK (state <> 'agreed' OR list IS NOT NULL), CONSTRAINT "visit_pkey" PRIMARY KEY ("id"))`,
  `CREATE INDEX "visit_day_index" ON "visit" ("on_day")`,
  `ALTER TABLE "visit" ADD CONSTRAINT "visit_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE CASCADE ON UPDATE NO ACTION`,
  `CREATE TABLE "visit_line" ("visit_id" uuid NOT NULL, "item_id" text NOT NULL, "examination_id" bigint NOT NULL, "remark" text, CONSTRAINT "visit_line_pkey" PRIMARY KEY ("visit_id", "item_id"))`,
  `ALTER TABLE "visit_line" ADD CONSTRAINT "visit_line_visit_fkey" FOREIGN KEY ("visit_id") REFERENCES "visit"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
  `ALTER TABLE "visit_line" ADD CONSTRAINT "visit_line_examination_fkey" FOREIGN KEY ("examination_id") REFERENCES "examination"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
  `CREATE TRIGGER visit_line_append_only BEFORE UPDATE OR DELETE ON visit_line FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
  `CREATE TABLE "calendar_feed" ("id" uuid NOT NULL, "account_id" uuid NOT NULL, "token_hash" text NOT NULL, "depot" text, "made_at" TIMESTAMP WITH TIME ZONE NOT NULL, "withdrawn_at" TIMESTAMP WITH TIME ZONE, CONSTRAINT "calendar_feed_token_unique" UNIQUE ("token_hash"), CONSTRAINT "calendar_feed_pkey" PRIMARY KEY ("id"))`,
  `CREATE INDEX "calendar_feed_account_index" ON "calendar_feed" ("account_id")`,
  `ALTER TABLE "calendar_feed" ADD CONSTRAINT "calendar_feed_account_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE CASCADE ON UPDATE NO ACTION`,
  `CREATE TABLE "calendar_entry" ("uid" text NOT NULL, "depot" text, "on_day" date NOT NULL, "sequence" integer NOT NULL, "content" jsonb NOT NULL, "is_cancelled" boolean NOT NULL DEFAULT false, "changed_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "calendar_entry_pkey" PRIMARY KEY ("uid"))`,
  `CREATE INDEX "calendar_entry_day_index" ON "calendar_entry" ("on_day")`,
];
