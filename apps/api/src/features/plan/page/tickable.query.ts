import type { EntityManager } from 'typeorm';
import { type PackPlan, wholeHang } from '#pack-plan';
import { NotFoundError } from '../../../platform/faults/fault.js';

const tickable = `SELECT plan.id, plan.state, plan.tour_id AS "tourId", head.data->'show' AS show,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('id', data->'id', 'rows', (SELECT coalesce(jsonb_agg(jsonb_build_object('number', row->'number')), '[]')
     FROM jsonb_array_elements(data->'rows') row)) ORDER BY place), '[]') FROM plan_part WHERE plan_id = plan.id AND part = 'truck') AS trucks,
  (SELECT coalesce(jsonb_agg(data - '{picks,joints,outline,stages,boxes,masses}'::text[] ORDER BY place), '[]') FROM plan_part WHERE plan_id = plan.id AND part = 'hang') AS hangs,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('number', move->'number')), '[]') FROM plan_part, jsonb_array_elements(data->'moves') move
   WHERE plan_id = plan.id AND part = 'carts') AS moves
FROM pack_plan plan JOIN plan_part head ON head.plan_id = plan.id AND head.part = 'head' WHERE plan.id = $1`;

/** What can be ticked off a plan: rows of its trucks, steps of its lift sequences, box moves, and nothing else of it. */
export interface Tickable {
  readonly id: string;
  readonly state: 'draft' | 'released' | 'superseded';
  readonly tourId: string;
  readonly plan: Pick<PackPlan, 'show' | 'truck' | 'picks' | 'carts'>;
}

export async function getTickable(manager: EntityManager, planId: string): Promise<Tickable> {
  const [found]: (Omit<Tickable, 'plan'> & { show: PackPlan['show']; trucks: object[]; hangs: object[]; moves: object[] })[] =
    await manager.query(tickable, [planId]);
  if (!found) throw new NotFoundError('This plan (a newer draft has taken its place: open the show again)');
  const { show, trucks, hangs, moves, ...rest } = found;
  const bare = { picks: [], joints: [], outline: { boxes: [] } };
  const picks = { hangs: hangs.map((hang) => wholeHang({ ...hang, ...bare } as never)) };
  return { ...rest, plan: { show, truck: { trucks }, carts: { moves }, picks } as never };
}
