import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { BadInputError } from '../../platform/faults/fault.js';
import { type Connection, connectionOf, pageSize, readCursor } from '../../platform/graphql/paging.js';
import type { TourHead } from './tour.types.js';

// Newest first: what is worked at stands on the first page.
const page = `SELECT id, name, prep_from::text AS "prepFrom", return_to::text AS "returnTo", jsonb_array_length(data->'shows') AS shows,
  (SELECT jsonb_agg(jsonb_build_object('showId', show->>'id', 'name', show->>'name')) FROM jsonb_array_elements(data->'shows') show) AS "showNames"
FROM tour WHERE removed_at IS NULL AND ($1::date IS NULL OR (prep_from, id) < ($1, $2)) ORDER BY prep_from DESC, id DESC LIMIT $3`;

/** Tours by their first prep day, a page at a time, the latest first. */
@Injectable()
export class TourListQuery {
  constructor(private readonly dataSource: DataSource) {}

  async tours(first?: number | null, after?: string | null): Promise<Connection<TourHead>> {
    const size = pageSize(first);
    const [day, id] = keyOf(after);
    const rows: TourHead[] = await this.dataSource.query(page, [day, id, size + 1]);
    return connectionOf(
      rows,
      size,
      (row) => `${row.prepFrom} ${row.id}`,
      (row) => row,
    );
  }
}

function keyOf(after: string | null | undefined): [string | null, string | null] {
  const text = readCursor(after);
  if (text === undefined) return [null, null];
  const [, day, id] = /^(\d{4}-\d\d-\d\d) (.+)$/s.exec(text) ?? [];
  if (day === undefined || id === undefined)
    throw new BadInputError([{ field: 'after', value: String(after).slice(0, 80), wanted: 'a cursor of an earlier page' }]);
  return [day, id];
}
