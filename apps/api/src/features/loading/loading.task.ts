import { canonicalJson } from '#kernel';
import { type PackPlan, differenceBetween, fingerprintOf, replanTrucks } from '#pack-plan';
import { type LoadingAct, type TourFile, afterAct, noLoading } from '#tour-file';
import { type Words, sentenceOf } from '#words';
import { BadInputError } from '../../platform/faults/fault.js';
import type { JobRefusal } from '../../planning/jobs/jobs.js';
import { type MadePlan, writeOut } from '../../planning/solve/made-plan.js';
import { type PlanOnFile, loadPlanInForce, loadPlansInForce, loadTicks } from '../../planning/snapshot/plan-snapshot.js';
import { planningTask } from '../../planning/solve/planning-task.js';
import { loadTourFile } from '../../planning/snapshot/tour-file.reader.js';
import { type Wish, decideWish, refusalOf } from './loading-decisions.js';

export interface LoadingSubject {
  readonly planId: string;
  readonly wish: Wish;
  readonly who: string;
  /** Plain date on which it was wished. */
  readonly today: string;
}

export type LoadingTaskAnswer =
  | { readonly refusal: JobRefusal }
  | {
      readonly refusal: null;
      readonly acts: readonly LoadingAct[];
      readonly sentence: string;
      readonly made: MadePlan;
      readonly changes: readonly string[];
    };

interface Inputs {
  readonly file: TourFile;
  readonly before: PlanOnFile;
  readonly ticks: ReadonlySet<string>;
}

/** What is wanted of the trucks, decided, and the trucks planned around it. */
export default planningTask({
  load: async (db, { planId }: LoadingSubject) => {
    const before = await loadPlanInForce(db, planId);
    const { tourId, showId } = before;
    refuseBehindDraft(before, await loadPlansInForce(db, tourId, showId));
    const inputs = { file: await loadTourFile(db, tourId), before, ticks: await loadTicks(db, planId) };
    return { scope: { tourId, showId }, inputs };
  },
  dependsOn: ({ file, before }: Inputs) => [fingerprintOf(file, before.showId), before.id],
  solve: ({ file, before, ticks }, { wish, who, today }, limits, words): LoadingTaskAnswer => {
    const { plan } = before;
    const decided = decideWish(wish, { plan, file, ticks, who, today, words });
    if ('code' in decided) return { refusal: decided };
    const { acts, sentence } = decided;
    const wanted = withActs(file, before.showId, acts);
    const after = replanTrucks(wanted, plan, limits, words);
    const reasons = whyNot(plan, after, words);
    if (reasons.length > 0) return { refusal: refusalOf({ code: 'trucks-cannot-be-loaded' }, reasons, words) };
    return { refusal: null, acts, sentence, made: writeOut(after, wanted, plan), changes: differenceBetween(plan, after, words).sentences };
  },
});

/** Work on a released plan would be lost where a draft with other boxes in the carts is under way. */
function refuseBehindDraft({ id, state, plan }: PlanOnFile, inForce: readonly PlanOnFile[]): void {
  const draft = inForce.find((each) => each.state === 'draft');
  if (state === 'draft' || !draft || canonicalJson(draft.plan.carts.loads) === canonicalJson(plan.carts.loads)) return;
  throw new BadInputError([
    { field: 'planId', value: id, wanted: 'the draft of this show: its carts are no longer those of the revision' },
  ]);
}

const withActs = (file: TourFile, showId: string, acts: readonly LoadingAct[]): TourFile => ({
  ...file,
  tour: {
    ...file.tour,
    shows: file.tour.shows.map((show) =>
      show.id === showId ? { ...show, loading: acts.reduce(afterAct, show.loading ?? noLoading) } : show,
    ),
  },
});

/** What is broken or newly left over, in words. */
function whyNot(before: PackPlan, after: PackPlan, words: Words): readonly string[] {
  const was = new Set(before.truck.leftOver.map((each) => each.id));
  // What stays behind was asked for.
  const left = after.truck.leftOver.filter((each) => !was.has(each.id) && each.fact?.code !== 'stays-behind');
  if (after.truck.refused) return after.truck.refused.map((each) => each.sentence);
  return left.slice(0, 20).map(({ id, label, reason, fact }) =>
    sentenceOf(words, {
      code: 'left-over',
      subjects: { piece: { kind: 'piece', id, name: label } },
      numbers: {},
      date: null,
      why: fact ?? { code: 'engine-says', says: reason },
    }),
  );
}
