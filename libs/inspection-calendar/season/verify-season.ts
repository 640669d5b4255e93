import { type PlainDate, eachDay } from '#kernel';
import { judgeItem } from '../dates/index.js';
import type { SeasonCase, SeasonItem } from './season-case.js';
import type { SeasonAnswer } from './solve-season.js';

/**
 * Lives through the season day by day: each item is examined where the answer says, its record grows by a pass, and on every day on which it is promised
 * its record is judged anew, as the gate judges it. What is wrong, one sentence each. Whether there are fewer visits is not judged here.
 */
export function verifySeason(problem: SeasonCase, answer: SeasonAnswer): readonly string[] {
  const wrong: string[] = [];
  const lost = new Set(answer.notSaved.map((each) => each.id));
  if (answer.count.visits !== answer.visits.length) wrong.push('the count is not the number of visits');
  if (answer.count.visits < answer.count.visitsAtLeast) wrong.push('fewer visits than are said to be needed');
  const examinations = answer.visits.reduce((sum, visit) => sum + visit.items.length, 0);
  if (answer.count.examinations !== examinations) wrong.push('the count is not the number of examinations');
  for (const visit of answer.visits) {
    if (!problem.visits.some((each) => each.id === visit.id && each.on === visit.on)) wrong.push(`${visit.id} is no possible visit`);
    if (visit.items.length === 0) wrong.push(`nobody is examined at ${visit.id}`);
    for (const { id } of visit.items) {
      const item = problem.items.find((each) => each.id === id);
      if (item && whereabouts(problem, item, visit.on) !== textOf(visit.at))
        wrong.push(`${id} is not where the examiner is on ${visit.on}`);
      if (lost.has(id)) wrong.push(`${id} is examined but cannot be saved`);
    }
  }
  for (const item of problem.items) if (!lost.has(item.id)) wrong.push(...liveThrough(problem, answer, item));
  return wrong;
}

function liveThrough({ window }: SeasonCase, answer: SeasonAnswer, item: SeasonItem): string[] {
  const visits = answer.visits.filter((visit) => visit.items.some((each) => each.id === item.id)).map((visit) => visit.on);
  const { id, intervals, examinations, events, declaredOn } = item;
  const days = new Set(
    item.stays.flatMap(({ from, to }) => eachDay(from > window.from ? from : window.from, to < window.to ? to : window.to)),
  );
  for (const on of [...days].sort()) {
    const before = visits.filter((each) => each < on).map((each) => ({ on: each, outcome: 'pass' as const }));
    // A visit that comes before a record on file counts for nothing; a declaration is judged as on the first day.
    const counted = before.filter((each) => ![...examinations, ...events].some((record) => record.on >= each.on));
    const from = counted.length === 0 && declaredOn !== undefined ? window.from : on;
    const judged = judgeItem({ id, intervals, examinations: [...examinations, ...counted], events, declaredOn }, { from, to: on });
    if (!judged.days.at(-1)!.inDate) return [`${id} is out of date on ${on}`];
  }
  return [];
}

const textOf = (at: { readonly kind: string; readonly depot?: string; readonly tour?: string; readonly show?: string }): string =>
  at.kind === 'depot' ? `depot ${at.depot}` : `show ${at.tour} ${at.show}`;

/** Where the item is, written down day by day from its promises. */
function whereabouts({ tours }: SeasonCase, item: SeasonItem, on: PlainDate): string {
  const promised = [...item.stays]
    .filter((each) => !each.isHold && on >= each.from && on <= each.to)
    .sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0))[0];
  if (promised === undefined) return `depot ${item.depot}`;
  const tour = tours.find((each) => each.id === promised.tour);
  if (!tour) return 'away';
  for (const show of tour.shows) if (eachDay(show.from, show.to).includes(on)) return `show ${tour.id} ${show.id}`;
  const showDays = tour.shows.flatMap((show) => [show.from, show.to]).sort();
  return showDays.length > 0 && on > showDays[0]! && on < showDays.at(-1)! ? 'away' : `depot ${tour.depot}`;
}
