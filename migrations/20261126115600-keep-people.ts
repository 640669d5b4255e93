import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * People can be disabled, leave, and get a one-time password from another; sessions are listed and end; tries at the door are counted for all APIs
 * together; a safety officer is made by two. Of people of one name, those after the first are told apart by a number.
 */
export class KeepPeople20261126115600 implements MigrationInterface {
  name = 'KeepPeople20261126115600';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of statements) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP FUNCTION person_leaves(uuid)');
    await runner.query('DROP TRIGGER account_officer_by_two ON account');
    await runner.query('DROP FUNCTION officer_by_two()');
    await runner.query('DROP TABLE "officer_proposal"');
    await runner.query('DROP TABLE "sign_in_try"');
    for (const column of ['id', 'opened_at', 'seen_at', 'address', 'device', 'ended_at'])
      await runner.query(`ALTER TABLE "session" DROP COLUMN "${column}"`);
    await runner.query('DROP INDEX "account_name_unique"');
    for (const column of ['disabled_at', 'must_change', 'password_until', 'left_number'])
      await runner.query(`ALTER TABLE "account" DROP COLUMN "${column}"`);
  }
}

const statements = [
  `ALTER TABLE "account" ADD "disabled_at" TIMESTAMP WITH TIME ZONE`,
  `ALTER TABLE "account" ADD "must_change" boolean NOT NULL DEFAULT false`,
  `ALTER TABLE "account" ADD "password_until" TIMESTAMP WITH TIME ZONE`,
  `ALTER TABLE "account" ADD "left_number" integer`,
  `UPDATE account SET name = account.name || ' (' || numbered.number || ')'
   FROM (SELECT id, row_number() OVER (PARTITION BY lower(name) ORDER BY id) AS number FROM account) numbered
   WHERE numbered.id = account.id AND numbered.number > 1`,
  `CREATE UNIQUE INDEX "account_name_unique" ON "account" (lower("name"))`,
  `ALTER TABLE "session" ADD "id" uuid, ADD "opened_at" TIMESTAMP WITH TIME ZONE, ADD "seen_at" TIMESTAMP WITH TIME ZONE, ADD "address" text, ADD "device" text, ADD "ended_at" TIMESTAMP WITH TIME ZONE`,
  `UPDATE session SET id = gen_random_uuid(), opened_at = now(), seen_at = now(), address = '', device = ''`,
  `ALTER TABLE "session" ALTER "id" SET NOT NULL, ALTER "opened_at" SET NOT NULL, ALTER "seen_at" SET NOT NULL, ALTER "address" SET NOT NULL, ALTER "device" SET NOT NULL`,
  `CREATE TABLE "sign_in_try" ("key" text NOT NULL, "count" integer NOT NULL, "until" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "sign_in_try_pkey" PRIMARY KEY ("key"))`,
  `CREATE INDEX "sign_in_try_until_index" ON "sign_in_try" ("until")`,
  `CREATE TABLE "officer_proposal" ("id" uuid NOT NULL, "account_id" uuid NOT NULL, "proposed_by_id" uuid NOT NULL, "proposed_by" text NOT NULL, "proposed_at" TIMESTAMP WITH TIME ZONE NOT NULL, "decided_by_id" uuid, "decided_by" text, "decided_at" TIMESTAMP WITH TIME ZONE, "accepted" boolean, CONSTRAINT "officer_proposal_pkey" PRIMARY KEY ("id"),
   CONSTRAINT "officer_proposal_by_two" CHECK (decided_by_id <> proposed_by_id AND decided_by_id <> account_id AND proposed_by_id <> account_id))`,
  `CREATE INDEX "officer_proposal_account_index" ON "officer_proposal" ("account_id")`,
  // The first officer of a house needs nobody; every other one needs a proposal that another officer has accepted.
  `CREATE FUNCTION officer_by_two() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      IF EXISTS (SELECT FROM account WHERE role = 'safety' AND disabled_at IS NULL AND id <> NEW.id)
        AND NOT EXISTS (SELECT FROM officer_proposal p JOIN account a ON a.id = p.decided_by_id
                        WHERE p.account_id = NEW.id AND p.accepted AND a.role = 'safety' AND a.disabled_at IS NULL)
      THEN RAISE EXCEPTION 'a safety officer is made by two' USING ERRCODE = '23514', CONSTRAINT = 'account_officer_by_two'; END IF;
      RETURN NEW;
    END $$`,
  `CREATE TRIGGER account_officer_by_two BEFORE INSERT OR UPDATE OF role ON account FOR EACH ROW WHEN (NEW.role = 'safety') EXECUTE FUNCTION officer_by_two()`,
  `CREATE FUNCTION person_leaves(person uuid) RETURNS text LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
    DECLARE label text; known text[]; written text[]; one record; word text; pattern text; found bigint;
    BEGIN
      UPDATE account SET left_number = (SELECT count(left_number) + 1 FROM account) WHERE id = person AND left_number IS NULL;
      SELECT 'Person ' || left_number || ' (left)', ARRAY[name] INTO label, known FROM account WHERE id = person;
      FOR one IN SELECT * FROM (VALUES ('event', 'who', 'person_id'), ('pack_plan', 'made_by', 'made_by_id'), ('pack_plan', 'released_by', 'released_by_id'),
          ('cart_check', 'checked_by', 'checked_by_id'), ('tick', 'ticked_by', 'ticked_by_id'), ('examination', 'recorded_by', 'recorded_by_id'),
          ('report_file', 'kept_by', 'kept_by_id'), ('loading_act', 'who', 'person_id'), ('load_reading', 'read_by', 'read_by_id'),
          ('sign_off', 'signed_by', 'signed_by_id'), ('hardware_count', 'counted_by', 'counted_by_id'), ('job', 'asked_by', 'asked_by_id'),
          ('officer_proposal', 'proposed_by', 'proposed_by_id'), ('officer_proposal', 'decided_by', 'decided_by_id')) AS names (tab, col, id_col) LOOP
        EXECUTE format('SELECT array_agg(DISTINCT %I) FILTER (WHERE %I IS NOT NULL), count(*) FROM %I WHERE %I = $1', one.col, one.col, one.tab, one.id_col)
          INTO written, found USING person;
        IF found > 0 THEN
          known := known || COALESCE(written, '{}');
          EXECUTE format('ALTER TABLE %I DISABLE TRIGGER USER', one.tab);
          EXECUTE format('UPDATE %I SET %I = $1 WHERE %I = $2', one.tab, one.col, one.id_col) USING label, person;
          EXECUTE format('ALTER TABLE %I ENABLE TRIGGER USER', one.tab);
        END IF;
      END LOOP;
      known := ARRAY(SELECT DISTINCT each FROM unnest(known) each WHERE each <> '' AND each <> label);
      FOREACH word IN ARRAY known LOOP
        pattern := '(?<!\\w)' || regexp_replace(word, '([^[:alnum:][:space:]])', '\\\\\\1', 'g') || '(?!\\w)';
        ALTER TABLE event DISABLE TRIGGER USER;
        -- A name of one word may be another word as well: such a name is looked for where people are written of, no further.
        UPDATE event SET sentence = regexp_replace(sentence, pattern, label, 'g')
          WHERE position(word IN sentence) > 0 AND (word LIKE '% %' OR what = 'person' OR what IN ('added', 'renamed'));
        ALTER TABLE event ENABLE TRIGGER USER;
        UPDATE model SET data = jsonb_set(data, '{approved,by}', to_jsonb(label)) WHERE data -> 'approved' ->> 'by' = word;
        IF word LIKE '% %' THEN
          FOR one IN SELECT * FROM (VALUES ('pack_plan', 'plan'), ('plan_part', 'data'), ('tour', 'data'), ('tour', 'written'), ('loading_act', 'act')) AS places (tab, col)
              WHERE EXISTS (SELECT FROM information_schema.columns c WHERE c.table_schema = 'public' AND c.table_name = tab AND c.column_name = col AND c.data_type = 'jsonb') LOOP
            EXECUTE format('ALTER TABLE %I DISABLE TRIGGER USER', one.tab);
            EXECUTE format('UPDATE %I SET %I = regexp_replace(%I::text, $1, $2, ''g'')::jsonb WHERE position($3 IN %I::text) > 0', one.tab, one.col, one.col, one.col)
              USING pattern, label, word;
            EXECUTE format('ALTER TABLE %I ENABLE TRIGGER USER', one.tab);
          END LOOP;
        END IF;
      END LOOP;
      UPDATE account SET name = label, email = 'left-' || left_number, password_hash = '', must_change = false, disabled_at = COALESCE(disabled_at, now()) WHERE id = person;
      DELETE FROM session WHERE account_id = person;
      INSERT INTO change (topic) VALUES ('*');
      PERFORM pg_notify('change', '');
      RETURN label;
    END $$`,
];
