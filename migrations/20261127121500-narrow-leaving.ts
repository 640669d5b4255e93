import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Who leaves goes out of the words while everybody else goes on writing: lines that hold the name are looked for without a lock, and those alone are
 * changed; other tables are locked at the very end, where they hold the name. Beside the words nothing of a line can be changed in this way. Nobody seals
 * meanwhile: what is sealed with the old words and not told as reworded would be found as changed.
 */
export class NarrowLeaving20261127121500 implements MigrationInterface {
  name = 'NarrowLeaving20261127121500';

  async up(runner: QueryRunner): Promise<void> {
    await replaceIn(runner, 'person_leaves(uuid)', ofPerson);
    await replaceIn(runner, 'officer_leaves(text[],text)', ofOfficer);
    for (const statement of statements) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const statement of back) await runner.query(statement);
    await replaceIn(runner, 'person_leaves(uuid)', ofPerson.map(turned));
    await replaceIn(runner, 'officer_leaves(text[],text)', ofOfficer.map(turned));
  }
}

type Replaced = readonly [string, string];
const turned = ([from, to]: Replaced): Replaced => [to, from];

async function replaceIn(runner: QueryRunner, signature: string, all: readonly Replaced[]): Promise<void> {
  const rows = (await runner.query(`SELECT pg_get_functiondef($1::regprocedure) AS body`, [signature])) as { body: string }[];
  let body = rows[0]?.body ?? '';
  for (const [from, to] of all) {
    if (!body.includes(from)) throw new Error(`${signature} does not hold ${from}`);
    body = body.replace(from, () => to);
  }
  await runner.query(body);
}

const approved = `UPDATE model SET data = jsonb_set(data, '{approved,by}', to_jsonb(label)) WHERE data -> 'approved' ->> 'by' = word;`;

const sentences = `        ALTER TABLE event DISABLE TRIGGER USER;
        -- A name of one word may be another word as well: such a name is looked for where people are written of, no further.
        UPDATE event SET sentence = regexp_replace(sentence, pattern, label, 'g')
          WHERE position(word IN sentence) > 0 AND (word LIKE '% %' OR what = 'person' OR what IN ('added', 'renamed'));
        ALTER TABLE event ENABLE TRIGGER USER;
`;

/** Lines of the log are those of \`log_leaves\` alone, and no table is locked that holds nothing of it. */
const ofPerson: readonly Replaced[] = [
  [approved, `IF EXISTS (SELECT FROM model WHERE data -> 'approved' ->> 'by' = word) THEN ${approved} END IF;`],
  [`('event', 'who', 'person_id'), ('pack_plan', 'made_by', 'made_by_id')`, `('pack_plan', 'made_by', 'made_by_id')`],
  [sentences, ''],
  [
    `            EXECUTE format('ALTER TABLE %I DISABLE TRIGGER USER', one.tab);
            EXECUTE format('UPDATE %I SET %I = regexp_replace`,
    `            EXECUTE format('SELECT count(*) FROM %I WHERE position($1 IN %I::text) > 0', one.tab, one.col) INTO found USING word;
            CONTINUE WHEN found = 0;
            EXECUTE format('ALTER TABLE %I DISABLE TRIGGER USER', one.tab);
            EXECUTE format('UPDATE %I SET %I = regexp_replace`,
  ],
];

// A statement that writes no rule makes the days of all items unknown all the same.
const ofOfficer: readonly Replaced[] = [
  [`('event', 'who'), ('pack_plan', 'released_by')`, `('pack_plan', 'released_by')`],
  [
    '        UPDATE rule SET',
    `        IF EXISTS (SELECT FROM rule WHERE right(data #>> '{approved,by}', length(suffix)) = suffix) THEN UPDATE rule SET`,
  ],
  ['= suffix;\n      END LOOP;\n    END', '= suffix; END IF;\n      END LOOP;\n    END'],
];

/** Of the lines in \`touched\`, the hashes of their words as they are to be: sealed, or told when a person left since. */
const last = `last AS (SELECT DISTINCT ON (reworded.key) reworded.key::bigint AS id, reworded.value ->> 1 AS words
          FROM event, jsonb_each(after) AS reworded WHERE row_table = 'account' AND what = 'reworded' ORDER BY reworded.key, event.id DESC)`;
const unlike = `FROM event JOIN unnest(touched) AS one (id) USING (id) JOIN sealed_line ON sealed_line.event_id = event.id LEFT JOIN last ON last.id = event.id
          WHERE log_words(event) <> coalesce(last.words, sealed_line.words)`;

const kept = `CREATE FUNCTION event_kept() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, public, pg_temp AS $$
    DECLARE words text[] := ARRAY['who', 'sentence', 'before', 'after', 'salt'];
    BEGIN
      IF TG_OP = 'UPDATE' AND coalesce(current_setting('cartwright.leaving', true), '') <> ''
        AND current_user = (SELECT rolname FROM pg_class JOIN pg_roles ON pg_roles.oid = relowner WHERE pg_class.oid = TG_RELID)
        AND to_jsonb(OLD) - words = to_jsonb(NEW) - words THEN RETURN NEW; END IF;
      RAISE EXCEPTION '% is append only', TG_TABLE_NAME USING ERRCODE = 'restrict_violation', CONSTRAINT = TG_TABLE_NAME || '_append_only';
    END $$`;

const statements = [
  kept,
  'DROP TRIGGER event_append_only ON event',
  'CREATE TRIGGER event_append_only BEFORE UPDATE OR DELETE ON event FOR EACH ROW EXECUTE FUNCTION event_kept()',
  'DROP FUNCTION leave_house(uuid)',
  'DROP FUNCTION log_leaves(uuid, text[], bigint[])',
  // Lines behind number \`behind\`; gives the newest that it looked at. Lines that were not as sealed before are found so afterwards as well.
  `CREATE FUNCTION log_leaves(person uuid, known text[], label text, behind bigint) RETURNS bigint LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
    DECLARE touched bigint[]; broken bigint[]; newest bigint; word text; pattern text;
    BEGIN
      SELECT max(id), array_agg(id) FILTER (WHERE person_id = person OR EXISTS (SELECT FROM unnest(known) AS every (each) WHERE position(each IN words) > 0))
        INTO newest, touched FROM event, LATERAL (SELECT concat_ws(' ', who, sentence, before::text, after::text) AS words OFFSET 0) told WHERE id > behind;
      IF touched IS NULL THEN RETURN newest; END IF;
      WITH ${last} SELECT coalesce(array_agg(event.id), '{}') INTO broken ${unlike};
      PERFORM set_config('cartwright.leaving', 'yes', true);
      UPDATE event SET who = label WHERE id = ANY (touched) AND person_id = person AND who <> label;
      FOREACH word IN ARRAY known LOOP
        CONTINUE WHEN word = '' OR word = label;
        pattern := name_pattern(person, word);
        UPDATE event SET who = left(who, -length(word)) || label WHERE id = ANY (touched) AND right(who, length(', deputy of ' || word)) = ', deputy of ' || word;
        -- A name of one word may be another word as well: such a name is looked for where people are written of, no further.
        UPDATE event SET sentence = regexp_replace(sentence, pattern, label, 'g')
          WHERE id = ANY (touched) AND position(word IN sentence) > 0 AND (word LIKE '% %' OR what = 'person' OR what IN ('added', 'renamed'));
        UPDATE event SET before = regexp_replace(before::text, pattern, label, 'g')::jsonb, after = regexp_replace(after::text, pattern, label, 'g')::jsonb
          WHERE id = ANY (touched) AND (position(word IN before::text) > 0 OR position(word IN after::text) > 0)
            AND (word ~ '[ @]' OR row_table IN ('account', 'officer_proposal') OR person_id = person);
      END LOOP;
      WITH ${last},
        changed AS MATERIALIZED (SELECT event.id, coalesce(last.words, sealed_line.words) AS was ${unlike} AND event.id <> ALL (broken)),
        salted AS (UPDATE event SET salt = new_salt() FROM changed WHERE event.id = changed.id RETURNING event.id, changed.was, log_words(event) AS is_now),
        numbered AS (SELECT *, row_number() OVER (ORDER BY id) AS number FROM salted)
        INSERT INTO event (at, who, what, sentence, row_table, row_key, after)
          SELECT now(), '', 'reworded', '', 'account', person::text, jsonb_object_agg(id::text, jsonb_build_array(was, is_now)) FROM numbered GROUP BY number / 1000;
      PERFORM set_config('cartwright.leaving', '', true);
      RETURN newest;
    END $$`,
  // All names under which a person has written.
  `CREATE FUNCTION names_written(person uuid) RETURNS text[] LANGUAGE plpgsql STABLE SET search_path = public, pg_temp AS $$
    DECLARE known text[]; written text[]; one record;
    BEGIN
      SELECT ARRAY[name] INTO known FROM account WHERE id = person;
      FOR one IN SELECT * FROM (VALUES ('event', 'who', 'person_id'), ('pack_plan', 'made_by', 'made_by_id'), ('pack_plan', 'released_by', 'released_by_id'),
          ('cart_check', 'checked_by', 'checked_by_id'), ('tick', 'ticked_by', 'ticked_by_id'), ('examination', 'recorded_by', 'recorded_by_id'),
          ('report_file', 'kept_by', 'kept_by_id'), ('loading_act', 'who', 'person_id'), ('load_reading', 'read_by', 'read_by_id'),
          ('sign_off', 'signed_by', 'signed_by_id'), ('hardware_count', 'counted_by', 'counted_by_id'), ('job', 'asked_by', 'asked_by_id'),
          ('officer_proposal', 'proposed_by', 'proposed_by_id'), ('officer_proposal', 'decided_by', 'decided_by_id'), ('place_answer', 'decided_by', 'decided_by_id'))
          AS names (tab, col, id_col) LOOP
        EXECUTE format('SELECT array_agg(DISTINCT %I) FILTER (WHERE %I IS NOT NULL) FROM %I WHERE %I = $1', one.col, one.col, one.tab, one.id_col) INTO written USING person;
        known := known || coalesce(written, '{}');
      END LOOP;
      RETURN known;
    END $$`,
  `CREATE FUNCTION leave_house(person uuid) RETURNS text LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
    DECLARE leaver account; known text[]; label text; newest bigint;
    BEGIN
      PERFORM pg_advisory_xact_lock(4849551235);
      SELECT * INTO leaver FROM account WHERE id = person AND disabled_at IS NOT NULL AND left_number IS NULL FOR NO KEY UPDATE;
      IF leaver.id IS NULL THEN
        RAISE EXCEPTION 'only who may not sign in any more leaves, once' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'account_leaves';
      END IF;
      UPDATE account SET left_number = (SELECT count(left_number) + 1 FROM account) WHERE id = person RETURNING 'Person ' || left_number || ' (left)' INTO label;
      known := array_prepend(leaver.email::text, names_of_leaver(person, array_remove(names_written(person), label)));
      newest := log_leaves(person, known, label, 0);
      PERFORM officer_leaves(known[2:], label);
      PERFORM person_leaves(person);
      -- What came meanwhile, and what this itself wrote.
      PERFORM log_leaves(person, known, label, newest);
      RETURN label;
    END $$`,
  ...['leave_house(uuid)', 'log_leaves(uuid, text[], text, bigint)', 'names_written(uuid)'].map(
    (each) => `REVOKE EXECUTE ON FUNCTION ${each} FROM PUBLIC`,
  ),
];

const lastOfAll = `last AS (SELECT DISTINCT ON (reworded.key) reworded.key::bigint AS id, reworded.value ->> 1 AS words
          FROM event, jsonb_each(after) AS reworded WHERE what = 'reworded' ORDER BY reworded.key, event.id DESC)`;
const unlikeOfAll = `FROM event JOIN sealed_line ON sealed_line.event_id = event.id LEFT JOIN last ON last.id = event.id
          WHERE log_words(event) <> coalesce(last.words, sealed_line.words)`;

/** As it was before. */
const back = [
  'DROP FUNCTION leave_house(uuid)',
  'DROP FUNCTION names_written(uuid)',
  'DROP FUNCTION log_leaves(uuid, text[], text, bigint)',
  'DROP TRIGGER event_append_only ON event',
  'CREATE TRIGGER event_append_only BEFORE UPDATE OR DELETE ON event FOR EACH ROW EXECUTE FUNCTION refuse_change()',
  'DROP FUNCTION event_kept()',
  `CREATE FUNCTION log_leaves(person uuid, known text[], broken bigint[]) RETURNS integer LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
    DECLARE label text; word text; pattern text; total integer;
    BEGIN
      SELECT name INTO label FROM account WHERE id = person AND left_number IS NOT NULL;
      IF label IS NULL THEN RAISE EXCEPTION 'nobody has left under this id' USING ERRCODE = 'restrict_violation'; END IF;
      ALTER TABLE event DISABLE TRIGGER USER;
      FOREACH word IN ARRAY known LOOP
        CONTINUE WHEN word = '' OR word = label;
        pattern := name_pattern(person, word);
        UPDATE event SET before = regexp_replace(before::text, pattern, label, 'g')::jsonb, after = regexp_replace(after::text, pattern, label, 'g')::jsonb
          WHERE (position(word IN before::text) > 0 OR position(word IN after::text) > 0) AND (word ~ '[ @]' OR row_table IN ('account', 'officer_proposal') OR person_id = person);
      END LOOP;
      WITH ${lastOfAll},
        changed AS MATERIALIZED (SELECT event.id, coalesce(last.words, sealed_line.words) AS was ${unlikeOfAll} AND event.id <> ALL (broken)),
        salted AS (UPDATE event SET salt = new_salt() FROM changed WHERE event.id = changed.id RETURNING event.id, changed.was, log_words(event) AS is_now),
        numbered AS (SELECT *, row_number() OVER (ORDER BY id) AS number FROM salted),
        told AS (INSERT INTO event (at, who, what, sentence, row_table, row_key, after)
          SELECT now(), '', 'reworded', '', 'account', person::text, jsonb_object_agg(id::text, jsonb_build_array(was, is_now)) FROM numbered GROUP BY number / 1000 RETURNING after)
      SELECT count(*) INTO total FROM told, jsonb_object_keys(after);
      ALTER TABLE event ENABLE TRIGGER USER;
      RETURN total;
    END $$`,
  `CREATE FUNCTION leave_house(person uuid) RETURNS text LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
    DECLARE leaver account; known text[]; broken bigint[]; label text;
    BEGIN
      SELECT * INTO leaver FROM account WHERE id = person AND disabled_at IS NOT NULL AND left_number IS NULL FOR UPDATE;
      IF leaver.id IS NULL THEN
        RAISE EXCEPTION 'only who may not sign in any more leaves, once' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'account_leaves';
      END IF;
      LOCK TABLE event IN SHARE ROW EXCLUSIVE MODE;
      WITH ${lastOfAll} SELECT coalesce(array_agg(event.id), '{}') INTO broken ${unlikeOfAll};
      known := names_of_leaver(person, ARRAY[leaver.name::text] || ARRAY(SELECT DISTINCT who::text FROM event WHERE person_id = person));
      label := person_leaves(person);
      PERFORM officer_leaves(known, label);
      PERFORM log_leaves(person, array_prepend(leaver.email::text, known), broken);
      RETURN label;
    END $$`,
  ...['leave_house(uuid)', 'log_leaves(uuid, text[], bigint[])'].map((each) => `REVOKE EXECUTE ON FUNCTION ${each} FROM PUBLIC`),
];
