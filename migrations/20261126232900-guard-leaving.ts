import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What goes on with the rights of the owner has one door, `leave_house`: it takes a person who is barred from signing in, and no words. Names that a
 * person of the house bears are never replaced. Of sealed lines those alone are told as reworded that were as they were sealed until then. A proposed
 * safety officer is decided of once, by an officer, and never from the start.
 */
export class GuardLeaving20261126232900 implements MigrationInterface {
  name = 'GuardLeaving20261126232900';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of names) await runner.query(statement);
    await replaceInPersonLeaves(runner, replaced);
    for (const statement of [...leaving, ...proposals, ...rights]) await runner.query(statement);
  }

  /** The door goes; what it guarded opens as it was. */
  async down(runner: QueryRunner): Promise<void> {
    for (const statement of back) await runner.query(statement);
    await replaceInPersonLeaves(
      runner,
      replaced.map(([from, to]) => [to, from]),
    );
    await runner.query('DROP FUNCTION names_of_leaver(uuid, text[])');
    await runner.query('DROP FUNCTION name_pattern(uuid, text)');
  }
}

const escaped = (text: string) => `regexp_replace(${text}, '([^[:alnum:][:space:]])', '\\\\\\1', 'g')`;

const names = [
  // Own names alone, and none that another person of the house bears.
  `CREATE FUNCTION names_of_leaver(person uuid, given text[]) RETURNS text[] LANGUAGE sql STABLE AS $$
     SELECT ARRAY(SELECT DISTINCT own FROM unnest(given) AS every (each), LATERAL (SELECT regexp_replace(each, ', deputy of .*$', '') AS own) o
       WHERE own <> '' AND NOT EXISTS (SELECT FROM account WHERE id <> person AND left_number IS NULL AND lower(name) = lower(own))) $$`,
  // A name as a pattern: whole words, and not where it is a piece of the name of somebody else in the house.
  `CREATE FUNCTION name_pattern(person uuid, word text) RETURNS text LANGUAGE sql STABLE AS $$
     SELECT coalesce(string_agg('(?<!' || ${escaped('before')} || ')', '') FILTER (WHERE after = ''), '')
         || '(?<!\\w)' || ${escaped('word')} || '(?!\\w)'
         || coalesce(string_agg('(?!' || ${escaped('after')} || ')', '') FILTER (WHERE after <> ''), '')
       FROM (SELECT left(name, position(word IN name) - 1) AS before, substr(name, position(word IN name) + length(word)) AS after
         FROM account WHERE id <> person AND left_number IS NULL AND position(word IN name) > 0) longer $$`,
];

const replaced: readonly (readonly [string, string])[] = [
  [
    `known := ARRAY(SELECT DISTINCT each FROM unnest(known) each WHERE each <> '' AND each <> label);`,
    `known := names_of_leaver(person, array_remove(known, label));`,
  ],
  [`pattern := '(?<!\\w)' || ${escaped('word')} || '(?!\\w)';`, `pattern := name_pattern(person, word);`],
];

async function replaceInPersonLeaves(runner: QueryRunner, all: readonly (readonly [string, string])[]): Promise<void> {
  let [{ body }] = (await runner.query(`SELECT pg_get_functiondef('person_leaves(uuid)'::regprocedure) AS body`)) as [{ body: string }];
  for (const [from, to] of all) {
    if (!body.includes(from)) throw new Error(`person_leaves does not hold ${from}`);
    body = body.replace(from, () => to);
  }
  await runner.query(body);
}

/** Hashes of words as they are to be: sealed, or told when a person left since. */
const last = `last AS (SELECT DISTINCT ON (reworded.key) reworded.key::bigint AS id, reworded.value ->> 1 AS words
          FROM event, jsonb_each(after) AS reworded WHERE what = 'reworded' ORDER BY reworded.key, event.id DESC)`;
const unlike = `FROM event JOIN sealed_line ON sealed_line.event_id = event.id LEFT JOIN last ON last.id = event.id
          WHERE log_words(event) <> coalesce(last.words, sealed_line.words)`;

const rewording = (
  signature: string,
  before: string,
) => `CREATE FUNCTION ${signature} RETURNS integer LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
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
      WITH ${last},
        changed AS MATERIALIZED (SELECT event.id, coalesce(last.words, sealed_line.words) AS was ${unlike}${before}),
        salted AS (UPDATE event SET salt = new_salt() FROM changed WHERE event.id = changed.id RETURNING event.id, changed.was, log_words(event) AS is_now),
        numbered AS (SELECT *, row_number() OVER (ORDER BY id) AS number FROM salted),
        told AS (INSERT INTO event (at, who, what, sentence, row_table, row_key, after)
          SELECT now(), '', 'reworded', '', 'account', person::text, jsonb_object_agg(id::text, jsonb_build_array(was, is_now)) FROM numbered GROUP BY number / 1000 RETURNING after)
      SELECT count(*) INTO total FROM told, jsonb_object_keys(after);
      ALTER TABLE event ENABLE TRIGGER USER;
      RETURN total;
    END $$`;

const leaving = [
  'DROP FUNCTION log_leaves(uuid, text[])',
  // Lines in `broken` were not as sealed before anybody left: they are found so afterwards as well.
  rewording('log_leaves(person uuid, known text[], broken bigint[])', ' AND event.id <> ALL (broken)'),
  `CREATE FUNCTION leave_house(person uuid) RETURNS text LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
    DECLARE leaver account; known text[]; broken bigint[]; label text;
    BEGIN
      SELECT * INTO leaver FROM account WHERE id = person AND disabled_at IS NOT NULL AND left_number IS NULL FOR UPDATE;
      IF leaver.id IS NULL THEN
        RAISE EXCEPTION 'only who may not sign in any more leaves, once' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'account_leaves';
      END IF;
      LOCK TABLE event IN SHARE ROW EXCLUSIVE MODE;
      WITH ${last} SELECT coalesce(array_agg(event.id), '{}') INTO broken ${unlike};
      known := names_of_leaver(person, ARRAY[leaver.name::text] || ARRAY(SELECT DISTINCT who::text FROM event WHERE person_id = person));
      label := person_leaves(person);
      PERFORM officer_leaves(known, label);
      PERFORM log_leaves(person, array_prepend(leaver.email::text, known), broken);
      RETURN label;
    END $$`,
];

const proposals = [
  `CREATE FUNCTION officer_proposal_kept() RETURNS trigger LANGUAGE plpgsql AS $$
    DECLARE open text[] := ARRAY['decided_by_id', 'decided_by', 'decided_at', 'accepted'];
    BEGIN
      IF TG_OP = 'INSERT' THEN
        IF num_nonnulls(NEW.decided_by_id, NEW.decided_by, NEW.decided_at, NEW.accepted) > 0 THEN
          RAISE EXCEPTION 'a proposal begins undecided' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'officer_proposal_undecided'; END IF;
        RETURN NEW;
      END IF;
      IF OLD.accepted IS NOT NULL THEN
        RAISE EXCEPTION 'a decided proposal is kept as it is' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'officer_proposal_is_kept'; END IF;
      IF TG_OP = 'DELETE' THEN RETURN OLD; END IF;
      IF to_jsonb(OLD) - open <> to_jsonb(NEW) - open
        OR NOT EXISTS (SELECT FROM account WHERE id = NEW.decided_by_id AND role = 'safety' AND disabled_at IS NULL) THEN
        RAISE EXCEPTION 'a proposal is decided by a safety officer' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'officer_proposal_decided'; END IF;
      RETURN NEW;
    END $$`,
  'CREATE TRIGGER officer_proposal_is_kept BEFORE INSERT OR UPDATE OR DELETE ON officer_proposal FOR EACH ROW EXECUTE FUNCTION officer_proposal_kept()',
];

/** Who may execute what: the application the door alone, which it is granted with its other rights at every start. */
const rights = [
  'ALTER FUNCTION person_leaves(uuid) SECURITY INVOKER',
  'ALTER FUNCTION officer_leaves(text[], text) SECURITY INVOKER',
  ...[
    'leave_house(uuid)',
    'person_leaves(uuid)',
    'officer_leaves(text[], text)',
    'log_leaves(uuid, text[], bigint[])',
    'put_plan_parts()',
  ].map((each) => `REVOKE EXECUTE ON FUNCTION ${each} FROM PUBLIC`),
];

const back = [
  'DROP TRIGGER officer_proposal_is_kept ON officer_proposal',
  'DROP FUNCTION officer_proposal_kept()',
  'DROP FUNCTION leave_house(uuid)',
  'DROP FUNCTION log_leaves(uuid, text[], bigint[])',
  rewording('log_leaves(person uuid, known text[])', '').replace(
    'name_pattern(person, word)',
    () => `'(?<!\\w)' || ${escaped('word')} || '(?!\\w)'`,
  ),
  'ALTER FUNCTION log_leaves(uuid, text[]) SECURITY DEFINER',
  'ALTER FUNCTION person_leaves(uuid) SECURITY DEFINER',
  'ALTER FUNCTION officer_leaves(text[], text) SECURITY DEFINER',
  ...['person_leaves(uuid)', 'officer_leaves(text[], text)', 'put_plan_parts()'].map(
    (each) => `GRANT EXECUTE ON FUNCTION ${each} TO PUBLIC`,
  ),
];
