import type { WholeTour } from '#pack-plan';
import { type Queryable, rowsOf } from '../../../planning/snapshot/queryable.js';

export interface TourPlanOnFile {
  readonly plan: WholeTour;
  readonly madeAt: Date;
  /** null: somebody who has left, or the house itself. */
  readonly madeBy: string | null;
}

/** The tour as it was last planned as a whole; null where it never was. */
export async function loadTourPlan(db: Queryable, tourId: string): Promise<TourPlanOnFile | null> {
  const [row] = await rowsOf<TourPlanOnFile>(
    db,
    `SELECT plan, made_at AS "madeAt", account.name AS "madeBy" FROM tour_plan LEFT JOIN account ON account.id = made_by_id WHERE tour_id = $1`,
    [tourId],
  );
  return row ?? null;
}
