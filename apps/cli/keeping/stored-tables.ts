import type pg from 'pg';

export interface StoredTable {
  readonly name: string;
  readonly columns: readonly string[];
  /** Columns of the primary key, in which order the rows are written: equal rows give equal bytes. */
  readonly order: readonly string[];
}

/** What is of this minute and this machine alone: who is signed in, and what screens are told. */
export const leftOut = ['change', 'migrations', 'session'] as const;

/** Text that means the same in every house, whatever its settings. */
export const plainText = [
  `SET LOCAL timezone = 'UTC'`,
  `SET LOCAL datestyle = 'ISO, YMD'`,
  `SET LOCAL intervalstyle = 'iso_8601'`,
  'SET LOCAL extra_float_digits = 1',
  `SET LOCAL bytea_output = 'hex'`,
  'SET LOCAL statement_timeout = 0',
  'SET LOCAL idle_in_transaction_session_timeout = 0',
];

/** Every table of the house but what is left out, each after those it refers to. */
export async function storedTables(client: pg.ClientBase): Promise<StoredTable[]> {
  const { rows } = await client.query<StoredTable & { refersTo: string[] }>(
    `SELECT c.relname AS name,
       ARRAY(SELECT a.attname::text FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = '' ORDER BY a.attnum) AS columns,
       ARRAY(SELECT a.attname::text FROM pg_index i CROSS JOIN LATERAL unnest(i.indkey::int[]) WITH ORDINALITY k (attnum, place)
         JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum = k.attnum WHERE i.indrelid = c.oid AND i.indisprimary ORDER BY k.place) AS order,
       ARRAY(SELECT DISTINCT r.relname::text FROM pg_constraint f JOIN pg_class r ON r.oid = f.confrelid WHERE f.conrelid = c.oid AND f.contype = 'f' AND f.confrelid <> c.oid) AS "refersTo"
     FROM pg_class c WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p') AND NOT c.relispartition AND c.relname <> ALL ($1)
       AND NOT EXISTS (SELECT FROM pg_depend d WHERE d.classid = 'pg_class'::regclass AND d.objid = c.oid AND d.deptype = 'e')
     ORDER BY c.relname`,
    [leftOut],
  );
  const sorted: (typeof rows)[number][] = [];
  const left = [...rows];
  while (left.length > 0) {
    const next = left.findIndex((table) => table.refersTo.every((name) => !left.some((each) => each !== table && each.name === name)));
    sorted.push(...left.splice(Math.max(0, next), 1));
  }
  return sorted.map(({ name, columns, order }) => ({ name, columns, order: order.length > 0 ? order : columns }));
}

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;
const listOf = (names: readonly string[]): string => names.map(quoted).join(', ');

/** Rows in the order of the key, compared byte by byte whatever the language of the database. */
export const copyOutStatement = ({ name, columns, order }: StoredTable): string =>
  `COPY (SELECT ${listOf(columns)} FROM ${quoted(name)} ORDER BY ${order.map((each) => `${quoted(each)}::text COLLATE "C"`).join(', ')}) TO STDOUT`;

export const copyInStatement = ({ name, columns }: StoredTable): string => `COPY ${quoted(name)} (${listOf(columns)}) FROM STDIN`;

export interface StoredSequence {
  readonly name: string;
  readonly value: string;
  readonly isCalled: boolean;
}

export async function storedSequences(client: pg.ClientBase): Promise<StoredSequence[]> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT c.relname AS name FROM pg_class c WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'S' AND c.relname <> 'migrations_id_seq' ORDER BY 1`,
  );
  const sequences: StoredSequence[] = [];
  for (const { name } of rows) {
    const state = await client.query<{ value: string; isCalled: boolean }>(
      `SELECT last_value::text AS value, is_called AS "isCalled" FROM ${quoted(name)}`,
    );
    sequences.push(...state.rows.map((row) => ({ name, ...row })));
  }
  return sequences;
}
