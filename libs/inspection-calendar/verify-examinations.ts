import { addDays, addPeriod, eachDay, readPeriod } from '#kernel';
import type { ExaminationsCase } from './dates/index.js';
import type { ExaminationsAnswer } from './solve-examinations.js';

/** Simulates the window day by day with the visits of the answer; what is wrong, one sentence each. Minimality is not judged here. */
export function verifyExaminations(problem: ExaminationsCase, answer: ExaminationsAnswer): readonly string[] {
  const wrong: string[] = [];
  const { from, to } = problem.window;
  const cannot = new Set(answer.visits.cannotBeSaved);
  if (answer.visits.count !== answer.visits.days.length) wrong.push('count is not the number of days');
  for (const { on, items } of answer.visits.days) {
    if (!problem.visitDays.includes(on)) wrong.push(`${on} is no visit day`);
    if (items.length === 0) wrong.push(`nobody is examined on ${on}`);
  }
  problem.items.forEach((item, index) => {
    const { state, dueOn } = answer.items[index]!;
    const visits = answer.visits.days.filter((day) => day.items.includes(item.id)).map((day) => day.on);
    if (state === 'no interval' && visits.length > 0) wrong.push(`${item.id} is examined but no rule asks for it`);
    if (state === 'no interval') return;
    if (item.seenOn && visits.some((on) => !item.seenOn!.includes(on)))
      wrong.push(`${item.id} is not where the examiner is on the day of a visit`);
    if (state === 'failed' || cannot.has(item.id)) {
      if (visits.length > 0) wrong.push(`${item.id} is examined but ${state === 'failed' ? 'failed' : 'cannot be saved'}`);
      return;
    }
    if (state === 'in date throughout' && visits.length > 0) wrong.push(`${item.id} is examined but need not be`);
    const stale = [...item.examinations, ...item.events].some((past) => visits.some((visit) => visit <= past.on));
    if (stale) wrong.push(`${item.id} is examined on or before its last examination or event`);
    let usableUntil = state === 'falls due' || state === 'in date throughout' ? dueOn! : '';
    for (const day of eachDay(firstOf([from, ...visits]), to)) {
      if (day >= from && usableUntil < day) {
        wrong.push(`${item.id} is out of date on ${day}`);
        break;
      }
      if (visits.includes(day))
        usableUntil = item.intervals.length === 0 ? to : firstOf(item.intervals.map((each) => addPeriod(day, readPeriod(each)!)));
      if (usableUntil >= to) break;
    }
  });
  return wrong;
}

const firstOf = (days: readonly string[]): string => [...days].sort()[0] ?? addDays('1970-01-01', 0);
