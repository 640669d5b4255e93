import { BadInputError } from '../faults/fault.js';

/** Keyset paging: a cursor is the key of the last row, opaque to the caller. */
export const writeCursor = (key: string): string => Buffer.from(key, 'utf8').toString('base64url');
export function readCursor(cursor: string | null | undefined): string | undefined {
  if (!cursor) return undefined;
  const key = Buffer.from(cursor, 'base64url').toString('utf8');
  if (key === '' || writeCursor(key) !== cursor)
    throw new BadInputError([{ field: 'after', value: cursor.slice(0, 80), wanted: 'a cursor of an earlier page' }]);
  return key;
}

export function pageSize(first: number | null | undefined): number {
  const size = first ?? 50;
  if (!Number.isInteger(size) || size < 1 || size > 200)
    throw new BadInputError([{ field: 'first', value: size, wanted: 'a whole number from 1 to 200' }]);
  return size;
}

export interface Connection<Node> {
  readonly edges: { cursor: string; node: Node }[];
  readonly pageInfo: { hasNextPage: boolean; endCursor: string | null };
}

/** A page of GraphQL Cursor Connections from up to `size` + 1 rows: the one more says that there is a next page. */
export function connectionOf<Row, Node>(
  rows: readonly Row[],
  size: number,
  keyOf: (row: Row) => string,
  nodeOf: (row: Row) => Node,
): Connection<Node> {
  const edges = rows.slice(0, size).map((row) => ({ cursor: writeCursor(keyOf(row)), node: nodeOf(row) }));
  return { edges, pageInfo: { hasNextPage: rows.length > size, endCursor: edges.at(-1)?.cursor ?? null } };
}
