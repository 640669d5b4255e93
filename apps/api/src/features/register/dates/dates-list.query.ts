import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { addDays } from '#kernel';
import { BadInputError } from '../../../platform/faults/fault.js';
import { connectionOf, pageSize, readCursor } from '../../../platform/graphql/paging.js';
import { PlaceDaysReader } from '../../venue/place-days.reader.js';
import { ItemDates } from '../item-dates.writer.js';
import { type SummaryRow, summaryColumns, summaryOf } from '../item-summary.reader.js';
import type { ExaminedConnection } from '../register.types.js';
import { type DatesAsked, checkDatesAsked } from './dates-asked.js';

// The order is that of item_due_index, and within a depot or a kind of the indexes beside it. What is booked for a tour is found first: it is little.
const usable = `(state = 'in service' AND due_on IS NOT NULL)`;
const dueKey = `(coalesce(due_on, '-infinity'::date))`;
const page = `SELECT ${summaryColumns}, ${usable} AS usable FROM item WHERE due_state IS NOT NULL AND state <> 'retired'
  AND ($1::boolean IS NULL OR (${usable}, ${dueKey}, id) > ($1, coalesce($2::date, '-infinity'::date), $3))
  AND ($5::text IS NULL OR depot = $5) AND ($6::text IS NULL OR kind = $6)
  AND ($7::date IS NULL OR (${usable}, ${dueKey}) <= (true, $7))
  AND ($8::text IS NULL OR id = ANY (ARRAY(SELECT item_id FROM booking WHERE holder_kind = 'tour' AND holder_id = $8)))
  ORDER BY ${usable}, ${dueKey}, id LIMIT $4`;

/** Everything that is examined: what its state or its records keep out of use first, then what runs out first. Retired items are left out. */
@Injectable()
export class DatesListQuery {
  constructor(
    private readonly dataSource: DataSource,
    private readonly dates: ItemDates,
    private readonly places: PlaceDaysReader,
  ) {}

  /** With `days`: what may not be used, and what runs out today or so many days ahead, by the latest day of all places. */
  async examined(first?: number | null, after?: string | null, asked: DatesAsked = {}): Promise<ExaminedConnection> {
    const size = pageSize(first);
    checkDatesAsked(asked);
    const days = await this.places.now();
    await this.dates.workOut(days.latest);
    const key = keyOf(after);
    const until = asked.days ? addDays(days.latest, asked.days) : null;
    const choice = [asked.depot || null, asked.kind || null, until, asked.tour || null];
    const rows: (SummaryRow & { usable: boolean })[] = await this.dataSource.query(page, [...key, size + 1, ...choice]);
    return connectionOf(
      rows,
      size,
      (row) => JSON.stringify([row.usable, row.due_on, row.id]),
      (row) => summaryOf(row, days.at(row.depot)),
    );
  }
}

function keyOf(after: string | null | undefined): [boolean | null, string | null, string | null] {
  const text = readCursor(after);
  if (text === undefined) return [null, null, null];
  const wrong = () => new BadInputError([{ field: 'after', value: String(after).slice(0, 80), wanted: 'a cursor of an earlier page' }]);
  try {
    const [usable, dueOn, id] = JSON.parse(text) as unknown[];
    const isDay = typeof dueOn === 'string' && /^\d{4}-\d\d-\d\d$/.test(dueOn);
    if (typeof usable !== 'boolean' || typeof id !== 'string' || !(dueOn === null || isDay)) throw wrong();
    return [usable, isDay ? dueOn : null, id];
  } catch {
    throw wrong();
  }
}
