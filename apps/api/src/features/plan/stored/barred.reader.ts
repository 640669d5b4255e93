import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type BarredItem, barredItems } from '#pack-plan';
import { loadTourFile } from '../../../planning/snapshot/tour-file.reader.js';
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

interface Suspect extends Omit<BarredInPlan, keyof BarredItem> {
  readonly id: string;
}

// The days of the tour as it stands now: a tour that was moved is judged on the days it was moved to.
const headOf = `SELECT plan.tour_id AS "tourId", show->>'to' AS until, show->>'timeZone' AS zone, tour.prep_from::text AS prep
FROM pack_plan plan JOIN tour ON tour.id = plan.tour_id CROSS JOIN LATERAL jsonb_array_elements(tour.data->'shows') show
WHERE plan.id = $1 AND show->>'id' = plan.show_id`;

// Used items that may be barred by what is known of them without judging; the gate has the word on each.
const suspects = `WITH used AS (SELECT DISTINCT each->>'item' AS id FROM plan_part, jsonb_array_elements(data) each WHERE plan_id = $1 AND part = 'uses'),
suspect AS (SELECT used.id, item.count IS NOT NULL AS is_lot FROM used LEFT JOIN item ON item.id = used.id
  WHERE item.id IS NULL OR item.state <> 'in service' OR NOT item.is_accepted OR EXISTS (SELECT FROM model WHERE NOT is_accepted AND model.model = item.model) OR NOT item.due_known OR item.due_state IN ('failed', 'blocked', 'no record')
    OR item.due_on < $2::date OR item.due_holds_through < $2::date OR item.rest ? 'hire'),
loads AS (SELECT load.value->>'id' AS id, load.value->>'hang' AS hang, load.value->>'cart' AS cart,
    ARRAY(SELECT box->>'serial' FROM jsonb_array_elements(load.value->'boxes') box) AS boxes
  FROM plan_part, jsonb_array_elements(data->'loads') load WHERE plan_id = $1 AND part = 'carts'),
hangs AS (SELECT key AS id, ARRAY(SELECT pick->>'hoistSerial' FROM jsonb_array_elements(data->'picks') pick) AS hoists
  FROM plan_part WHERE plan_id = $1 AND part = 'hang'),
chosen AS (SELECT each->>'item' AS id, each #>> '{fact,hang}' AS hang FROM plan_part, jsonb_array_elements(data->'chosen') each
  WHERE plan_id = $1 AND part = 'hardware' AND each #>> '{fact,hang}' IS NOT NULL)
SELECT suspect.id,
  ARRAY(SELECT loads.id FROM loads WHERE loads.cart = suspect.id OR suspect.id = ANY(loads.boxes)) AS loads,
  ARRAY(SELECT loads.hang FROM loads WHERE suspect.id = ANY(loads.boxes)
    UNION SELECT hangs.id FROM hangs WHERE suspect.is_lot OR suspect.id = ANY(hangs.hoists)
    UNION SELECT chosen.hang FROM chosen WHERE chosen.id = suspect.id) AS hangs,
  (SELECT coalesce(jsonb_agg(DISTINCT jsonb_build_object('truck', truck.key, 'row', riding.value->'number')), '[]')
   FROM plan_part truck, jsonb_array_elements(truck.data->'rows') riding, jsonb_array_elements_text(riding.value->'pieces') piece
   WHERE truck.plan_id = $1 AND truck.part = 'truck' AND (piece = suspect.id
     OR piece IN (SELECT loads.cart FROM loads WHERE suspect.id = ANY(loads.boxes)))) AS rows
FROM suspect ORDER BY suspect.id`;

/** What the gate says now of everything that a plan was made with. Scan, tick, signature, screens and the notes of the day all ask here. */
@Injectable()
export class BarredReader {
  constructor(@Inject(CLOCK) private readonly clock: Clock) {}

  /** Barred items of a plan from today, or from the first day of its tour where that is later, through the last day of its show. */
  async of(manager: EntityManager, planId: string): Promise<readonly BarredInPlan[]> {
    const [head]: { tourId: string; until: string; zone: string; prep: string }[] = await manager.query(headOf, [planId]);
    if (!head) return [];
    const from = laterOf(dayIn(this.clock, head.zone), head.prep);
    const to = laterOf(from, head.until);
    const found: Suspect[] = await manager.query(suspects, [planId, to]);
    if (found.length === 0) return [];
    const ids = found.map((each) => each.id);
    const barred = new Map(barredItems(await loadTourFile(manager, head.tourId, ids), ids, { from, to }).map((each) => [each.item, each]));
    return found.flatMap(({ id, ...concerned }) => {
      const said = barred.get(id);
      return said ? [{ ...said, ...concerned }] : [];
    });
  }
}

const laterOf = (a: string, b: string): string => (a > b ? a : b);
