import { type PackPlan, type Place, whyHere } from '#pack-plan';
import type { TourFile } from '#tour-file';
import type { PlaceReason } from '#trade';
import { BadInputError } from '../../../platform/faults/fault.js';
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
    placeMustBe(plan, place);
    const inputs: Inputs = { file: await loadTourFile(db, tourId), plan, key: await whyKey(db, tourId, planId, place) };
    return { scope: { tourId }, inputs };
  },
  dependsOn: () => null,
  solve: ({ file, plan, key }, { place }, limits): { readonly key: string; readonly answer: PlaceReason } => ({
    key,
    answer: whyHere(file, plan, place, limits),
  }),
});

/** A place of this plan; a cart only where the load has one. */
function placeMustBe({ carts }: PackPlan, { load: id, slot }: Subject['place']): void {
  const load = carts.loads.find((each) => each.id === id);
  if (!load) throw new BadInputError([{ field: 'load', value: id.slice(0, 80), wanted: 'a cart load of this plan' }]);
  if (slot !== null && !load.boxes.some((each) => each.slot === slot))
    throw new BadInputError([{ field: 'slot', value: slot, wanted: `a slot of this load, 1 to ${load.boxes.length}` }]);
  if (slot === null && load.cart === null)
    throw new BadInputError([{ field: 'load', value: id.slice(0, 80), wanted: 'a load that has a cart: none is left for this one' }]);
}
