import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { unjudgedPlaces } from '#inspection-calendar';
import { type BarredItem, barredItems, placeOf } from '#pack-plan';
import { loadItems } from '../../../planning/snapshot/kit-snapshot.js';
import { loadRuledTours } from '../../../planning/snapshot/judged.reader.js';
import { zoneOfShow } from '../../venue/show-day.reader.js';
import { CLOCK, type Clock, dayIn } from '../../../platform/config/config.js';

/** An item of a plan that must not fly as things stand now, with what it concerns. */
export interface BarredInPlan extends BarredItem {
  /** Cart loads that hold it, or ride on it. */
  readonly loads: readonly string[];
  /** Hangs that it is part of; a batch is part of all. */
  readonly hangs: readonly string[];
  /** Rows of trucks that it rides in. */
  readonly rows: readonly { readonly truck: string; readonly row: number }[];
}

interface Head {
  readonly planId: string;
  readonly tourId: string;
  readonly until: string;
  readonly zone: string;
  readonly prep: string;
}

/** A plan with the days on which the gate judges what it uses. */
interface Judged {
  readonly planId: string;
  readonly tourId: string;
  readonly days: { readonly from: string; readonly to: string };
}

// The days of the tour as it stands now: a tour that was moved is judged on the days it was moved to.
const heads = `SELECT plan.id AS "planId", plan.tour_id AS "tourId", show->>'to' AS until, ${zoneOfShow} AS zone, tour.prep_from::text AS prep
FROM pack_plan plan JOIN tour ON tour.id = plan.tour_id CROSS JOIN LATERAL jsonb_array_elements(tour.data->'shows') show
WHERE plan.id = ANY($1::uuid[]) AND show->>'id' = plan.show_id`;

// Used items of each plan that may be barred by what is known of them without judging, all of them where a place of its tour is not judged; the gate
// has the word on each. LIMIT 1: each is
// looked up by its key, where the planner would read the whole register.
const suspects = `SELECT wanted.plan_id AS "planId", used.id FROM unnest($1::uuid[], $2::date[], $3::boolean[]) AS wanted (plan_id, until, is_unjudged)
CROSS JOIN LATERAL (SELECT DISTINCT each->>'item' AS id FROM plan_part, jsonb_array_elements(data) each WHERE plan_id = wanted.plan_id AND part = 'uses') used
LEFT JOIN LATERAL (SELECT * FROM item WHERE item.id = used.id LIMIT 1) item ON true
WHERE wanted.is_unjudged OR item.id IS NULL OR item.state <> 'in service' OR NOT item.is_accepted OR EXISTS (SELECT FROM model WHERE NOT is_accepted AND model.model = item.model)
  OR NOT item.due_known OR item.due_state IN ('failed', 'blocked', 'no record')
  OR item.due_on < wanted.until OR item.due_holds_through < wanted.until OR item.rest ?| '{hire,lent}'
ORDER BY wanted.plan_id, used.id`;

// What items of a plan concern; a batch is part of every hang.
const concerns = `WITH barred AS (SELECT named.id, EXISTS (SELECT FROM item WHERE item.id = named.id AND count IS NOT NULL) AS is_lot FROM unnest($2::text[]) named (id)),
loads AS MATERIALIZED (SELECT load.value->>'id' AS id, load.value->>'hang' AS hang, load.value->>'cart' AS cart,
    ARRAY(SELECT box->>'serial' FROM jsonb_array_elements(load.value->'boxes') box) AS boxes
  FROM plan_part, jsonb_array_elements(data->'loads') load WHERE plan_id = $1 AND part = 'carts'),
hangs AS MATERIALIZED (SELECT key AS id, ARRAY(SELECT pick->>'hoistSerial' FROM jsonb_array_elements(data->'picks') pick) AS hoists
  FROM plan_part WHERE plan_id = $1 AND part = 'hang'),
chosen AS MATERIALIZED (SELECT each->>'item' AS id, each #>> '{fact,hang}' AS hang FROM plan_part, jsonb_array_elements(data->'chosen') each
  WHERE plan_id = $1 AND part = 'hardware' AND each #>> '{fact,hang}' IS NOT NULL)
SELECT barred.id,
  ARRAY(SELECT loads.id FROM loads WHERE loads.cart = barred.id OR barred.id = ANY(loads.boxes)) AS loads,
  ARRAY(SELECT loads.hang FROM loads WHERE barred.id = ANY(loads.boxes)
    UNION SELECT hangs.id FROM hangs WHERE barred.is_lot OR barred.id = ANY(hangs.hoists)
    UNION SELECT chosen.hang FROM chosen WHERE chosen.id = barred.id) AS hangs,
  (SELECT coalesce(jsonb_agg(DISTINCT jsonb_build_object('truck', truck.key, 'row', riding.value->'number')), '[]')
   FROM plan_part truck, jsonb_array_elements(truck.data->'rows') riding, jsonb_array_elements_text(riding.value->'pieces') piece
   WHERE truck.plan_id = $1 AND truck.part = 'truck' AND (piece = barred.id
     OR piece IN (SELECT loads.cart FROM loads WHERE barred.id = ANY(loads.boxes)))) AS rows
FROM barred ORDER BY barred.id`;

/** What the gate says now of everything that a plan was made with. Scan, tick, signature, screens and the notes of the day all ask here. */
@Injectable()
export class BarredReader {
  constructor(@Inject(CLOCK) private readonly clock: Clock) {}

  /** Barred items of a plan from today, or from the first day of its tour where that is later, through the last day of its show. */
  async of(manager: EntityManager, planId: string): Promise<readonly BarredInPlan[]> {
    const barred = (await this.ofEach(manager, [planId])).get(planId) ?? [];
    if (barred.length === 0) return [];
    const rows: (Omit<BarredInPlan, keyof BarredItem> & { id: string })[] = await manager.query(concerns, [
      planId,
      barred.map((each) => each.item),
    ]);
    return rows.flatMap(({ id, ...concerned }) => barred.filter((each) => each.item === id).map((each) => ({ ...each, ...concerned })));
  }

  /** The same of several plans, by plan, without what each item concerns. */
  async ofEach(manager: EntityManager, planIds: readonly string[]): Promise<ReadonlyMap<string, readonly BarredItem[]>> {
    if (planIds.length === 0) return new Map();
    const judged = (await manager.query<Head[]>(heads, [planIds])).map((head) => this.judged(head));
    const ruled = await loadRuledTours(manager, [...new Set(judged.map((each) => each.tourId))]);
    const isUnjudged = ({ tourId }: Judged): boolean => {
      const tour = ruled.get(tourId);
      return tour !== undefined && unjudgedPlaces(placeOf(tour)).length > 0;
    };
    const found: { planId: string; id: string }[] = await manager.query(suspects, [
      judged.map((each) => each.planId),
      judged.map((each) => each.days.to),
      judged.map(isUnjudged),
    ]);
    if (found.length === 0) return new Map();
    const items = await loadItems(manager, [...new Set(found.map((each) => each.id))]);
    return new Map(
      judged.flatMap(({ planId, tourId, days }) => {
        const ids = found.flatMap((each) => (each.planId === planId ? [each.id] : []));
        const tour = ruled.get(tourId);
        return tour && ids.length > 0 ? [[planId, barredItems({ ...tour, items }, ids, days)] as const] : [];
      }),
    );
  }

  private judged({ planId, tourId, zone, prep, until }: Head): Judged {
    const from = laterOf(dayIn(this.clock, zone), prep);
    return { planId, tourId, days: { from, to: laterOf(from, until) } };
  }
}

const laterOf = (a: string, b: string): string => (a > b ? a : b);
