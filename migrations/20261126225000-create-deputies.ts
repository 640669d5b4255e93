import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Deputies of safety officers: by person and days, for a depot, a tour or the house; signed once, withdrawn once, never changed otherwise. */
export class CreateDeputies20261126225000 implements MigrationInterface {
  name = 'CreateDeputies20261126225000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of statements) await runner.query(statement);
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', ['deputy', `SELECT 'people' FROM changed`]);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "deputy"');
    await runner.query('DROP FUNCTION deputy_kept()');
    await runner.query('DROP FUNCTION officer_leaves(text[], text)');
  }
}

const statements = [
  `CREATE TABLE "deputy" ("id" uuid NOT NULL, "officer_id" uuid NOT NULL, "account_id" uuid NOT NULL, "from_day" date NOT NULL, "until_day" date NOT NULL, "time_zone" text NOT NULL, "depot" text, "tour_id" text, "reason" text NOT NULL, "named_by_id" uuid NOT NULL, "named_at" TIMESTAMP WITH TIME ZONE NOT NULL, "signed_by_id" uuid, "signed_at" TIMESTAMP WITH TIME ZONE, "withdrawn_by_id" uuid, "withdrawn_at" TIMESTAMP WITH TIME ZONE,
   CONSTRAINT "deputy_signed_by_two" CHECK (officer_id = named_by_id OR signed_by_id IS DISTINCT FROM named_by_id), CONSTRAINT "deputy_signed_whole" CHECK ((signed_at IS NULL) = (signed_by_id IS NULL)), CONSTRAINT "deputy_of_one_part" CHECK (depot IS NULL OR tour_id IS NULL), CONSTRAINT "deputy_is_another" CHECK (account_id <> officer_id AND account_id <> named_by_id AND account_id IS DISTINCT FROM signed_by_id), CONSTRAINT "deputy_days_in_order" CHECK (from_day <= until_day), CONSTRAINT "deputy_pkey" PRIMARY KEY ("id"))`,
  'CREATE INDEX "deputy_account_index" ON "deputy" ("account_id")',
  'ALTER TABLE "deputy" ADD CONSTRAINT "deputy_officer_fkey" FOREIGN KEY ("officer_id") REFERENCES "account"("id") ON DELETE NO ACTION ON UPDATE NO ACTION',
  'ALTER TABLE "deputy" ADD CONSTRAINT "deputy_account_fkey" FOREIGN KEY ("account_id") REFERENCES "account"("id") ON DELETE NO ACTION ON UPDATE NO ACTION',
  'ALTER TABLE "deputy" ADD CONSTRAINT "deputy_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE NO ACTION ON UPDATE NO ACTION',
  `CREATE FUNCTION deputy_kept() RETURNS trigger LANGUAGE plpgsql AS $$
    DECLARE open text[] := ARRAY['withdrawn_by_id', 'withdrawn_at'];
    BEGIN
      IF TG_OP = 'DELETE' OR OLD.withdrawn_at IS NOT NULL THEN RAISE EXCEPTION 'a deputy on record is kept as it is' USING ERRCODE = 'restrict_violation'; END IF;
      IF OLD.signed_at IS NULL THEN open := open || ARRAY['signed_by_id', 'signed_at']; END IF;
      IF to_jsonb(OLD) - open <> to_jsonb(NEW) - open THEN RAISE EXCEPTION 'a deputy is signed once and withdrawn once' USING ERRCODE = 'restrict_violation'; END IF;
      RETURN NEW;
    END $$`,
  'CREATE TRIGGER deputy_is_kept BEFORE UPDATE OR DELETE ON deputy FOR EACH ROW EXECUTE FUNCTION deputy_kept()',
  // A safety officer who leaves goes out of the names of deputies as well: "A, deputy of B" is written where A acted.
  `CREATE FUNCTION officer_leaves(known text[], label text) RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
    DECLARE one record; word text; suffix text; found bigint;
    BEGIN
      FOREACH word IN ARRAY known LOOP
        CONTINUE WHEN word = '' OR word = label;
        suffix := ', deputy of ' || word;
        FOR one IN SELECT * FROM (VALUES ('event', 'who'), ('pack_plan', 'released_by'), ('examination', 'recorded_by'), ('report_file', 'kept_by'),
            ('place_answer', 'decided_by')) AS names (tab, col) LOOP
          EXECUTE format('SELECT count(*) FROM %I WHERE right(%I, length($1)) = $1', one.tab, one.col) INTO found USING suffix;
          CONTINUE WHEN found = 0;
          EXECUTE format('ALTER TABLE %I DISABLE TRIGGER USER', one.tab);
          EXECUTE format('UPDATE %I SET %I = left(%I, -length($1)) || '', deputy of '' || $2 WHERE right(%I, length($1)) = $1', one.tab, one.col, one.col, one.col) USING suffix, label;
          EXECUTE format('ALTER TABLE %I ENABLE TRIGGER USER', one.tab);
        END LOOP;
        UPDATE model SET data = jsonb_set(data, '{approved,by}', to_jsonb(left(data #>> '{approved,by}', -length(suffix)) || ', deputy of ' || label))
          WHERE right(data #>> '{approved,by}', length(suffix)) = suffix;
        UPDATE rule SET data = jsonb_set(data, '{approved,by}', to_jsonb(left(data #>> '{approved,by}', -length(suffix)) || ', deputy of ' || label))
          WHERE right(data #>> '{approved,by}', length(suffix)) = suffix;
      END LOOP;
    END $$`,
];
