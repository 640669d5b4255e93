import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * One log of everything: beside each act stand the rows that it changed, with what was there before and after, written by the tables' own triggers
 * inside the transaction of the act. `log_tables` gives every table its triggers but those that are left out. Lines are sealed in batches: `seal` is a
 * chain of hashes over the lines of `sealed_line`.
 */
export class LogEveryChange20261126175200 implements MigrationInterface {
  name = 'LogEveryChange20261126175200';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [...columns, ...differing, ...triggers, ...seals, ...leaving]) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const statement of back) await runner.query(statement);
  }
}

const columns = [
  `CREATE FUNCTION act_id() RETURNS uuid LANGUAGE sql VOLATILE AS $$
     SELECT coalesce(nullif(current_setting('cartwright.act', true), ''), set_config('cartwright.act', gen_random_uuid()::text, true))::uuid $$`,
  `CREATE FUNCTION new_salt() RETURNS uuid LANGUAGE sql VOLATILE AS $$ SELECT gen_random_uuid() $$`,
  // Lines from before belong to an act each.
  `ALTER TABLE "event" ADD "act" uuid NOT NULL DEFAULT gen_random_uuid(), ADD "salt" uuid NOT NULL DEFAULT new_salt(), ADD "via" text,
     ADD "done_at" TIMESTAMP WITH TIME ZONE, ADD "show_id" text, ADD "row_table" text, ADD "row_key" text, ADD "before" jsonb, ADD "after" jsonb`,
  `ALTER TABLE "event" ALTER "act" SET DEFAULT act_id()`,
  `CREATE INDEX "event_act_index" ON "event" ("act")`,
  `CREATE INDEX "event_said_index" ON "event" ("id") WHERE what <> 'row'`,
  `CREATE INDEX "event_person_index" ON "event" ("person_id", "id")`,
  `CREATE INDEX "event_row_index" ON "event" ("row_table", "row_key")`,
  `CREATE INDEX "event_at_index" ON "event" ("at")`,
];

const shortened = 2000;

/** What differs of two values, each side with the fields that differ alone; what is long is told by its length and hash. */
const differing = [
  `CREATE FUNCTION log_short(value jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
     SELECT CASE WHEN length(value::text) <= ${shortened} THEN value
       ELSE jsonb_build_object('characters', length(value::text), 'sha256', encode(sha256(convert_to(value::text, 'UTF8')), 'hex')) END $$`,
  `CREATE FUNCTION log_short_fields(value jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
     SELECT CASE WHEN length(value::text) <= ${shortened} THEN jsonb_strip_nulls(value)
       ELSE jsonb_strip_nulls((SELECT jsonb_object_agg(field, log_short(each)) FROM jsonb_each(value) AS fields (field, each))) END $$`,
  // Lists of things with an id are compared by id, others whole.
  `CREATE FUNCTION log_keyed(value jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
     SELECT CASE WHEN jsonb_typeof(value) = 'array' AND jsonb_array_length(value) > 0
         AND NOT EXISTS (SELECT FROM jsonb_array_elements(value) AS every (each) WHERE jsonb_typeof(each) <> 'object' OR each ->> 'id' IS NULL)
         AND (SELECT count(*) = count(DISTINCT each ->> 'id') FROM jsonb_array_elements(value) AS every (each))
       THEN (SELECT jsonb_object_agg(each ->> 'id', each) FROM jsonb_array_elements(value) AS every (each)) ELSE value END $$`,
  `CREATE FUNCTION log_differing(was jsonb, is_now jsonb, OUT before jsonb, OUT after jsonb) LANGUAGE plpgsql IMMUTABLE AS $$
    DECLARE field text; one jsonb; other jsonb; inner_before jsonb; inner_after jsonb;
    BEGIN
      before := '{}'; after := '{}';
      FOR field IN SELECT jsonb_object_keys(was) UNION SELECT jsonb_object_keys(is_now) ORDER BY 1 LOOP
        one := nullif(was -> field, 'null'); other := nullif(is_now -> field, 'null');
        CONTINUE WHEN one IS NOT DISTINCT FROM other;
        IF jsonb_typeof(one) = 'array' AND jsonb_typeof(other) = 'array' THEN
          inner_before := log_keyed(one); inner_after := log_keyed(other);
          IF jsonb_typeof(inner_before) = 'object' AND jsonb_typeof(inner_after) = 'object' AND inner_before <> inner_after THEN one := inner_before; other := inner_after; END IF;
        END IF;
        IF jsonb_typeof(one) = 'object' AND jsonb_typeof(other) = 'object' THEN
          SELECT d.before, d.after INTO inner_before, inner_after FROM log_differing(one, other) d;
          before := before || jsonb_build_object(field, inner_before); after := after || jsonb_build_object(field, inner_after);
        ELSE
          IF one IS NOT NULL THEN before := before || jsonb_build_object(field, log_short(one)); END IF;
          IF other IS NOT NULL THEN after := after || jsonb_build_object(field, log_short(other)); END IF;
        END IF;
      END LOOP;
    END $$`,
];

const triggers = [
  // What a row concerns, by the names of its columns.
  `CREATE FUNCTION log_item(table_name text, given jsonb) RETURNS text LANGUAGE sql IMMUTABLE AS $$
     SELECT CASE WHEN table_name = 'item' THEN given ->> 'id' WHEN table_name IN ('proposal', 'edition') AND given ->> 'kind' IN ('item', 'record') THEN given ->> 'subject'
       ELSE given ->> 'item_id' END $$`,
  `CREATE FUNCTION log_tour(table_name text, given jsonb) RETURNS text LANGUAGE sql STABLE AS $$
     SELECT CASE WHEN table_name = 'tour' THEN given ->> 'id' WHEN given ->> 'holder_kind' = 'tour' THEN given ->> 'holder_id' WHEN given ? 'tour_id' THEN given ->> 'tour_id'
       WHEN given ? 'plan_id' THEN (SELECT tour_id FROM pack_plan WHERE id = (given ->> 'plan_id')::uuid) END $$`,
  `CREATE FUNCTION log_show(given jsonb) RETURNS text LANGUAGE sql STABLE AS $$
     SELECT CASE WHEN given ? 'show_id' THEN given ->> 'show_id' WHEN given ? 'plan_id' THEN (SELECT show_id FROM pack_plan WHERE id = (given ->> 'plan_id')::uuid) END $$`,
  // Arguments: what of a row is read (a select list), and the columns of its key.
  `CREATE FUNCTION log_change() RETURNS trigger LANGUAGE plpgsql AS $$
    DECLARE pairs text; keys text[] := TG_ARGV[1]::text[]; work text := CASE WHEN current_setting('application_name') LIKE 'cartwright%' THEN 'row' ELSE 'outside' END;
    BEGIN
      IF TG_OP = 'INSERT' THEN pairs := format('SELECT NULL::jsonb, to_jsonb(r) FROM (SELECT %s FROM is_now) r', TG_ARGV[0]);
      ELSIF TG_OP = 'DELETE' THEN pairs := format('SELECT to_jsonb(r), NULL::jsonb FROM (SELECT %s FROM was) r', TG_ARGV[0]);
      ELSE pairs := format('SELECT o.j, n.j FROM (SELECT log_key(to_jsonb(r), %L) AS k, to_jsonb(r) AS j FROM (SELECT %s FROM was) r) o
          FULL JOIN (SELECT log_key(to_jsonb(r), %L) AS k, to_jsonb(r) AS j FROM (SELECT %s FROM is_now) r) n USING (k)
          WHERE o.j IS DISTINCT FROM n.j', keys, TG_ARGV[0], keys, TG_ARGV[0]);
      END IF;
      EXECUTE format($f$INSERT INTO event (at, who, what, sentence, item_id, tour_id, show_id, row_table, row_key, before, after)
        SELECT now(), CASE $1 WHEN 'row' THEN '' ELSE session_user END, $1, '', log_item($2, given), log_tour($2, given), log_show(given), $2, log_key(given, $3), d.before, d.after
        FROM (%s) pair (o, n), LATERAL (SELECT coalesce(n, o) AS given) g,
          LATERAL (SELECT e.before, e.after FROM log_differing(o, n) e WHERE o IS NOT NULL AND n IS NOT NULL
                   UNION ALL SELECT log_short_fields(o), log_short_fields(n) WHERE o IS NULL OR n IS NULL) d$f$, pairs)
        USING work, TG_TABLE_NAME::text, keys;
      RETURN NULL;
    END $$`,
  `CREATE FUNCTION log_key(given jsonb, keys text[]) RETURNS text LANGUAGE sql IMMUTABLE AS $$
     SELECT string_agg(given ->> key, ' ' ORDER BY place) FROM unnest(keys) WITH ORDINALITY AS each (key, place) $$`,
  // `unread` names columns (table.column, or a column of any table) that no line holds, `digested` those of which it holds a hash.
  `CREATE FUNCTION log_tables(left_out text[], unread text[], digested text[]) RETURNS integer LANGUAGE plpgsql AS $$
    DECLARE one record; made integer := 0;
    BEGIN
      FOR one IN SELECT c.oid::regclass AS name, t.selected, t.keys FROM pg_class c CROSS JOIN LATERAL (
          SELECT string_agg(CASE WHEN a.attname = ANY (digested) OR c.relname || '.' || a.attname = ANY (digested)
              THEN format(CASE WHEN a.atttypid = 'bytea'::regtype THEN 'encode(sha256(%1$I), ''hex'') AS %1$I' ELSE 'encode(sha256(convert_to(%1$I::text, ''UTF8'')), ''hex'') AS %1$I' END, a.attname)
              ELSE format('%I', a.attname) END, ', ' ORDER BY a.attnum) AS selected,
            ARRAY(SELECT k.attname::text FROM pg_index i CROSS JOIN LATERAL unnest(i.indkey::int[]) WITH ORDINALITY p (attnum, place)
              JOIN pg_attribute k ON k.attrelid = c.oid AND k.attnum = p.attnum WHERE i.indrelid = c.oid AND i.indisprimary ORDER BY p.place) AS keys
          FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
            AND NOT (a.attname = ANY (unread) OR c.relname || '.' || a.attname = ANY (unread))) t
        WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' AND c.relname <> ALL (left_out)
          AND NOT EXISTS (SELECT FROM pg_depend d WHERE d.classid = 'pg_class'::regclass AND d.objid = c.oid AND d.deptype = 'e')
          AND NOT EXISTS (SELECT FROM pg_trigger g WHERE g.tgrelid = c.oid AND g.tgname = 'logged_update'
            AND g.tgargs = convert_to(t.selected, 'UTF8') || '\\x00'::bytea || convert_to(t.keys::text, 'UTF8') || '\\x00'::bytea)
      LOOP
        EXECUTE format('DROP TRIGGER IF EXISTS logged_insert ON %1$s; DROP TRIGGER IF EXISTS logged_update ON %1$s; DROP TRIGGER IF EXISTS logged_delete ON %1$s', one.name);
        EXECUTE format('CREATE TRIGGER logged_insert AFTER INSERT ON %s REFERENCING NEW TABLE AS is_now FOR EACH STATEMENT EXECUTE FUNCTION log_change(%L, %L)', one.name, one.selected, one.keys);
        EXECUTE format('CREATE TRIGGER logged_update AFTER UPDATE ON %s REFERENCING OLD TABLE AS was NEW TABLE AS is_now FOR EACH STATEMENT EXECUTE FUNCTION log_change(%L, %L)', one.name, one.selected, one.keys);
        EXECUTE format('CREATE TRIGGER logged_delete AFTER DELETE ON %s REFERENCING OLD TABLE AS was FOR EACH STATEMENT EXECUTE FUNCTION log_change(%L, %L)', one.name, one.selected, one.keys);
        made := made + 1;
      END LOOP;
      RETURN made;
    END $$`,
];

const seals = [
  `CREATE TABLE "seal" ("number" bigint NOT NULL, "made_at" TIMESTAMP WITH TIME ZONE NOT NULL, "lines" integer NOT NULL, "total" bigint NOT NULL, "previous" text NOT NULL, "head" text NOT NULL, "settled_id" bigint NOT NULL, "settled_by" bigint NOT NULL, CONSTRAINT "seal_head_unique" UNIQUE ("head"), CONSTRAINT "seal_pkey" PRIMARY KEY ("number"))`,
  `CREATE TABLE "sealed_line" ("place" bigint NOT NULL, "seal_number" bigint NOT NULL, "event_id" bigint NOT NULL, "leaf" text NOT NULL, "words" text NOT NULL, CONSTRAINT "sealed_line_event_unique" UNIQUE ("event_id"), CONSTRAINT "sealed_line_pkey" PRIMARY KEY ("place"))`,
  `ALTER TABLE "sealed_line" ADD CONSTRAINT "sealed_line_seal_fkey" FOREIGN KEY ("seal_number") REFERENCES "seal"("number") ON DELETE NO ACTION ON UPDATE NO ACTION`,
  ...['seal', 'sealed_line'].map(
    (table) => `CREATE TRIGGER ${table}_append_only BEFORE UPDATE OR DELETE ON ${table} FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
  ),
];

/**
 * Who leaves goes out of the words of sealed lines as well. That a line's words were changed so is a line of its own, with the hash of the words before
 * and after: whoever verifies the log sees it.
 */
const leaving = [
  `CREATE FUNCTION log_sized(value text) RETURNS text LANGUAGE sql IMMUTABLE AS $$ SELECT coalesce(octet_length(value) || ':' || value, '-') $$`,
  `CREATE FUNCTION log_words(line event) RETURNS text LANGUAGE sql IMMUTABLE AS $$
     SELECT encode(sha256(convert_to(log_sized(line.salt::text) || log_sized(line.who) || log_sized(line.sentence) || log_sized(line.before::text) || log_sized(line.after::text), 'UTF8')), 'hex') $$`,
  `CREATE FUNCTION log_leaves(person uuid, known text[]) RETURNS integer LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
    DECLARE label text; word text; pattern text; total integer;
    BEGIN
      SELECT name INTO label FROM account WHERE id = person AND left_number IS NOT NULL;
      IF label IS NULL THEN RAISE EXCEPTION 'nobody has left under this id' USING ERRCODE = 'restrict_violation'; END IF;
      ALTER TABLE event DISABLE TRIGGER USER;
      FOREACH word IN ARRAY known LOOP
        CONTINUE WHEN word = '' OR word = label;
        pattern := '(?<!\\w)' || regexp_replace(word, '([^[:alnum:][:space:]])', '\\\\\\1', 'g') || '(?!\\w)';
        UPDATE event SET before = regexp_replace(before::text, pattern, label, 'g')::jsonb, after = regexp_replace(after::text, pattern, label, 'g')::jsonb
          WHERE (position(word IN before::text) > 0 OR position(word IN after::text) > 0) AND (word ~ '[ @]' OR row_table IN ('account', 'officer_proposal') OR person_id = person);
      END LOOP;
      WITH last AS (SELECT DISTINCT ON (reworded.key) reworded.key::bigint AS id, reworded.value ->> 1 AS words
          FROM event, jsonb_each(after) AS reworded WHERE what = 'reworded' ORDER BY reworded.key, event.id DESC),
        changed AS MATERIALIZED (SELECT event.id, coalesce(last.words, sealed_line.words) AS was FROM event JOIN sealed_line ON sealed_line.event_id = event.id LEFT JOIN last ON last.id = event.id
          WHERE log_words(event) <> coalesce(last.words, sealed_line.words)),
        salted AS (UPDATE event SET salt = new_salt() FROM changed WHERE event.id = changed.id RETURNING event.id, changed.was, log_words(event) AS is_now),
        numbered AS (SELECT *, row_number() OVER (ORDER BY id) AS number FROM salted),
        told AS (INSERT INTO event (at, who, what, sentence, row_table, row_key, after)
          SELECT now(), '', 'reworded', '', 'account', person::text, jsonb_object_agg(id::text, jsonb_build_array(was, is_now)) FROM numbered GROUP BY number / 1000 RETURNING after)
      SELECT count(*) INTO total FROM told, jsonb_object_keys(after);
      ALTER TABLE event ENABLE TRIGGER USER;
      RETURN total;
    END $$`,
];

const back = [
  `DO $$ DECLARE one record; BEGIN
     FOR one IN SELECT tgname, tgrelid::regclass AS name FROM pg_trigger WHERE tgname IN ('logged_insert', 'logged_update', 'logged_delete') LOOP
       EXECUTE format('DROP TRIGGER %I ON %s', one.tgname, one.name);
     END LOOP; END $$`,
  'DROP FUNCTION log_leaves(uuid, text[])',
  'DROP FUNCTION log_words(event)',
  'DROP FUNCTION log_sized(text)',
  'DROP TABLE "sealed_line"',
  'DROP TABLE "seal"',
  'DROP FUNCTION log_tables(text[], text[], text[])',
  'DROP FUNCTION log_change()',
  'DROP FUNCTION log_key(jsonb, text[])',
  'DROP FUNCTION log_show(jsonb)',
  'DROP FUNCTION log_tour(text, jsonb)',
  'DROP FUNCTION log_item(text, jsonb)',
  'DROP FUNCTION log_differing(jsonb, jsonb)',
  'DROP FUNCTION log_keyed(jsonb)',
  'DROP FUNCTION log_short_fields(jsonb)',
  'DROP FUNCTION log_short(jsonb)',
  `DROP INDEX "event_act_index", "event_said_index", "event_person_index", "event_row_index", "event_at_index"`,
  `ALTER TABLE "event" DROP COLUMN "act", DROP COLUMN "salt", DROP COLUMN "via", DROP COLUMN "done_at", DROP COLUMN "show_id", DROP COLUMN "row_table", DROP COLUMN "row_key", DROP COLUMN "before", DROP COLUMN "after"`,
  'DROP FUNCTION act_id()',
  'DROP FUNCTION new_salt()',
];
