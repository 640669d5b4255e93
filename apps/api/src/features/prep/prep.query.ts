import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { PlanReader } from '../plan/stored/plan.reader.js';
import type { PrepRecord, PrepSheet, UsedView } from './prep.types.js';

const uses = `SELECT item.id, item.kind, item.model, (used->>'count')::int AS count, item.depot, coalesce(item.in_item, item.stack_cart) AS inside
FROM plan_part CROSS JOIN LATERAL jsonb_array_elements(data) used JOIN item ON item.id = used->>'item'
WHERE plan_id = $1 AND part = 'uses' ORDER BY item.id`;

// A test of a box holds for the tour: it is not done again for each of its shows.
const records = `SELECT DISTINCT ON (record.item_id, record.kind) record.item_id AS item, record.kind, (record.data->>'agrees')::boolean AS agrees, record.data,
  coalesce(record.done_at, record.at) AS at, account.name AS by
FROM floor_record record JOIN account ON account.id = record.by_id
WHERE record.tour_id = $1 AND (record.kind = 'bench' OR record.kind IN ('splays', 'trunk') AND record.show_id = $2)
ORDER BY record.item_id, record.kind, record.id DESC`;

/** What is done before a show leaves: what it uses and where that is, and what was tested, read back and counted. */
@Injectable()
export class PrepQuery {
  constructor(
    private readonly dataSource: DataSource,
    private readonly plans: PlanReader,
  ) {}

  async sheet(planId: string): Promise<PrepSheet> {
    const { manager } = this.dataSource;
    const { tourId, showId } = await this.plans.headInForce(manager, planId);
    const used: UsedView[] = await manager.query(uses, [planId]);
    const found: (Omit<PrepRecord, 'moment'> & { at: Date })[] = await manager.query(records, [tourId, showId]);
    return { uses: used, records: found.map(({ at, ...rest }) => ({ ...rest, moment: at.toISOString() })) };
  }
}
