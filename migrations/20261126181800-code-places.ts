import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Places are codes of ISO 3166. What was written before is read as its code where it is a usual form of one; anything else stays as it was written, and
 * screens and plans say that it is none. Venues say whose law holds and which day it is: plans depend on them.
 */
export class CodePlaces20261126181800 implements MigrationInterface {
  name = 'CodePlaces20261126181800';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of statements) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const table of ['venue', 'show_venue']) await runner.query(`DROP TRIGGER ${table}_notes_inputs ON ${table}`);
  }
}

/** Forms that were in use, in small letters, with their codes; a code in small letters is that code. */
const written: Readonly<Record<string, string>> = {
  uk: 'GB',
  'united kingdom': 'GB',
  'great britain': 'GB',
  britain: 'GB',
  england: 'GB',
  scotland: 'GB',
  wales: 'GB',
  gb: 'GB',
  usa: 'US',
  'u.s.a.': 'US',
  'u.s.': 'US',
  'united states': 'US',
  'united states of america': 'US',
  us: 'US',
  germany: 'DE',
  deutschland: 'DE',
  de: 'DE',
  france: 'FR',
  fr: 'FR',
  ireland: 'IE',
  ie: 'IE',
  netherlands: 'NL',
  'the netherlands': 'NL',
  holland: 'NL',
  nl: 'NL',
  belgium: 'BE',
  be: 'BE',
  austria: 'AT',
  österreich: 'AT',
  at: 'AT',
  switzerland: 'CH',
  schweiz: 'CH',
  ch: 'CH',
  spain: 'ES',
  es: 'ES',
  italy: 'IT',
  it: 'IT',
  portugal: 'PT',
  pt: 'PT',
  poland: 'PL',
  pl: 'PL',
  denmark: 'DK',
  dk: 'DK',
  sweden: 'SE',
  se: 'SE',
  norway: 'NO',
  no: 'NO',
  finland: 'FI',
  fi: 'FI',
  canada: 'CA',
  ca: 'CA',
  australia: 'AU',
  au: 'AU',
  'new zealand': 'NZ',
  nz: 'NZ',
  japan: 'JP',
  jp: 'JP',
};

const codes = `'${JSON.stringify(written)}'::jsonb`;
const codeOf = (text: string): string => `coalesce(${codes}->>lower(btrim(${text})), ${text})`;
const ruleId = (row: string): string =>
  `${codeOf(`${row}.data->>'jurisdiction'`)} || substr(${row}.id, length(${row}.data->>'jurisdiction') + 1)`;
const isOther = (text: string): string => `${text} IS DISTINCT FROM ${codeOf(text)}`;

const statements = [
  `UPDATE tour SET data = jsonb_set(data, '{jurisdictions}', (SELECT jsonb_agg(code ORDER BY first) FROM
     (SELECT ${codeOf('named.value')} AS code, min(named.number) AS first FROM jsonb_array_elements_text(data->'jurisdictions') WITH ORDINALITY named (value, number) GROUP BY 1) coded))
   WHERE EXISTS (SELECT FROM jsonb_array_elements_text(data->'jurisdictions') named (value) WHERE ${isOther('named.value')})`,
  // A rule of the code that is on file already stays; the one that was written otherwise stands beside it, and screens say so.
  `UPDATE rule SET data = jsonb_set(data, '{jurisdiction}', to_jsonb(${codeOf(`data->>'jurisdiction'`)})), id = ${ruleId('rule')}
   WHERE kind = 'examination' AND ${isOther(`data->>'jurisdiction'`)} AND NOT EXISTS (SELECT FROM rule other WHERE other.kind = 'examination' AND other.id = ${ruleId('rule')})
     AND NOT EXISTS (SELECT FROM rule other WHERE other.kind = 'examination' AND other.place < rule.place AND ${ruleId('other')} = ${ruleId('rule')})`,
  `UPDATE rule SET data = jsonb_set(data, '{jurisdiction}', to_jsonb(${codeOf(`data->>'jurisdiction'`)})) WHERE kind = 'load' AND ${isOther(`data->>'jurisdiction'`)}`,
  'ALTER TABLE proposal DISABLE TRIGGER proposal_stays',
  `UPDATE proposal SET wanted = jsonb_set(wanted, '{jurisdiction}', to_jsonb(${codeOf(`wanted->>'jurisdiction'`)})),
     subject = ${codeOf(`wanted->>'jurisdiction'`)} || substr(subject, length(wanted->>'jurisdiction') + 1)
   WHERE state = 'proposed' AND kind = 'examination rule' AND field = '' AND jsonb_typeof(wanted) = 'object' AND ${isOther(`wanted->>'jurisdiction'`)}
     AND EXISTS (SELECT FROM rule WHERE rule.kind = 'examination' AND rule.id = ${codeOf(`wanted->>'jurisdiction'`)} || substr(subject, length(wanted->>'jurisdiction') + 1))`,
  `UPDATE proposal SET wanted = jsonb_set(wanted, '{jurisdiction}', to_jsonb(${codeOf(`wanted->>'jurisdiction'`)}))
   WHERE state = 'proposed' AND kind = 'load rule' AND field = '' AND jsonb_typeof(wanted) = 'object' AND ${isOther(`wanted->>'jurisdiction'`)}`,
  'ALTER TABLE proposal ENABLE TRIGGER proposal_stays',
  ...['venue', 'show_venue'].map(
    (table) =>
      `CREATE TRIGGER ${table}_notes_inputs AFTER INSERT OR UPDATE OR DELETE ON ${table} FOR EACH STATEMENT EXECUTE FUNCTION note_other_change('venue')`,
  ),
];
