import { invariant } from '#kernel';

/** What answers SQL: the manager of a unit of work, or a thread's own connection. */
export interface Queryable {
  query(text: string, values?: unknown[]): Promise<unknown>;
}

export const rowsOf = async <Row>(db: Queryable, text: string, values: unknown[] = []): Promise<readonly Row[]> =>
  (await db.query(text, values)) as Row[];

/** The row of a query that always gives one. */
export async function theRow<Row>(db: Queryable, text: string, values: unknown[] = []): Promise<Row> {
  const [row] = await rowsOf<Row>(db, text, values);
  invariant(row !== undefined, 'the query gives a row');
  return row;
}
