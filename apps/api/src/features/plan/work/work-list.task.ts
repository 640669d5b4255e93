import { type PackPlan, type WorkList, moveKey, tickText, workListOf } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { loadPlan, loadTicks } from '../../../planning/snapshot/plan-snapshot.js';
import { planningTask } from '../../../planning/solve/planning-task.js';
import { loadTourFile } from '../../../planning/snapshot/tour-file.reader.js';
import { factsOf, floorOf } from './floor.js';
import { floorKey } from './floor-key.js';

interface Inputs {
  readonly file: TourFile;
  readonly plan: PackPlan;
  readonly ticks: ReadonlySet<string>;
  readonly key: string;
}

/** What is left to do for a plan on the floor as it stands, with the key of that floor. */
export default planningTask({
  load: async (db, { planId }: { readonly planId: string }) => {
    const { plan, tourId } = await loadPlan(db, planId);
    const file = await loadTourFile(db, tourId);
    const inputs: Inputs = { file, plan, ticks: await loadTicks(db, planId), key: await floorKey(db, [planId]) };
    return { scope: { tourId }, inputs };
  },
  dependsOn: () => null,
  solve: ({ file, plan, ticks, key }, _subject, limits, words): { readonly key: string; readonly answer: WorkList } => {
    const done = new Set(plan.carts.moves.map((move) => move.number).filter((number) => ticks.has(tickText(moveKey(number)))));
    return { key, answer: workListOf(plan, floorOf(file, plan), factsOf(file), done, limits, words) };
  },
});
