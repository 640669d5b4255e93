import type { EntityManager } from 'typeorm';

/** A hang that is up, or on its way there or back. */
export interface FlyingHang {
  readonly planId: string;
  readonly hang: string;
  readonly name: string;
  /** Who ticked, or did, the last step of its way up. */
  readonly inCharge: string | null;
}

// From the first step up, also one that was done although barred, until every hold of the way down is ticked.
const flying = `WITH up AS (SELECT plan_id, subject AS hang, ticked_at AS at, ticked_by AS who FROM tick WHERE kind = 'step-up' AND plan_id = ANY($1::uuid[])
  UNION ALL SELECT plan.id, act.hang, act.done_at, account.name FROM pack_plan plan JOIN barred_act act ON act.tour_id = plan.tour_id AND act.show_id = plan.show_id
    LEFT JOIN account ON account.id = act.done_by_id WHERE plan.id = ANY($1::uuid[]) AND act.hang IS NOT NULL)
SELECT DISTINCT ON (up.plan_id, part.key) up.plan_id AS "planId", up.hang, part.data->>'name' AS name, up.who AS "inCharge"
FROM up JOIN plan_part part ON part.plan_id = up.plan_id AND part.part = 'hang' AND part.key = up.hang
CROSS JOIN LATERAL (SELECT count(*) AS holds FROM jsonb_array_elements(part.data #> '{runningOrder,comingDown}') step WHERE step->'hold' = 'true') down
WHERE down.holds = 0 OR down.holds > (SELECT count(*) FROM tick WHERE tick.plan_id = up.plan_id AND kind = 'step-down' AND subject = up.hang)
ORDER BY up.plan_id, part.key, up.at DESC`;

/** Hangs of these plans that are in the air, in the order of their ids. */
export const flyingHangs = (manager: EntityManager, planIds: readonly string[]): Promise<FlyingHang[]> =>
  planIds.length === 0 ? Promise.resolve([]) : manager.query(flying, [planIds]);
