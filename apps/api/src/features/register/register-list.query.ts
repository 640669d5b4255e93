import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { itemKinds, itemStates } from '#tour-file';
import { BadInputError } from '../../platform/faults/fault.js';
import { connectionOf, pageSize, readCursor } from '../../platform/graphql/paging.js';
import { PlaceDaysReader } from '../venue/place-days.reader.js';
import { ItemDates } from './item-dates.writer.js';
import { type SummaryRow, summaryColumns, summaryOf } from './item-summary.reader.js';
import type { ItemConnection } from './register.types.js';

export interface ItemFilter {
  readonly search?: string | null;
  readonly kind?: string | null;
  readonly state?: string | null;
  readonly model?: string | null;
  readonly first?: number | null;
  readonly after?: string | null;
}

/** Lists are counted up to here; of a longer one it is said that it is longer. */
const mostCounted = 1000;

// The expression is that of item_search_index; below three characters there is nothing for it to look up, and serials are searched by their beginning.
const fits = `($1::text IS NULL OR item.kind = $1) AND ($2::text IS NULL OR item.state = $2) AND ($3::text IS NULL OR item.model = $3)
  AND ($4::text IS NULL OR (item.id || ' ' || item.model || ' ' || item.depot || ' ' || item.rest::text) ILIKE $4)
  AND ($5::text IS NULL OR lower(item.id) LIKE $5)`;

const page = `SELECT counted.total, page.* FROM
  (SELECT count(*)::int AS total FROM (SELECT FROM item WHERE ${fits} LIMIT ${mostCounted + 1}) fitting) counted
  LEFT JOIN LATERAL (SELECT ${summaryColumns} FROM item WHERE ${fits} AND ($6::text IS NULL OR item.id > $6) ORDER BY item.id LIMIT $7) page ON true
  ORDER BY page.id`;

// Below three characters: serials by their beginning, in the order of item_serial_index, so that a page ends where it is full.
const bySerial = page
  .replaceAll('item.id > $6', '(lower(item.id) ~>~ lower($6) OR lower(item.id) = lower($6) AND item.id > $6)')
  .replace('ORDER BY item.id LIMIT', 'ORDER BY lower(item.id) USING ~<~, item.id LIMIT')
  .replace('ORDER BY page.id', 'ORDER BY lower(page.id) USING ~<~, page.id');

/** The register: one page of it by serial, filtered and searched. */
@Injectable()
export class RegisterListQuery {
  constructor(
    private readonly dataSource: DataSource,
    private readonly dates: ItemDates,
    private readonly places: PlaceDaysReader,
  ) {}

  async items({ search, kind, state, model, first, after }: ItemFilter): Promise<ItemConnection> {
    const size = pageSize(first);
    known('kind', kind, itemKinds);
    known('state', state, itemStates);
    const days = await this.places.now();
    await this.dates.workOut(days.latest);
    const text = search?.trim().replaceAll(/[\\%_]/g, '\\$&') ?? '';
    const isShort = text.length < 3;
    const rows: (SummaryRow & { total: number })[] = await this.dataSource.query(isShort && text !== '' ? bySerial : page, [
      kind || null,
      state || null,
      model || null,
      isShort ? null : `%${text}%`,
      isShort && text !== '' ? `${text.toLowerCase()}%` : null,
      readCursor(after) ?? null,
      size + 1,
    ]);
    const total = rows[0]!.total;
    const found = rows.filter((row) => row.id !== null);
    return {
      ...connectionOf(
        found,
        size,
        (row) => row.id,
        (row) => summaryOf(row, days.at(row.depot)),
      ),
      totalCount: Math.min(total, mostCounted),
      isMoreThanCounted: total > mostCounted,
    };
  }
}

function known(field: string, value: string | null | undefined, among: readonly string[]): void {
  if (value && !among.includes(value))
    throw new BadInputError([{ field, value: value.slice(0, 80), wanted: `one of: ${among.join(', ')}` }]);
}
