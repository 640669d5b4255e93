/** What answers SQL: the manager of a unit of work, or a thread's own connection. */
export interface Queryable {
  query(text: string, values?: unknown[]): Promise<unknown>;
}

export const rowsOf = async <Row>(db: Queryable, text: string, values: unknown[] = []): Promise<readonly Row[]> =>
  (await db.query(text, values)) as Row[];
