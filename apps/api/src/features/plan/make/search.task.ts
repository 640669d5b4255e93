import { type PackPlan, changedInputs, fingerprintOf, makePackPlan } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { floorsOf } from '../../../planning/solve/floors-of.js';
import { type MadePlan, writeOut } from '../../../planning/solve/made-plan.js';
import { type PlanOnFile, loadPlansInForce } from '../../../planning/snapshot/plan-snapshot.js';
import { planningTask } from '../../../planning/solve/planning-task.js';
import { loadTourFile } from '../../../planning/snapshot/tour-file.reader.js';

export interface SearchAnswer {
  /** The better plan; null where none was found. */
  readonly made: MadePlan | null;
  readonly sentence: string;
}

interface Inputs {
  readonly file: TourFile;
  /** The draft, else the released plan. */
  readonly now: PlanOnFile | undefined;
}

/** Looks longer, and gives the plan where it is better than the one in hand. */
export default planningTask({
  load: async (db, { tourId, showId }: { readonly tourId: string; readonly showId: string }) => {
    const file = await loadTourFile(db, tourId);
    const now = (await loadPlansInForce(db, tourId, showId)).at(-1);
    return { scope: { tourId, showId }, inputs: { file, now } };
  },
  dependsOn: ({ file, now }: Inputs, { showId }) => [fingerprintOf(file, showId), floorsOf(file), now?.id],
  solve: ({ file, now }, { showId }, limits, words): SearchAnswer => {
    const plan = makePackPlan(file, showId, limits, undefined, words);
    const inHand = now && changedInputs(now.plan, file).length === 0 ? now.plan : undefined;
    const sentence = whyBetter(plan, inHand);
    if (sentence !== null) return { made: writeOut(plan, file), sentence };
    return { made: null, sentence: `No shorter load was found: ${metres(inHand ?? plan)} m are used as before.` };
  },
});

/** Fewer box moves, or as many and shorter loads; null where it is neither. `now` is the plan in hand where it still holds. */
function whyBetter(plan: PackPlan, now: PackPlan | undefined): string | null {
  if (!now) return `The draft now uses ${metres(plan)} m of truck.`;
  const moves = plan.carts.boxMoves - now.carts.boxMoves;
  if (moves < 0) return `The draft now needs ${plan.carts.boxMoves} box moves instead of ${now.carts.boxMoves}.`;
  if (moves > 0 || usedMm(plan) >= usedMm(now)) return null;
  return `The draft now uses ${metres(plan)} m of truck instead of ${metres(now)} m.`;
}

const usedMm = (plan: PackPlan): number => plan.truck.trucks.reduce((sum, truck) => sum + truck.usedLengthMm, 0);
const metres = (plan: PackPlan): string => (usedMm(plan) / 1000).toFixed(2);
