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
  readonly depot?: string | null;
  /** Of these alone. */
  readonly serials?: readonly string[] | null;
  readonly sort?: string | null;
  readonly descending?: boolean | null;
  readonly first?: number | null;
  readonly after?: string | null;
}

/** What the register can be sorted by. */
export const itemSorts = ['serial', 'state', 'last day', 'kind', 'model', 'depot'] as const;
type ItemSort = (typeof itemSorts)[number];

/** Lists are counted up to here; of a longer one it is said that it is longer. */
const mostCounted = 1000;

/** Picked out one by one: as many as a page may hold. */
const mostSerials = 200;

// The expression is that of item_search_index; below three characters there is nothing for it to look up, and serials are searched by their beginning.
const fits = `($1::text IS NULL OR item.kind = $1) AND ($2::text IS NULL OR item.state = $2) AND ($3::text IS NULL OR item.model = $3)
  AND ($4::text IS NULL OR (item.id || ' ' || item.model || ' ' || item.depot || ' ' || item.rest::text) ILIKE $4)
  AND ($5::text IS NULL OR lower(item.id) LIKE $5) AND ($6::text IS NULL OR item.depot = $6) AND ($7::text[] IS NULL OR item.id = ANY($7))`;

/** One page: of what fits, what comes after `$8` (and of equal ones after the serial `$9`), `order` and its columns. */
const paged = (columns: string, after: string, order: string): string => `SELECT counted.total, page.* FROM
  (SELECT count(*)::int AS total FROM (SELECT FROM item WHERE ${fits} LIMIT ${mostCounted + 1}) fitting) counted
  LEFT JOIN LATERAL (SELECT ${summaryColumns}, ${columns} FROM item WHERE ${fits} AND ($8::text IS NULL OR ${after}) ORDER BY ${order} LIMIT $10) page ON true`;

/** What a list is sorted by, each with an index in its order; the serial comes second. */
const sortKeys: Readonly<Record<ItemSort, { readonly key: string; readonly type: string }>> = {
  serial: { key: 'item.id', type: 'text' },
  state: { key: 'item.state', type: 'text' },
  'last day': { key: `(coalesce(item.due_on, 'infinity'::date))`, type: 'date' },
  kind: { key: 'item.kind', type: 'text' },
  model: { key: 'item.model', type: 'text' },
  depot: { key: 'item.depot', type: 'text' },
};

function sorted(sort: ItemSort, isDescending: boolean): string {
  const { key, type } = sortKeys[sort];
  const [sign, way] = isDescending ? ['<', ' DESC'] : ['>', ''];
  return paged(`${key}::text AS sort_key`, `(${key}, item.id) ${sign} ($8::text::${type}, $9::text)`, `${key}${way}, item.id${way}`).concat(
    ` ORDER BY page.sort_key${type === 'date' ? '::date' : ''}${way}, page.id${way}`,
  );
}

// Below three characters and by serial: by their beginning, in the order of item_serial_index, so that a page ends where it is full.
const bySerial = paged(
  'item.id AS sort_key',
  '(lower(item.id) ~>~ lower($8) OR lower(item.id) = lower($8) AND item.id > $9)',
  'lower(item.id) USING ~<~, item.id',
).concat(' ORDER BY lower(page.id) USING ~<~, page.id');

/** The register: one page of it by serial, filtered and searched. */
@Injectable()
export class RegisterListQuery {
  constructor(
    private readonly dataSource: DataSource,
    private readonly dates: ItemDates,
    private readonly places: PlaceDaysReader,
  ) {}

  async items({ search, kind, state, model, depot, serials, sort, descending, first, after }: ItemFilter): Promise<ItemConnection> {
    const size = pageSize(first);
    known('kind', kind, itemKinds);
    known('state', state, itemStates);
    known('sort', sort, itemSorts);
    if (serials && serials.length > mostSerials)
      throw new BadInputError([{ field: 'serials', value: `${serials.length} serials`, wanted: `at most ${mostSerials} serials` }]);
    const by = itemSorts.find((each) => each === sort) ?? 'serial';
    const [key, id] = keyOf(after, by);
    const days = await this.places.now();
    await this.dates.workOut(days.latest);
    const text = search?.trim().replaceAll(/[\\%_]/g, '\\$&') ?? '';
    const isBeginning = text !== '' && text.length < 3;
    const isPlain = by === 'serial' && descending !== true;
    const rows: (SummaryRow & { total: number; sort_key: string })[] = await this.dataSource.query(
      isBeginning && isPlain ? bySerial : sorted(by, descending === true),
      [
        ...[kind || null, state || null, model || null, text.length < 3 ? null : `%${text}%`],
        ...[isBeginning ? `${text.toLowerCase()}%` : null, depot || null, serials ?? null],
        ...[key, id, size + 1],
      ],
    );
    const total = rows[0]?.total ?? 0;
    const found = rows.filter((row) => row.id !== null);
    return {
      ...connectionOf(
        found,
        size,
        (row) => JSON.stringify([by, row.sort_key, row.id]),
        (row) => summaryOf(row, days.at(row.depot)),
      ),
      totalCount: Math.min(total, mostCounted),
      isMoreThanCounted: total > mostCounted,
    };
  }
}

/** Key and serial of the last row before; a cursor goes with the order in which it was given. */
function keyOf(after: string | null | undefined, sort: ItemSort): [string | null, string | null] {
  const text = readCursor(after);
  if (text === undefined) return [null, null];
  const wrong = () =>
    new BadInputError([{ field: 'after', value: String(after).slice(0, 80), wanted: 'a cursor of an earlier page in this order' }]);
  try {
    const [by, key, id] = JSON.parse(text) as unknown[];
    if (by !== sort || typeof key !== 'string' || typeof id !== 'string') throw wrong();
    if (sortKeys[sort].type === 'date' && !/^(\d{4}-\d\d-\d\d|infinity)$/.test(key)) throw wrong();
    return [key, id];
  } catch {
    throw wrong();
  }
}

function known(field: string, value: string | null | undefined, among: readonly string[]): void {
  if (value && !among.includes(value))
    throw new BadInputError([{ field, value: value.slice(0, 80), wanted: `one of: ${among.join(', ')}` }]);
}
