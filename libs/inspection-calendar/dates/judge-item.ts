import { type PlainDate, eachDay } from '#kernel';
import type { DueCause } from '#trade';
import { findDueDate } from './due-date.js';
import type { ExaminedItem, JudgedWindow } from './examinations-case.js';

export type ExaminationState = 'in date throughout' | 'falls due' | 'overdue' | 'no record' | 'blocked' | 'failed' | 'no interval';

export interface ItemState {
  readonly id: string;
  /** The last day on which the item may be used; null when it may not be used at all. */
  readonly dueOn: PlainDate | null;
  readonly state: ExaminationState;
  /** What set the date, or why there is none. */
  readonly because: DueCause;
}

export interface ItemJudgement extends ItemState {
  readonly days: readonly { readonly on: PlainDate; readonly inDate: boolean }[];
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
  return { ...found, days };
}
