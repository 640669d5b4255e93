import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { InspectedItem } from '#records';
import { itemKinds } from '#tour-file';
import { BadInputError } from '../../platform/faults/fault.js';
import { ItemDates } from '../register/item-dates.writer.js';
import { PlaceDaysReader } from '../venue/place-days.reader.js';
import type { InspectedItems } from './inspection.types.js';

/** Most items that are given at once. */
const most = 500;

const records = `SELECT coalesce(jsonb_agg(jsonb_build_object('id', record.id::text, 'examination', record.data, 'recordedBy', record.recorded_by,
    'recordedAt', record.recorded_at, 'reason', record.reason,
    'file', CASE WHEN file.id IS NULL THEN NULL ELSE jsonb_build_object('name', file.name, 'sha256', file.sha256) END) ORDER BY record.data->>'on', record.id), '[]')
  FROM examination record LEFT JOIN report_file file ON file.id = (record.data->>'reportFile')::uuid
  WHERE record.item_id = item.id AND NOT EXISTS (SELECT FROM examination later WHERE later.supersedes = record.id)`;

const facts = `SELECT item.id, item.kind, item.model, item.state, item.count, item.depot, item.rest->>'owner' AS owner, item.rest->>'declaredOn' AS "declaredOn",
  item.rest->>'boughtOn' AS "boughtOn", item.rest->>'firstUsedOn' AS "firstUsedOn", item.due_on::text AS "dueOn", item.due_state AS "dueState",
  coalesce(model.data->'ratedLoad', model.data->'ratedPick') AS rated,
  CASE WHEN model.data ?| '{ratedRearLinkN,ratedFrontPinN}' THEN jsonb_build_object('rearLinkN', model.data->'ratedRearLinkN', 'frontPinN', model.data->'ratedFrontPinN',
    'source', model.data->'ratedSource') END AS "ratedJoint", (${records}) AS records,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('on', on_day, 'what', what) ORDER BY id), '[]') FROM incident WHERE incident.item_id = item.id) AS incidents,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('tour', tour_name, 'from', lower(period), 'to', upper(period) - 1) ORDER BY lower(period)), '[]')
    FROM booking WHERE booking.item_id = item.id) AS flown,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('on', at::date, 'what', what, 'sentence', sentence) ORDER BY id), '[]')
    FROM event WHERE event.item_id = item.id AND what IN ('quarantined', 'released')) AS outs
FROM item LEFT JOIN model ON model.kind = (CASE item.kind WHEN 'box' THEN 'boxes' ELSE item.kind || 's' END) AND model.model = item.model`;

const named = `${facts} WHERE item.id = ANY($1) AND ($2::text IS NULL OR item.id > $2) ORDER BY item.id LIMIT $3`;
const chosen = `${facts} WHERE ($1::text[] IS NULL OR item.kind = ANY($1)) AND ($2::text[] IS NULL OR item.depot = ANY($2))
  AND ($3::text IS NULL OR item.id > $3) ORDER BY item.id LIMIT $4`;

export interface InspectedFilter {
  readonly ids?: readonly string[] | null;
  readonly kinds?: readonly string[] | null;
  readonly depots?: readonly string[] | null;
  /** The serial after which the list goes on. */
  readonly after?: string | null;
}

/** Items with their records and everything that an inspector asks for, by serial. */
@Injectable()
export class InspectionQuery {
  constructor(
    private readonly dataSource: DataSource,
    private readonly dates: ItemDates,
    private readonly places: PlaceDaysReader,
  ) {}

  async items({ ids, kinds, depots, after }: InspectedFilter): Promise<InspectedItems> {
    const unknown = kinds?.find((each) => !itemKinds.some((kind) => kind === each));
    if (unknown !== undefined)
      throw new BadInputError([{ field: 'kinds', value: unknown.slice(0, 80), wanted: `some of: ${itemKinds.join(', ')}` }]);
    await this.dates.workOut((await this.places.now()).latest);
    const some = (list: readonly string[] | null | undefined) => (list && list.length > 0 ? list : null);
    const rows: InspectedItem[] = await (ids
      ? this.dataSource.query(named, [ids, after ?? null, most + 1])
      : this.dataSource.query(chosen, [some(kinds), some(depots), after ?? null, most + 1]));
    return { items: rows.slice(0, most), hasMore: rows.length > most };
  }
}
