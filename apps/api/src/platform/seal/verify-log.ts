import { type LineTexts, hashOfLine, hashOfWords, headOf, lineColumns } from './line-hash.js';
import { type Ask, settledSql } from './seal-log.js';

/** What is wrong with the log, the first that was found. */
export type LogFault =
  | {
      readonly kind: 'changed' | 'missing' | 'out of order' | 'put in';
      readonly line: string;
      readonly now: string | null;
      readonly seal: string | null;
    }
  | { readonly kind: 'seal'; readonly seal: string; readonly first: string; readonly last: string }
  | { readonly kind: 'head'; readonly head: string };

export interface LogVerdict {
  readonly fault: LogFault | null;
  readonly lines: number;
  readonly seals: number;
  /** The newest head as it was worked out. */
  readonly head: string;
  readonly sealedAt: string | null;
  /** Lines whose words lost the name of a person who left. */
  readonly reworded: number;
  /** Lines that wait for the next seal. */
  readonly unsealed: number;
  /** Of the wanted head: how many lines it stands for. */
  readonly wantedAt: { readonly lines: number; readonly sealedAt: string } | null;
}

interface Seal {
  readonly number: string;
  readonly made_at: Date;
  readonly lines: number;
  readonly total: string;
  readonly previous: string;
  readonly head: string;
}

type Sealed = { readonly [Field in keyof LineTexts]: string | null } & {
  readonly sealed_place: string;
  readonly sealed_id: string;
  readonly leaf: string;
  readonly words: string;
};

/** Hashes of words: as they were sealed, and as they are after somebody left. */
type Rewordings = ReadonlyMap<string, { readonly was: string; readonly now: string }>;

/**
 * Works the chain out anew from the lines as they stand, from the first to the newest, and stops at the first that is not what was sealed. `wanted` is
 * a head from paper: it has to be one of the chain. Reads only, inside one transaction of `ask`.
 */
export async function verifyLog(ask: Ask, wanted?: string): Promise<LogVerdict> {
  const reworded = await readRewordings(ask);
  const seals = await ask<Seal>('SELECT number::text, made_at, lines, total::text, previous, head FROM seal ORDER BY seal.number');
  const so: {
    fault: LogFault | null;
    lines: number;
    seals: number;
    head: string;
    sealedAt: string | null;
    wantedAt: LogVerdict['wantedAt'];
  } = {
    ...{ fault: null, lines: 0, seals: 0, head: '', sealedAt: null, wantedAt: null },
  };
  for (const seal of seals) {
    const fault = await faultOf(ask, seal, so, reworded);
    if (fault) return { ...so, fault, reworded: reworded.size, unsealed: 0 };
    Object.assign(so, { lines: Number(seal.total), seals: so.seals + 1, head: seal.head, sealedAt: new Date(seal.made_at).toISOString() });
    if (seal.head === wanted) so.wantedAt = { lines: so.lines, sealedAt: so.sealedAt ?? '' };
  }
  const fault =
    (await faultAfter(ask, so)) ?? (wanted !== undefined && so.wantedAt === null ? { kind: 'head' as const, head: wanted } : null);
  const [open] = await ask<{ count: number }>(
    'SELECT count(*)::int AS count FROM event WHERE NOT EXISTS (SELECT FROM sealed_line WHERE event_id = event.id)',
  );
  return { ...so, fault, reworded: reworded.size, unsealed: open?.count ?? 0 };
}

/** What lines say of other lines' words: those are lines of the chain themselves, and verified with it. */
async function readRewordings(ask: Ask): Promise<Rewordings> {
  const rows = await ask<{ line: string; was: string; now: string }>(
    `SELECT key AS line, value ->> 0 AS was, value ->> 1 AS now FROM event, jsonb_each(after) WHERE what = 'reworded' ORDER BY event.id`,
  );
  const found = new Map<string, { was: string; now: string }>();
  for (const { line, was, now } of rows) found.set(line, { was: found.get(line)?.was ?? was, now });
  return found;
}

async function faultOf(
  ask: Ask,
  seal: Seal,
  before: { seals: number; lines: number; head: string },
  reworded: Rewordings,
): Promise<LogFault | null> {
  const lines = await ask<Sealed>(
    `SELECT ${lineColumns.replace('event.place::text AS place', 'event.place::text AS place, sealed.place::text AS sealed_place')},
       sealed.event_id::text AS sealed_id, sealed.leaf, sealed.words
     FROM sealed_line sealed LEFT JOIN event ON event.id = sealed.event_id WHERE sealed.seal_number = $1 ORDER BY sealed.place`,
    [seal.number],
  );
  for (const [index, line] of lines.entries()) {
    const fault = (kind: 'changed' | 'missing' | 'out of order') => ({ kind, line: line.sealed_id, now: nowOf(line), seal: seal.number });
    if (line.id === null) return fault('missing');
    const last = lines[index - 1];
    if (last && BigInt(last.sealed_id) > BigInt(line.sealed_id)) return fault('out of order');
    if (Number(line.sealed_place) !== before.lines + index + 1) return fault('out of order');
    const words = hashOfWords(line);
    const kept = reworded.get(line.sealed_id);
    if (words !== (kept?.now ?? line.words) || (kept && kept.was !== line.words)) return fault('changed');
    if (hashOfLine(line, line.words) !== line.leaf) return fault('changed');
  }
  const { number, made_at, total, previous, head } = seal;
  const facts = { number, madeAt: new Date(made_at).toISOString(), lines: seal.lines, total, previous };
  const isWhole =
    Number(number) === before.seals + 1 &&
    seal.lines === lines.length &&
    Number(total) === before.lines + lines.length &&
    previous === before.head &&
    head ===
      headOf(
        facts,
        lines.map((line) => line.leaf),
      );
  return isWhole ? null : { kind: 'seal', seal: number, first: lines[0]?.sealed_id ?? '', last: lines.at(-1)?.sealed_id ?? '' };
}

/** Lines in the chain that no seal is of, and lines that came in behind what is settled. */
async function faultAfter(ask: Ask, { lines }: { lines: number }): Promise<LogFault | null> {
  const [beyond] = await ask<{ line: string }>('SELECT event_id::text AS line FROM sealed_line WHERE place > $1 ORDER BY place LIMIT 1', [
    lines,
  ]);
  if (beyond) return { kind: 'out of order', line: beyond.line, now: null, seal: null };
  const [late] = await ask<{ line: string; who: string; sentence: string }>(
    `SELECT id::text AS line, who, sentence FROM event WHERE id <= (${settledSql}) AND NOT EXISTS (SELECT FROM sealed_line WHERE event_id = event.id) ORDER BY event.id LIMIT 1`,
  );
  return late ? { kind: 'put in', line: late.line, now: late.sentence || late.who, seal: null } : null;
}

/** What the line says now. */
function nowOf(line: Sealed): string | null {
  if (line.id === null) return null;
  return `${line.at?.slice(0, 19)} ${line.who || line.what}: ${line.sentence || `${line.row_table} ${line.row_key}`}`;
}
