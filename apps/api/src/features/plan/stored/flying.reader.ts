import type { EntityManager } from 'typeorm';
import { type HangResult, stepKey, stepsDown, tickText } from '#pack-plan';

/** A hang that is up, or on its way there or back. */
export interface FlyingHang {
  readonly planId: string;
  readonly hang: string;
  readonly name: string;
  /** Who ticked, or did, the last step of its way up. */
  readonly inCharge: string | null;
}

// What went up, by what is ticked and by what was done although barred, and what came down.
const flying = `WITH up AS (SELECT plan_id, subject AS hang, place, ticked_at AS at, ticked_by AS who FROM tick WHERE kind = 'step-up' AND plan_id = ANY($1::uuid[])
  UNION ALL SELECT plan.id, act.hang, split_part(act.what, ':', 3)::int, act.done_at, account.name FROM pack_plan plan JOIN barred_act act ON act.tour_id = plan.tour_id AND act.show_id = plan.show_id
    LEFT JOIN account ON account.id = act.done_by_id WHERE plan.id = ANY($1::uuid[]) AND act.hang IS NOT NULL),
hung AS (SELECT plan_id, hang, array_agg(place) AS up, (array_agg(who ORDER BY at DESC))[1] AS who FROM up GROUP BY plan_id, hang)
SELECT hung.plan_id AS "planId", hung.hang, part.data->>'name' AS name, hung.who AS "inCharge", part.data->'runningOrder' AS "order", hung.up,
  ARRAY(SELECT place FROM tick WHERE tick.plan_id = hung.plan_id AND kind = 'step-down' AND subject = hung.hang) AS down
FROM hung JOIN plan_part part ON part.plan_id = hung.plan_id AND part.part = 'hang' AND part.key = hung.hang
ORDER BY hung.plan_id, part.key`;

type Hung = FlyingHang & { readonly order: HangResult['runningOrder']; readonly up: readonly number[]; readonly down: readonly number[] };

/** From the first step up until every hold of the way down of what went up is ticked. */
function isUp({ hang, order, up, down }: Hung): boolean {
  const passed = new Set(up.map((step) => tickText(stepKey(hang, 'up', step))));
  const ticked = new Set(down.map((step) => tickText(stepKey(hang, 'down', step))));
  const holds = stepsDown(order, passed).filter((each) => each.hold);
  return holds.length === 0 || holds.some((each) => !ticked.has(each.key));
}

/** Hangs of these plans that are in the air, in the order of their ids. */
export async function flyingHangs(manager: EntityManager, planIds: readonly string[]): Promise<FlyingHang[]> {
  if (planIds.length === 0) return [];
  const hung: Hung[] = await manager.query(flying, [planIds]);
  return hung.filter(isUp).map(({ planId, hang, name, inCharge }) => ({ planId, hang, name, inCharge }));
}
