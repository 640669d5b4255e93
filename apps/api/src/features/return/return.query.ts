import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import {
  type CartLoad,
  type FaultFound,
  type FaultRecord,
  type LastSeen,
  type ReturnPiece,
  type Sighting,
  type Travelling,
  openFaults,
  whatIsBack,
} from '#pack-plan';
import { NotFoundError } from '../../platform/faults/fault.js';
import { PlanReader } from '../plan/stored/plan.reader.js';
import type { FaultSheet, OpenFaultView } from './return.types.js';

const travelling = `SELECT item.id, item.kind, item.model, item.stack_cart AS cart, item.stack_slot AS slot
FROM plan_part CROSS JOIN LATERAL jsonb_array_elements(data) used JOIN item ON item.id = used->>'item'
WHERE plan_id = $1 AND part = 'uses' AND item.count IS NULL ORDER BY item.id`;

const loads = `SELECT load->>'id' AS id, load->>'cart' AS cart, load->'boxes' AS boxes
FROM plan_part CROSS JOIN LATERAL jsonb_array_elements(data->'loads') WITH ORDINALITY listed (load, number)
WHERE plan_id = $1 AND part = 'carts' ORDER BY number`;

const returned = `SELECT DISTINCT ON (record.item_id) record.item_id AS item, coalesce(record.done_at, record.at) AS at, account.name AS by
FROM floor_record record JOIN account ON account.id = record.by_id
WHERE record.tour_id = $1 AND record.show_id = $2 AND record.kind = 'returned' ORDER BY record.item_id, record.id DESC`;

// The last that was put on record of each on a floor; what was promised or booked is no place.
const onRecord = `SELECT named.id AS item, newest.at, newest.who AS by, newest.sentence FROM unnest($1::text[]) named (id)
CROSS JOIN LATERAL (SELECT coalesce(done_at, at) AS at, who, sentence FROM event WHERE event.item_id = named.id AND row_table IS NULL
  AND what IN ('stacked', 'moved', 'moved back', 'confirmed', 'read wrong', 'returned', 'bench') ORDER BY event.id DESC LIMIT 1) newest`;

const inRows = `SELECT piece AS item, tick.kind, tick.subject AS truck, tick.place AS row, tick.ticked_at AS at, tick.ticked_by AS by
FROM tick JOIN plan_part ON plan_part.plan_id = tick.plan_id AND part = 'truck' AND key = tick.subject
CROSS JOIN LATERAL jsonb_array_elements(data->'rows') riding CROSS JOIN LATERAL jsonb_array_elements_text(riding->'pieces') piece
WHERE tick.plan_id = $1 AND tick.kind IN ('row', 'unload', 'load-out') AND (riding->>'number')::int = tick.place`;

const faultsOf = `SELECT record.id::int AS id, record.item_id AS item, record.data, coalesce(record.done_at, record.at) AS at, account.name AS by
FROM floor_record record JOIN account ON account.id = record.by_id WHERE record.item_id = ANY($1) AND record.kind = 'fault' ORDER BY record.id DESC`;

const testsOf = `SELECT id::int AS id, item_id AS item, (data->>'passed')::boolean AS passed FROM floor_record WHERE item_id = ANY($1) AND kind = 'bench' ORDER BY id`;

const usedIn = `SELECT used->>'item' AS id FROM plan_part CROSS JOIN LATERAL jsonb_array_elements(data) used WHERE plan_id = $1 AND part = 'uses'`;

const fliesIn = `SELECT plan.tour_id AS "tourId", plan.show_id AS "showId", head.data #>> '{show,name}' AS show, head.data #>> '{show,from}' AS "from",
  load->>'id' AS load, load->>'cart' AS cart
FROM pack_plan plan JOIN plan_part head ON head.plan_id = plan.id AND head.part = 'head' JOIN plan_part carts ON carts.plan_id = plan.id AND carts.part = 'carts'
CROSS JOIN LATERAL jsonb_array_elements(carts.data->'loads') load
WHERE plan.state = 'released' AND (load->>'cart' = $1 OR jsonb_path_exists(load, '$.boxes[*] ? (@.serial == $serial)', jsonb_build_object('serial', $1::text)))
ORDER BY 4, 1, 2 LIMIT 20`;

const spareOf = `SELECT id FROM item WHERE kind = $1 AND model = $2 AND id <> $3 AND state = 'in service' AND count IS NULL
  AND NOT EXISTS (SELECT FROM booking WHERE booking.item_id = item.id AND upper(period) > $4::date) ORDER BY id LIMIT 1`;

interface Moment {
  readonly at: Date;
  readonly by: string;
}
type RowSeen = Moment & {
  readonly item: string;
  readonly kind: 'row' | 'unload' | 'load-out';
  readonly truck: string;
  readonly row: number;
};

const ways = { row: 'in', unload: 'off', 'load-out': 'in for home' } as const;

/** What screens of the floor read of a return and of faults. */
@Injectable()
export class ReturnQuery {
  constructor(
    private readonly dataSource: DataSource,
    private readonly plans: PlanReader,
  ) {}

  async pieces(planId: string): Promise<readonly ReturnPiece[]> {
    const { manager } = this.dataSource;
    const { tourId, showId } = await this.plans.headInForce(manager, planId);
    const things: Travelling[] = await manager.query(travelling, [planId]);
    const back: (Moment & { item: string })[] = await manager.query(returned, [tourId, showId]);
    const seen: (Moment & { item: string; sentence: string })[] = await manager.query(onRecord, [things.map((each) => each.id)]);
    const ticked: RowSeen[] = await manager.query(inRows, [planId]);
    const sightings = [
      ...seen.map(({ item, sentence, ...moment }) => sighting(item, moment, { code: 'record', sentence })),
      ...ticked.map(({ item, kind, truck, row, ...moment }) => sighting(item, moment, { code: 'row', way: ways[kind], truck, row })),
    ];
    const cartLoads: CartLoad[] = await manager.query(loads, [planId]);
    return whatIsBack(
      things,
      cartLoads,
      back.map(({ item, at, by }) => ({ item, moment: at.toISOString(), by })),
      sightings,
    );
  }

  async fault(itemId: string, day: string): Promise<FaultSheet> {
    const { manager } = this.dataSource;
    const [item]: Omit<FaultSheet, 'faults' | 'fliesIn' | 'spare'>[] = await manager.query(
      'SELECT id, kind, model, state, count FROM item WHERE id = $1',
      [itemId],
    );
    if (!item) throw new NotFoundError(`The item ${itemId.slice(0, 80)}`);
    const [spare]: { id: string }[] = await manager.query(spareOf, [item.kind, item.model, itemId, day]);
    return { ...item, faults: await this.faults([itemId]), fliesIn: await manager.query(fliesIn, [itemId]), spare: spare?.id ?? null };
  }

  /** Faults of what a plan uses that nothing has answered yet. */
  async open(planId: string): Promise<OpenFaultView[]> {
    const { manager } = this.dataSource;
    const used: { id: string }[] = await manager.query(usedIn, [planId]);
    const ids = used.map((each) => each.id);
    const tests: { item: string; id: number; passed: boolean }[] = await manager.query(testsOf, [ids]);
    return [...openFaults(await this.faults(ids), tests)];
  }

  private async faults(ids: readonly string[]): Promise<FaultRecord[]> {
    const rows: (Moment & { id: number; item: string; data: FaultFound })[] = await this.dataSource.query(faultsOf, [ids]);
    return rows.map(({ at, data, ...rest }) => ({ ...rest, ...data, moment: at.toISOString() }));
  }
}

const sighting = (item: string, { at, by }: Moment, place: LastSeen['place']): Sighting => ({ item, moment: at.toISOString(), by, place });
