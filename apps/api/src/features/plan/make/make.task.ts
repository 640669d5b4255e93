import { fingerprintOf, makeSteadyPlan } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { NotFoundError } from '../../../platform/faults/fault.js';
import { writeOut } from '../../../planning/solve/made-plan.js';
import { type PlanOnFile, loadPlansInForce } from '../../../planning/snapshot/plan-snapshot.js';
import { planningTask } from '../../../planning/solve/planning-task.js';
import { floorsOf } from '../../../planning/solve/floors-of.js';
import { loadTourFile } from '../../../planning/snapshot/tour-file.reader.js';

interface Subject {
  readonly tourId: string;
  readonly showId: string;
}

interface Inputs {
  readonly file: TourFile;
  readonly before: PlanOnFile | undefined;
}

/** The plan of a show, with the boxes of the plan before it in their places where that costs nothing. */
export default planningTask({
  load: async (db, { tourId, showId }: Subject) => {
    const file = await loadTourFile(db, tourId);
    if (!file.tour.shows.some((show) => show.id === showId)) throw new NotFoundError(`The show ${showId}`);
    const [before] = await loadPlansInForce(db, tourId, showId);
    return { scope: { tourId, showId }, inputs: { file, before } };
  },
  dependsOn: ({ file, before }: Inputs, { showId }) => [fingerprintOf(file, showId), floorsOf(file), before?.id],
  solve: ({ file, before }, { showId }, limits, words) => writeOut(makeSteadyPlan(file, showId, limits, before?.plan, words), file),
});
