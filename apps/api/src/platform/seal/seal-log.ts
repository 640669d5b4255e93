import { type LineTexts, hashOfLine, hashOfWords, headOf, lineColumns } from './line-hash.js';

/** Asks the database; gives rows. */
export type Ask = <Row>(sql: string, values?: unknown[]) => Promise<Row[]>;

/** One of all who could seal does; a number that stands for that. */
export const sealLock = '4849551235';

/** Lines of one batch. */
const mostLines = 5000;

/**
 * Newest line up to which all lines are sealed or were never written: of the newest seal whose transactions of that time are all over. Writers are
 * never waited for; a line that is committed late is sealed later.
 */
export const settledSql = `SELECT coalesce(max(settled_id), 0) AS settled FROM seal WHERE settled_by <= pg_snapshot_xmin(pg_current_snapshot())::text::bigint`;

/**
 * Seals what is not sealed yet, one batch, inside the transaction of `ask` (READ COMMITTED). Gives the number of lines; undefined where another
 * process is at it.
 */
async function sealBatch(ask: Ask, at: Date): Promise<number | undefined> {
  const [lock] = await ask<{ ours: boolean }>('SELECT pg_try_advisory_xact_lock($1) AS ours', [sealLock]);
  if (!lock?.ours) return undefined;
  // Read before the lines: whoever took a number up to the newest sealed one is over when all that is under way now is over.
  const [now] = await ask<{ newest: string; open: string }>(
    `SELECT coalesce(max(event_id), 0)::text AS newest, pg_snapshot_xmax(pg_current_snapshot())::text AS open FROM sealed_line`,
  );
  const lines = await ask<LineTexts>(
    `SELECT ${lineColumns} FROM event WHERE id > (${settledSql}) AND NOT EXISTS (SELECT FROM sealed_line WHERE event_id = event.id) ORDER BY event.id LIMIT $1`,
    [mostLines],
  );
  if (lines.length === 0 || !now) return 0;
  const [last] = await ask<{ number: string; total: string; head: string; settled_id: string; settled_by: string }>(
    'SELECT number::text, total::text, head, settled_id::text, settled_by::text FROM seal ORDER BY seal.number DESC LIMIT 1',
  );
  const isAll = lines.length < mostLines;
  const number = String(BigInt(last?.number ?? 0) + 1n);
  const total = String(BigInt(last?.total ?? 0) + BigInt(lines.length));
  const seal = { number, madeAt: at.toISOString(), lines: lines.length, total, previous: last?.head ?? '' };
  const words = lines.map(hashOfWords);
  const leaves = lines.map((line, index) => hashOfLine(line, words[index] ?? ''));
  const settled = isAll ? [now.newest, now.open] : [last?.settled_id ?? '0', last?.settled_by ?? '0'];
  await ask(
    'INSERT INTO seal (number, made_at, lines, total, previous, head, settled_id, settled_by) VALUES ($1, $2, $3, $4, $5, $6, $7, $8)',
    [...[seal.number, seal.madeAt, seal.lines, seal.total, seal.previous, headOf(seal, leaves)], ...settled],
  );
  await ask(
    `INSERT INTO sealed_line (place, seal_number, event_id, leaf, words) SELECT $1::bigint + number, $2, id, leaf, words
     FROM unnest($3::bigint[], $4::text[], $5::text[]) WITH ORDINALITY AS given (id, leaf, words, number)`,
    [last?.total ?? '0', number, lines.map((line) => line.id), leaves, words],
  );
  return lines.length;
}

/** Batch after batch, each in a transaction of its own, until all that is committed is sealed; gives the number of lines. */
export async function sealAll(
  inTransaction: (work: (ask: Ask) => Promise<number | undefined>) => Promise<number | undefined>,
  at: () => Date,
): Promise<number> {
  for (let total = 0; ; ) {
    const sealed = await inTransaction((ask) => sealBatch(ask, at()));
    if (!sealed) return total;
    total += sealed;
  }
}
