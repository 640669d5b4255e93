import { eachDay, invariant } from '#kernel';
import { makeExaminationsCase, solveExaminations, verifyExaminations } from '#inspection-calendar';
import { type DueItem, type DueResult, checkedBy, mismatchesOf } from '../contract/index.js';
import type { Examination } from '#tour-file';
import { type JudgedFact, type Whereabouts, splitInterval } from '#trade';
import { tell } from '#words';
import { type PlanInputs, applicableIntervals } from '../inputs/index.js';

const dueCaution =
  'Dates are computed from the records on file. They do not replace the examination: a competent person decides what may be used, and the maker’s instructions and local law come first.';

/** Every lifting item that the plan names, and every one of its kinds that is kept out of it, judged over the whole tour. Visits are those of an examiner. */
export function planDue(inputs: PlanInputs, whereOf: ReadonlyMap<string, Whereabouts>): DueResult {
  const { tour } = inputs.file;
  const judged = [...inputs.availability.values()].filter(
    ({ item, judgement }) => judgement !== null && concerns(item.id, inputs, whereOf),
  );
  const items = judged.map(({ item, judgement }): DueItem => {
    const fact = whereOf.get(item.id) ?? { code: 'not-in-plan' };
    const { state, dueOn, because } = judgement!;
    const said: JudgedFact = { code: state, id: item.id, dueOn, because, from: tour.prepFrom, to: tour.returnTo };
    return {
      item: item.id,
      kind: item.count === undefined ? item.kind : `${item.kind} batch (${item.count})`,
      model: item.model,
      where: tell(inputs.words.whereabouts, fact),
      fact,
      dueOn: judgement!.dueOn,
      state: judgement!.state,
      lastExaminedOn:
        item.examinations
          .map((each) => each.on)
          .sort()
          .at(-1) ?? null,
      intervals: applicableIntervals(inputs.file, item),
      sentence: tell(inputs.words.judged, said),
      judged: said,
    };
  });
  const made = makeExaminationsCase({
    window: { from: tour.prepFrom, to: tour.returnTo },
    items: judged
      .filter(({ item }) => whereOf.has(item.id) || item.state === 'in service')
      .map(({ item }) => ({
        id: item.id,
        intervals: applicableIntervals(inputs.file, item).filter((each) => splitInterval(each).check === 'examination'),
        examinations: item.examinations.filter((each) => !each.check).map(datesOf),
        events: item.events,
        declaredOn: item.declaredOn,
      })),
    visitDays: [...tour.visitDays],
  });
  invariant(made.ok, 'records of a tour file that was read agree with one another');
  const problem = made.value;
  const answer = solveExaminations(problem);
  return {
    from: tour.prepFrom,
    to: tour.returnTo,
    showDays: [...new Set(tour.shows.flatMap((show) => eachDay(show.from, show.to)))].sort(),
    items: items.sort((a, b) => order(a) - order(b) || ((a.dueOn ?? '') < (b.dueOn ?? '') ? -1 : 1)),
    visits: answer.visits,
    caution: dueCaution,
    ...checkedBy(mismatchesOf('examinations', tour.name, verifyExaminations(problem, answer))),
  };
}

/** Of a record what its dates follow from: who examined, and what the report says besides, decides none. */
const datesOf = ({ on, outcome, satisfies, nextLatestOn, underScheme, defectBy, answers }: Examination) => ({
  on,
  outcome,
  satisfies,
  nextLatestOn,
  underScheme,
  defectBy,
  answers,
});

/** In the plan, or of the depot and of a model that the plan uses but kept out by its dates. */
function concerns(id: string, inputs: PlanInputs, whereOf: ReadonlyMap<string, Whereabouts>): boolean {
  if (whereOf.has(id)) return true;
  const { item } = inputs.availability.get(id)!;
  const usedModels = new Set([...whereOf.keys()].map((each) => inputs.items.get(each)?.model));
  return item.state !== 'retired' && item.depot === inputs.file.tour.depot && usedModels.has(item.model);
}

const states = ['failed', 'blocked', 'no record', 'overdue', 'falls due', 'in date throughout'];
const order = (each: DueItem): number => states.indexOf(each.state);
