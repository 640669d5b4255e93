import type { IntegerProgramSolver, PlainDate } from '#kernel';
import type { ExaminationsCase } from './dates/index.js';
import { type ItemState, findItemState } from './dates/index.js';
import { planVisits } from './plan-visits.js';
import { listVisitNeeds } from './visit-needs.js';

export interface ExaminationVisits {
  /** The fewest visit days that keep every item in date that can be kept in date. */
  readonly count: number;
  /** No plan has fewer days; equal to `count` where that is proven, as it is where every item is seen on every day. */
  readonly atLeast: number;
  readonly days: readonly { readonly on: PlainDate; readonly items: readonly string[] }[];
  readonly cannotBeSaved: readonly string[];
  readonly examinations: number;
  /** No plan of so few days needs fewer examinations of single items than this. */
  readonly examinationsAtLeast: number;
}

export interface ExaminationsAnswer {
  readonly items: readonly ItemState[];
  readonly visits: ExaminationVisits;
}

/**
 * Due date and state of every item in the window, and the fewest examiner visits; items and ids in the order of the case. `solver`: asked where items are
 * not on every day where the examiner is and the counted search proves nothing.
 */
export function solveExaminations(examinationsCase: ExaminationsCase, solver?: IntegerProgramSolver): ExaminationsAnswer {
  const items = examinationsCase.items.map((item) => findItemState(item, examinationsCase.window));
  const { days, needs, cannotBeSaved } = listVisitNeeds(examinationsCase, items);
  const { chosen, seen, daysAtLeast, examinations, examinationsAtLeast } = planVisits(needs, days.length, solver);
  return {
    items,
    visits: {
      count: chosen.length,
      atLeast: daysAtLeast,
      days: chosen.map((place, index) => ({ on: days[place]!, items: seen[index]!.map(({ id }) => id) })),
      cannotBeSaved,
      examinations,
      examinationsAtLeast,
    },
  };
}
