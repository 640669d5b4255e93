import { invariant } from '#kernel';
import { answersThatHold, unjudgedPlaces } from '#inspection-calendar';
import type { DueFinding } from '#trade';
import type { DueItem, DueResult } from '../contract/index.js';
import { type PlanInputs, placeOf } from '../inputs/index.js';

const codes = { overdue: 'overdue', 'no record': 'no-record', blocked: 'blocked', failed: 'failed' } as const;

/** What runs out when, and which visit clears it. */
export function dueFindings(inputs: PlanInputs, due: DueResult): DueFinding[] {
  return [...notJudged(inputs), ...judgedElsewhere(inputs), ...dated(inputs, due)];
}

function notJudged({ file }: PlanInputs): DueFinding[] {
  const { id, name, prepFrom } = file.tour;
  return unjudgedPlaces(placeOf(file)).map((place) => ({
    code: 'not-judged',
    subjects: { place: { kind: 'place', id: place }, tour: { kind: 'tour', id, name } },
    numbers: {},
    ruled: [...new Set(file.examinationRules.map((each) => each.jurisdiction))].sort(),
    date: prepFrom,
  }));
}

function judgedElsewhere({ file }: PlanInputs): DueFinding[] {
  const { id, name, prepFrom } = file.tour;
  return answersThatHold(placeOf(file)).map(({ place, rulesOf, because, decidedBy, decidedOn }) => ({
    code: 'judged-elsewhere',
    subjects: { place: { kind: 'place', id: place }, rulesOf: { kind: 'place', id: rulesOf }, tour: { kind: 'tour', id, name } },
    numbers: {},
    ...{ because, decidedBy, decidedOn },
    date: prepFrom,
  }));
}

function dated(inputs: PlanInputs, due: DueResult): DueFinding[] {
  return due.items.flatMap((item): DueFinding[] => {
    if (item.state === 'in date throughout') return [];
    const visit = due.visits.days.find((day) => day.items.includes(item.item));
    const dated = {
      itemKind: inputs.items.get(item.item)!.kind,
      count: inputs.items.get(item.item)!.count ?? null,
      where: item.fact ?? { code: 'not-in-plan' as const },
      cannotBeSaved: !visit && due.visits.cannotBeSaved.includes(item.item),
      date: item.dueOn,
    };
    const day = visit ? { kind: 'day' as const, on: visit.on } : null;
    const subject = { kind: 'item' as const, id: item.item };
    if (item.state === 'falls due')
      return [{ code: 'falls-due', subjects: { item: subject, visit: day }, numbers: { showsAfter: showsAfter(inputs, item) }, ...dated }];
    invariant(item.judged, 'a due list that is made anew keeps what it judged');
    return [{ code: codes[item.state], subjects: { item: subject, visit: day }, numbers: {}, ...dated, judged: item.judged }];
  });
}

const showsAfter = ({ file }: PlanInputs, { dueOn }: DueItem): number =>
  file.tour.shows.filter((show) => dueOn !== null && show.to > dueOn).length;
