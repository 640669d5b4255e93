import { type BetweenShows, betweenShows } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { type PlanOnFile, loadPlansInForce } from '../../../planning/snapshot/plan-snapshot.js';
import { planningTask } from '../../../planning/solve/planning-task.js';
import { loadTourFile } from '../../../planning/snapshot/tour-file.reader.js';
import { floorKey } from './floor-key.js';
import { carriesOf, factsOf } from './floor.js';

export interface Between {
  readonly from: string;
  readonly to: string;
  readonly what: BetweenShows;
}

interface Inputs {
  readonly file: TourFile;
  readonly plans: readonly PlanOnFile[];
  readonly key: string;
}

/** From each show of a tour to the next, where both have a plan: the released one, else the draft. */
export default planningTask({
  load: async (db, { tourId }: { readonly tourId: string }) => {
    const plans = await loadPlansInForce(db, tourId);
    const key = await floorKey(
      db,
      plans.map((each) => each.id),
    );
    return { scope: { tourId }, inputs: { file: await loadTourFile(db, tourId), plans, key } };
  },
  dependsOn: () => null,
  solve: ({ file, plans, key }: Inputs, _subject, limits, words): { readonly key: string; readonly answer: readonly Between[] } => {
    const inForce = (showId: string) => plans.find((each) => each.showId === showId)?.plan;
    const { shows } = file.tour;
    const answer = shows.flatMap((show, index) => {
      const earlier = shows[index - 1];
      const before = earlier && inForce(earlier.id);
      const after = inForce(show.id);
      if (!before || !after) return [];
      const what = betweenShows(before, after, factsOf(file), (cart) => carriesOf(file, cart), limits, words);
      return [{ from: before.show.name, to: after.show.name, what }];
    });
    return { key, answer };
  },
});
