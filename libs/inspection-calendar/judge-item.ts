import { type PlainDate, eachDay } from '#kernel';
import { findDueDate } from './due-date.js';
import type { ExaminedItem, JudgedWindow } from './examinations-case.js';

export type ExaminationState = 'in date throughout' | 'falls due' | 'overdue' | 'no record' | 'blocked' | 'failed' | 'no interval';

export interface ItemState {
  readonly id: string;
  /** The last day on which the item may be used; null when it may not be used at all. */
  readonly dueOn: PlainDate | null;
  readonly state: ExaminationState;
  /** What set the date, or why there is none. */
  readonly because: string;
}

export interface ItemJudgement extends ItemState {
  readonly days: readonly { readonly on: PlainDate; readonly inDate: boolean }[];
  readonly sentence: string;
}

/** State of an item in a window, by its last day of use. */
export function findItemState(item: ExaminedItem, { from, to }: JudgedWindow): ItemState {
  const due = findDueDate(item, from);
  if (due.dueOn === null) return { id: item.id, dueOn: null, state: due.state, because: due.because };
  const state = due.dueOn >= to ? 'in date throughout' : due.dueOn >= from ? 'falls due' : 'overdue';
  return { id: item.id, dueOn: due.dueOn, state, because: due.because };
}

/** Judges an item against every day from the first to the last of the window, both included, by the records on file. */
export function judgeItem(item: ExaminedItem, window: JudgedWindow): ItemJudgement {
  const found = findItemState(item, window);
  const inDate = (on: PlainDate) => (found.dueOn === null ? found.state === 'no interval' : on <= found.dueOn);
  const days = eachDay(window.from, window.to).map((on) => ({ on, inDate: inDate(on) }));
  return { ...found, days, sentence: sentenceOf(found, window) };
}

function sentenceOf({ id, dueOn, state, because }: ItemState, { from, to }: JudgedWindow): string {
  switch (state) {
    case 'in date throughout':
      return `${id} is in date on every day from ${from} to ${to}: last day ${dueOn} (${because}).`;
    case 'falls due':
      return `${id} is in date until ${dueOn} (${because}) and out of date after it; examine it on or before that day.`;
    case 'overdue':
      return `${id} ran out on ${dueOn} (${because}); it must not be used before it is examined.`;
    case 'no record':
      return `${id} has no record: ${because}. It must not be used before it is examined.`;
    case 'blocked':
      return `${id} is blocked: ${because}. It must not be used before a competent person has examined it.`;
    case 'no interval':
      return `${id} is judged by its state, incidents, failures and defects alone: ${because}.`;
    case 'failed':
      return `${id} must not be used: ${because}. Repair or retire it; an examiner's visit alone does not bring it back.`;
  }
}
