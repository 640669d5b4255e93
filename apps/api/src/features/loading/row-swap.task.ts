import type { RowSwap } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { type PlanOnFile, loadPlanInForce } from '../../planning/snapshot/plan-snapshot.js';
import { planningTask } from '../../planning/solve/planning-task.js';
import { loadTourFile } from '../../planning/snapshot/tour-file.reader.js';
import { lookAtSwap } from './loading-decisions.js';

export interface RowSwapSubject {
  readonly planId: string;
  readonly truck: string;
  readonly first: number;
  readonly second: number;
}

/** What two exchanged rows would do, without doing it. */
export default planningTask({
  load: async (db, { planId }: RowSwapSubject) => {
    const { tourId, plan } = await loadPlanInForce(db, planId);
    return { scope: { tourId }, inputs: { file: await loadTourFile(db, tourId), plan } };
  },
  dependsOn: () => null,
  solve: ({ file, plan }: { readonly file: TourFile } & Pick<PlanOnFile, 'plan'>, { truck, first, second }, _limits, words): RowSwap =>
    lookAtSwap(file, plan, truck, first, second, words),
});
