import { createHash } from 'node:crypto';

/** A line of the log as texts, as `lineColumns` reads it. */
export type LineTexts = Readonly<Record<(typeof facts)[number] | (typeof words)[number], string | null>>;

/** What never changes of a line. */
const facts = [
  'id',
  'at',
  'person_id',
  'via',
  'done_at',
  'what',
  'item_id',
  'tour_id',
  'show_id',
  'place',
  'from_place',
  'act',
  'row_table',
  'row_key',
] as const;

/** What loses the name of a person who leaves; salted, so that nobody finds a name by trying which gives the hash. */
const words = ['salt', 'who', 'sentence', 'before', 'after'] as const;

const instants: readonly string[] = ['at', 'done_at'];

/** Select list that gives a line as texts that are the same in every house and zone. */
export const lineColumns = [...facts, ...words]
  .map((name) =>
    instants.includes(name)
      ? `to_char(event.${name} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US') AS ${name}`
      : `event.${name}::text AS ${name}`,
  )
  .join(', ');

/** SHA-256 (hex) of texts one after the other, each after its length in bytes, `-` for one that is missing: no two lists give the same bytes. */
function hashOfTexts(texts: readonly (string | null)[]): string {
  const hash = createHash('sha256');
  for (const text of texts) hash.update(text === null ? '-' : `${Buffer.byteLength(text)}:${text}`);
  return hash.digest('hex');
}

export const hashOfWords = (line: LineTexts): string => hashOfTexts(words.map((name) => line[name]));
export const hashOfLine = (line: LineTexts, wordsHash: string): string => hashOfTexts([...facts.map((name) => line[name]), wordsHash]);

export interface SealFacts {
  readonly number: string;
  /** ISO 8601, milliseconds, UTC. */
  readonly madeAt: string;
  readonly lines: number;
  readonly total: string;
  readonly previous: string;
}

/** The head of a batch: over the head before it, what the seal says of itself, and the leaves of its lines in their order. */
export const headOf = ({ previous, number, madeAt, lines, total }: SealFacts, leaves: readonly string[]): string =>
  hashOfTexts([previous, number, madeAt, String(lines), total, ...leaves]);
