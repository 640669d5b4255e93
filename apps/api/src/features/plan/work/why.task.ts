import { type PackPlan, type Place, whyHere } from '#pack-plan';
import type { TourFile } from '#tour-file';
import type { PlaceReason } from '#trade';
import { loadPlan } from '../../../planning/snapshot/plan-snapshot.js';
import { planningTask } from '../../../planning/solve/planning-task.js';
import { loadTourFile } from '../../../planning/snapshot/tour-file.reader.js';
import { whyKey } from './why-key.js';

interface Subject {
  readonly planId: string;
  readonly place: Place;
}

interface Inputs {
  readonly file: TourFile;
  readonly plan: PackPlan;
  readonly key: string;
}

/** Why a box or a cart stands where a plan puts it, by what is on file now. */
export default planningTask({
  load: async (db, { planId, place }: Subject) => {
    const { plan, tourId } = await loadPlan(db, planId);
    const inputs: Inputs = { file: await loadTourFile(db, tourId), plan, key: await whyKey(db, tourId, planId, place) };
    return { scope: { tourId }, inputs };
  },
  dependsOn: () => null,
  solve: ({ file, plan, key }, { place }, limits): { readonly key: string; readonly answer: PlaceReason } => ({
    key,
    answer: whyHere(file, plan, place, limits),
  }),
});
