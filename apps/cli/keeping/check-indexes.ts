import type pg from 'pg';

/** What the server's own check of its tables and indexes found: nothing, faults in its words, or why it could not look. */
export interface IndexCheck {
  readonly tables: number;
  readonly indexes: number;
  readonly faults: readonly string[];
  readonly notDone?: string;
}

/**
 * PostgreSQL's amcheck over every table (its pages) and every B-tree index (its order, and that each row is in it). The extension is made inside a
 * transaction that is rolled back: nothing stays behind. Where the user may not make it, that is said.
 */
export async function checkIndexes(client: pg.ClientBase): Promise<IndexCheck> {
  await client.query('BEGIN');
  try {
    await client.query('SET LOCAL statement_timeout = 0');
    try {
      await client.query('CREATE EXTENSION IF NOT EXISTS amcheck');
    } catch (fault) {
      return { tables: 0, indexes: 0, faults: [], notDone: (fault as Error).message };
    }
    const { rows } = await client.query<{ name: string; kind: string }>(
      `SELECT c.oid::regclass::text AS name, c.relkind AS kind FROM pg_class c LEFT JOIN pg_am a ON a.oid = c.relam
       WHERE c.relnamespace = 'public'::regnamespace AND c.relpersistence = 'p' AND (c.relkind = 'r' OR (c.relkind = 'i' AND a.amname = 'btree')) ORDER BY 1`,
    );
    const faults: string[] = [];
    for (const { name, kind } of rows) faults.push(...(kind === 'r' ? await pagesOf(client, name) : await orderOf(client, name)));
    const tables = rows.filter((each) => each.kind === 'r').length;
    return { tables, indexes: rows.length - tables, faults };
  } finally {
    await client.query('ROLLBACK');
  }
}

async function pagesOf(client: pg.ClientBase, table: string): Promise<string[]> {
  const { rows } = await client.query<{ msg: string }>('SELECT msg FROM verify_heapam($1::regclass)', [table]);
  return rows.slice(0, 5).map(({ msg }) => `${table}: ${msg}`);
}

async function orderOf(client: pg.ClientBase, index: string): Promise<string[]> {
  await client.query('SAVEPOINT looked');
  try {
    await client.query('SELECT bt_index_check($1::regclass, true)', [index]);
    return [];
  } catch (fault) {
    return [`${index}: ${(fault as Error).message}`];
  } finally {
    await client.query('ROLLBACK TO SAVEPOINT looked');
  }
}
