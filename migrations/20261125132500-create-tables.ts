import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The first tables. What TypeORM cannot say of them (append-only triggers, frozen revisions, text search) stands at the end. */
export class CreateTables20261125132500 implements MigrationInterface {
  name = 'CreateTables20261125132500';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of statements) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP SCHEMA public CASCADE');
    await runner.query('CREATE SCHEMA public');
  }
}

const statements = [
  'CREATE EXTENSION IF NOT EXISTS btree_gist',
  'CREATE EXTENSION IF NOT EXISTS pg_trgm',
  `CREATE TABLE "pack_plan" ("id" uuid NOT NULL, "tour_id" text NOT NULL, "show_id" text NOT NULL, "state" text NOT NULL, "revision" text, "made_at" TIMESTAMP WITH TIME ZONE NOT NULL, "made_by" text NOT NULL, "released_at" TIMESTAMP WITH TIME ZONE, "released_by" text, "plan" jsonb NOT NULL, CONSTRAINT "pack_plan_revision_unique" UNIQUE ("tour_id", "show_id", "revision"), CONSTRAINT "pack_plan_revision_when_released" CHECK ((state = 'draft') = (revision IS NULL)), CONSTRAINT "pack_plan_state_known" CHECK (state IN ('draft', 'released', 'superseded')), CONSTRAINT "pack_plan_pkey" PRIMARY KEY ("id"))`,
  `CREATE UNIQUE INDEX "pack_plan_one_draft" ON "pack_plan" ("tour_id", "show_id") WHERE state = 'draft'`,
  `CREATE UNIQUE INDEX "pack_plan_one_released" ON "pack_plan" ("tour_id", "show_id") WHERE state = 'released'`,
  `CREATE INDEX "pack_plan_show_index" ON "pack_plan" ("tour_id", "show_id")`,
  `CREATE TABLE "booking" ("id" uuid NOT NULL, "item_id" text NOT NULL, "tour_name" text NOT NULL, "period" daterange NOT NULL, "count" integer, CONSTRAINT "booking_item_tour_unique" UNIQUE ("item_id", "tour_name") DEFERRABLE INITIALLY DEFERRED, CONSTRAINT "booking_period_not_empty" CHECK (NOT isempty(period)), CONSTRAINT "booking_no_overlap" EXCLUDE USING gist (item_id WITH =, period WITH &&) WHERE (count IS NULL) DEFERRABLE INITIALLY DEFERRED, CONSTRAINT "booking_pkey" PRIMARY KEY ("id"))`,
  `CREATE INDEX "booking_tour_index" ON "booking" ("tour_name")`,
  `CREATE TABLE "cart_check" ("plan_id" uuid NOT NULL, "load" text NOT NULL, "checked_at" TIMESTAMP WITH TIME ZONE NOT NULL, "checked_by" text NOT NULL, CONSTRAINT "cart_check_pkey" PRIMARY KEY ("plan_id", "load"))`,
  `CREATE TABLE "tick" ("plan_id" uuid NOT NULL, "what" text NOT NULL, "ticked_at" TIMESTAMP WITH TIME ZONE NOT NULL, "ticked_by" text NOT NULL, CONSTRAINT "tick_pkey" PRIMARY KEY ("plan_id", "what"))`,
  `CREATE TABLE "model" ("kind" text NOT NULL, "model" text NOT NULL, "place" BIGSERIAL NOT NULL, "data" jsonb NOT NULL, CONSTRAINT "model_pkey" PRIMARY KEY ("kind", "model"))`,
  `CREATE TABLE "rule" ("kind" text NOT NULL, "id" text NOT NULL, "place" BIGSERIAL NOT NULL, "data" jsonb NOT NULL, CONSTRAINT "rule_kind_known" CHECK (kind IN ('system', 'examination', 'load')), CONSTRAINT "rule_pkey" PRIMARY KEY ("kind", "id"))`,
  `CREATE TABLE "item" ("id" text NOT NULL, "place" BIGSERIAL NOT NULL, "kind" text NOT NULL, "model" text NOT NULL, "state" text NOT NULL, "depot" text NOT NULL, "count" integer, "in_item" text, "stack_cart" text, "stack_slot" integer, "rest" jsonb NOT NULL, CONSTRAINT "item_count_positive" CHECK (count IS NULL OR count >= 0), CONSTRAINT "item_slot_with_cart" CHECK ((stack_cart IS NULL) = (stack_slot IS NULL)), CONSTRAINT "item_state_known" CHECK (state IN ('in service', 'quarantined', 'in repair', 'retired')), CONSTRAINT "item_pkey" PRIMARY KEY ("id"))`,
  `CREATE UNIQUE INDEX "item_slot_unique" ON "item" ("stack_cart", "stack_slot") WHERE stack_cart IS NOT NULL`,
  `CREATE INDEX "item_kind_index" ON "item" ("kind", "id")`,
  `CREATE TABLE "examination" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "item_id" text NOT NULL, "data" jsonb NOT NULL, "recorded_by" text NOT NULL, "recorded_at" TIMESTAMP WITH TIME ZONE NOT NULL, "supersedes" bigint, CONSTRAINT "examination_pkey" PRIMARY KEY ("id"))`,
  `CREATE INDEX "examination_item_index" ON "examination" ("item_id", "id")`,
  `CREATE TABLE "incident" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "item_id" text NOT NULL, "on_day" date NOT NULL, "what" text NOT NULL, CONSTRAINT "incident_pkey" PRIMARY KEY ("id"))`,
  `CREATE INDEX "incident_item_index" ON "incident" ("item_id", "id")`,
  `CREATE TABLE "tour" ("id" text NOT NULL, "name" text NOT NULL, "prep_from" date NOT NULL, "return_to" date NOT NULL, "version" integer NOT NULL, "data" jsonb NOT NULL, "written" jsonb, CONSTRAINT "tour_name_unique" UNIQUE ("name"), CONSTRAINT "tour_dates_in_order" CHECK (prep_from <= return_to), CONSTRAINT "tour_pkey" PRIMARY KEY ("id"))`,
  `CREATE TABLE "event" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "at" TIMESTAMP WITH TIME ZONE NOT NULL, "who" text NOT NULL, "what" text NOT NULL, "sentence" text NOT NULL, "item_id" text, "tour_id" text, "place" text, CONSTRAINT "event_pkey" PRIMARY KEY ("id"))`,
  `CREATE INDEX "event_tour_index" ON "event" ("tour_id", "id")`,
  `CREATE INDEX "event_item_index" ON "event" ("item_id", "id")`,
  `CREATE TABLE "account" ("id" uuid NOT NULL, "email" text NOT NULL, "name" text NOT NULL, "role" text NOT NULL, "password_hash" text NOT NULL, CONSTRAINT "account_email_unique" UNIQUE ("email"), CONSTRAINT "account_role_known" CHECK (role IN ('warehouse', 'system', 'safety')), CONSTRAINT "account_pkey" PRIMARY KEY ("id"))`,
  `CREATE TABLE "session" ("token_hash" text NOT NULL, "account_id" uuid NOT NULL, "expires_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "session_pkey" PRIMARY KEY ("token_hash"))`,
  `CREATE INDEX "session_account_index" ON "session" ("account_id")`,
  `ALTER TABLE "pack_plan" ADD CONSTRAINT "pack_plan_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
  `ALTER TABLE "cart_check" ADD CONSTRAINT "cart_check_plan_fkey" FOREIGN KEY ("plan_id") REFERENCES "pack_plan"("id") ON DELETE CASCADE ON UPDATE NO ACTION`,
  `ALTER TABLE "tick" ADD CONSTRAINT "tick_plan_fkey" FOREIGN KEY ("plan_id") REFERENCES "pack_plan"("id") ON DELETE CASCADE ON UPDATE NO ACTION`,
  `ALTER TABLE "examination" ADD CONSTRAINT "examination_item_fkey" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
  `ALTER TABLE "incident" ADD CONSTRAINT "incident_item_fkey" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
  `ALTER TABLE "session" ADD CONSTRAINT "session_account_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE CASCADE ON UPDATE NO ACTION`,
  `CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      RAISE EXCEPTION '% is append only', TG_TABLE_NAME USING ERRCODE = 'restrict_violation', CONSTRAINT = TG_TABLE_NAME || '_append_only';
    END $$`,
  `CREATE TRIGGER event_append_only BEFORE UPDATE OR DELETE ON event FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
  `CREATE TRIGGER examination_append_only BEFORE UPDATE OR DELETE ON examination FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
  `CREATE TRIGGER incident_append_only BEFORE UPDATE OR DELETE ON incident FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
  `CREATE FUNCTION keep_released_plan() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      IF OLD.state <> 'draft' AND (TG_OP = 'DELETE' OR NEW.plan IS DISTINCT FROM OLD.plan OR NEW.revision IS DISTINCT FROM OLD.revision
        OR NEW.released_at IS DISTINCT FROM OLD.released_at OR NEW.state = 'draft' OR (OLD.state = 'superseded' AND NEW.state <> 'superseded')) THEN
        RAISE EXCEPTION 'a released revision never changes' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'pack_plan_released_kept';
      END IF;
      IF TG_OP = 'DELETE' THEN RETURN OLD; END IF;
      RETURN NEW;
    END $$`,
  `CREATE TRIGGER pack_plan_released_kept BEFORE UPDATE OR DELETE ON pack_plan FOR EACH ROW EXECUTE FUNCTION keep_released_plan()`,
];
