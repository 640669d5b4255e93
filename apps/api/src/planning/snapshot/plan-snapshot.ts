import { type EarlierPlan, type PackPlan, wholePlan } from '#pack-plan';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import { type Queryable, rowsOf } from './queryable.js';
import { type WrittenTick, textOfTick } from './written-tick.js';

/** A plan on file as a task reads it. */
export interface PlanOnFile {
  readonly id: string;
  readonly tourId: string;
  readonly showId: string;
  readonly state: 'draft' | 'released' | 'superseded';
  readonly revision: string | null;
  readonly plan: PackPlan;
}

type Kept = Omit<PlanOnFile, 'plan'> & { readonly plan: EarlierPlan };

const columns = 'id, tour_id AS "tourId", show_id AS "showId", state, revision, plan';
const whole = ({ plan, ...row }: Kept): PlanOnFile => ({ ...row, plan: wholePlan(plan) });

/** Of each show of a tour, or of one: the released plan, then the draft. */
export async function loadPlansInForce(db: Queryable, tourId: string, showId?: string): Promise<readonly PlanOnFile[]> {
  const rows = await rowsOf<Kept>(
    db,
    `SELECT ${columns} FROM pack_plan WHERE tour_id = $1 AND ($2::text IS NULL OR show_id = $2) AND state IN ('released', 'draft') ORDER BY state DESC, show_id`,
    [tourId, showId ?? null],
  );
  return rows.map(whole);
}

/** The plan, which must still be on file. */
export async function loadPlan(db: Queryable, planId: string): Promise<PlanOnFile> {
  const [row] = await rowsOf<Kept>(db, `SELECT ${columns} FROM pack_plan WHERE id = $1`, [planId]);
  if (!row) throw new NotFoundError('This plan (a newer draft has taken its place: open the show again)');
  return whole(row);
}

/** The plan, which must still be on file and not superseded. */
export async function loadPlanInForce(db: Queryable, planId: string): Promise<PlanOnFile> {
  const row = await loadPlan(db, planId);
  if (row.state === 'superseded')
    throw new BadInputError([
      { field: 'planId', value: planId, wanted: `the plan in force; revision ${row.revision} has been superseded, open the show again` },
    ]);
  return row;
}

/** What has been ticked off on a plan. */
export async function loadTicks(db: Queryable, planId: string): Promise<ReadonlySet<string>> {
  return new Set((await rowsOf<WrittenTick>(db, 'SELECT kind, subject, place FROM tick WHERE plan_id = $1', [planId])).map(textOfTick));
}
