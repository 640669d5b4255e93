import { type CheckKind, splitInterval } from '#trade';
import type { ExaminedItem } from '../dates/index.js';

/** What sets the dates of one check: its own intervals and records, as if there were no other. An event and a declaration are of the examination alone. */
export function ofCheck<T extends Omit<ExaminedItem, 'id' | 'seenOn'>>(facts: T, check: CheckKind): T {
  const { declaredOn, ...rest } = facts;
  const isExamination = check === 'examination';
  return {
    ...(isExamination ? facts : (rest as T)),
    intervals: facts.intervals.flatMap((each) => {
      const own = splitInterval(each);
      return own.check === check ? [own.period] : [];
    }),
    examinations: facts.examinations.flatMap((each) => {
      const { check: made, ...report } = each;
      return (made ?? 'examination') === check ? [report] : [];
    }),
    events: isExamination ? facts.events : [],
  };
}
