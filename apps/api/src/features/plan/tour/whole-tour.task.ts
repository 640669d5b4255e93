import { type MoveWeights, type WholeTour, type WholeTourAnswer, fingerprintOf, planWholeTour } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { loadTourFile } from '../../../planning/snapshot/tour-file.reader.js';
import { floorsOf } from '../../../planning/solve/floors-of.js';
import { planningTask } from '../../../planning/solve/planning-task.js';
import { loadTourPlan } from './tour-plan.reader.js';

export interface WholeTourSubject {
  readonly tourId: string;
  readonly weights: MoveWeights;
  /** Shows from the first that stay as the plan on file has them. */
  readonly fixedUntil: number;
}

interface Inputs {
  readonly file: TourFile;
  readonly before: WholeTour | null;
}

/** Prep and all load-ins of a tour together, by what is on file now. */
export default planningTask({
  load: async (db, { tourId }: WholeTourSubject) => {
    const file = await loadTourFile(db, tourId);
    const before = (await loadTourPlan(db, tourId))?.plan ?? null;
    // As the job has it: it is of no single show.
    return { scope: { tourId, showId: '' }, inputs: { file, before } };
  },
  dependsOn: ({ file, before }: Inputs, { weights, fixedUntil }) => [
    file.tour.shows.map((show) => fingerprintOf(file, show.id)),
    floorsOf(file),
    fixedUntil > 0 ? before : null,
    weights,
    fixedUntil,
  ],
  solve: ({ file, before }, { weights, fixedUntil }, limits, words): WholeTourAnswer =>
    planWholeTour(file, { weights, fixedUntil, before }, limits, words),
});
