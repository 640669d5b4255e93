import { type Improvement, type PackPlan, fingerprintOf, improvePlan } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { floorsOf } from '../../../planning/solve/floors-of.js';
import { loadPlan } from '../../../planning/snapshot/plan-snapshot.js';
import { planningTask } from '../../../planning/solve/planning-task.js';
import { loadTourFile } from '../../../planning/snapshot/tour-file.reader.js';
import type { ImproveSubject } from '../stored/plan.writer.js';

interface Inputs {
  readonly file: TourFile;
  readonly plan: PackPlan;
}

/** Goes on with a plan whose box moves are not proved to be the fewest. */
export default planningTask({
  load: async (db, { planId }: ImproveSubject) => {
    const { plan, tourId, showId } = await loadPlan(db, planId);
    const inputs: Inputs = { file: await loadTourFile(db, tourId), plan };
    return { scope: { tourId, showId }, inputs };
  },
  dependsOn: ({ file, plan }: Inputs, { planId }) => [fingerprintOf(file, plan.show.id), floorsOf(file), planId],
  solve: ({ file, plan }, _subject, limits, words): Improvement => improvePlan(file, plan, limits, words),
});
