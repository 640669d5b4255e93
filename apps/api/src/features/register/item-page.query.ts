import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { NotFoundError } from '../../platform/faults/fault.js';
import { connectionOf, pageSize } from '../../platform/graphql/paging.js';
import { PlaceDaysReader } from '../venue/place-days.reader.js';
import { recordNumber } from './records/record-number.js';
import { ItemDates } from './item-dates.writer.js';
import { type SummaryRow, summaryColumns, summaryOf } from './item-summary.reader.js';
import type { HistoryConnection, ItemHead, ItemPromise } from './register.types.js';

const head = `SELECT ${summaryColumns}, item.rest,
  CASE WHEN item.kind = 'cart' THEN (SELECT coalesce(array_agg(box.id ORDER BY box.stack_slot), '{}') FROM item box WHERE box.stack_cart = item.id) END AS stack,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('tour', tour_name, 'from', lower(period), 'to', upper(period) - 1, 'count', booking.count) ORDER BY lower(period)), '[]')
   FROM (SELECT * FROM booking WHERE booking.item_id = item.id ORDER BY upper(period) DESC LIMIT 50) booking) AS promises
FROM item WHERE item.id = $1`;

/** What happened to a batch before some of it was taken out happened to that part too. */
const history = `WITH RECURSIVE lineage (id, through) AS (SELECT $1::text, NULL::bigint
  UNION ALL SELECT split.parent_id, split.through_event FROM lineage JOIN lot_split split ON split.child_id = lineage.id)
SELECT event.id, at, who, what, sentence FROM lineage JOIN event ON event.item_id = lineage.id AND (lineage.through IS NULL OR event.id <= lineage.through)
WHERE row_table IS NULL AND ($2::bigint IS NULL OR event.id < $2) ORDER BY event.id DESC LIMIT $3`;

/** The page of one item: its head, and its events a page at a time, newest first. */
@Injectable()
export class ItemPageQuery {
  constructor(
    private readonly dataSource: DataSource,
    private readonly dates: ItemDates,
    private readonly places: PlaceDaysReader,
  ) {}

  async head(id: string): Promise<ItemHead> {
    const days = await this.places.now();
    await this.dates.workOut(days.latest);
    const rows: (SummaryRow & { rest: object; stack: string[] | null; promises: ItemPromise[] })[] = await this.dataSource.query(head, [
      id,
    ]);
    const row = rows[0];
    if (!row) throw new NotFoundError(`The item ${id}`);
    const { kind, model, state, depot, count, in_item: inItem, stack, rest } = row;
    const item = {
      ...{ id, kind, model, state, depot, ...rest },
      ...(count === null ? {} : { count }),
      ...(inItem === null ? {} : { in: inItem }),
      ...(stack === null ? {} : { stack }),
    };
    return { id, item, summary: summaryOf(row, days.at(row.depot)), promises: row.promises };
  }

  async history(itemId: string, first?: number | null, after?: string | null): Promise<HistoryConnection> {
    const size = pageSize(first);
    const rows: { id: string; at: Date; who: string; what: string; sentence: string }[] = await this.dataSource.query(history, [
      itemId,
      recordNumber(after),
      size + 1,
    ]);
    return connectionOf(
      rows,
      size,
      (row) => row.id,
      ({ at, who, what, sentence }) => ({ at: at.toISOString(), who, what, sentence }),
    );
  }
}
