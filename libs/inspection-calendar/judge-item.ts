import { type PlainDate, addPeriod, invariant, readPeriod } from '#kernel';
import type { ExaminedItem } from './examinations-case.js';

export type ItemState = 'in date throughout' | 'falls due' | 'overdue' | 'no record' | 'blocked' | 'failed';

export interface ItemJudgement {
  readonly id: string;
  /** Last day on which the item may be used; null where it may not be used at all. */
  readonly dueOn: PlainDate | null;
  readonly state: ItemState;
  readonly sentence: string;
}

export interface DayWindow {
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/** Judges one item against every day of a window, first day to last. */
export function judgeItem(item: ExaminedItem, window: DayWindow): ItemJudgement {
  const last = lastExamination(item);
  if (last?.outcome === 'fail') return judgement(item.id, null, 'failed', `Failed its examination on ${last.on}: out of use.`);
  const event = item.events.map((each) => each.on).sort().at(-1);
  if (event !== undefined && (last === undefined || event > last.on))
    return judgement(item.id, null, 'blocked', `Blocked by an event on ${event}: out of use until it is examined.`);
  const dueOn = dueDate(item, last, window);
  if (dueOn === null) return judgement(item.id, null, 'no record', 'No record of an examination that counts: cannot be planned in.');
  if (dueOn >= window.to) return judgement(item.id, dueOn, 'in date throughout', `In date throughout, until ${dueOn}.`);
  if (dueOn < window.from) return judgement(item.id, dueOn, 'overdue', `Overdue since ${dueOn}: out of use until it is examined.`);
  return judgement(item.id, dueOn, 'falls due', `Falls due on ${dueOn}: not to be used after that day unless it is examined.`);
}

const judgement = (id: string, dueOn: PlainDate | null, state: ItemState, sentence: string): ItemJudgement => ({ id, dueOn, state, sentence });

type Examination = ExaminedItem['examinations'][number];

/** The latest examination; of two on one day the later in the list. */
export function lastExamination(item: Pick<ExaminedItem, 'examinations'>, counts: (examination: Examination) => boolean = () => true): Examination | undefined {
  let last: Examination | undefined;
  for (const each of item.examinations) if (counts(each) && (last === undefined || each.on >= last.on)) last = each;
  return last;
}

/** The earliest over all intervals, no later than the defect date of the last examination; null where an interval has no record. */
function dueDate(item: ExaminedItem, last: Examination | undefined, window: DayWindow): PlainDate | null {
  const dates = item.intervals.map((interval) => dueOfInterval(item, interval, window));
  if (dates.some((each) => each === null)) return null;
  const all = last?.defectBy === undefined ? dates : [...dates, last.defectBy];
  return (all as PlainDate[]).reduce((earliest, each) => (each < earliest ? each : earliest));
}

function dueOfInterval(item: ExaminedItem, interval: string, window: DayWindow): PlainDate | null {
  const examination = lastExamination(item, (each) => each.outcome === 'pass' && (each.satisfies === undefined || each.satisfies.includes(interval)));
  if (examination) {
    const { nextLatestOn, underScheme } = examination;
    const byInterval = later(examination.on, interval);
    if (nextLatestOn === undefined) return byInterval;
    return underScheme || nextLatestOn < byInterval ? nextLatestOn : byInterval;
  }
  // LOLER 1998 reg. 9(1), 9(4): a declaration of conformity stands for the first examination while it is no older than 12 months.
  if (item.declaredOn !== undefined && window.from <= later(item.declaredOn, 'P12M')) return later(item.declaredOn, interval);
  return null;
}

/** Always from the real date of the examination, the day clamped to the end of the month. */
export function later(date: PlainDate, interval: string): PlainDate {
  const period = readPeriod(interval);
  invariant(period, `${interval} is a period`);
  return addPeriod(date, period);
}
