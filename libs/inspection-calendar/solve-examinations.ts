import type { ExaminationsCase } from './examinations-case.js';
import { type ItemJudgement, judgeItem } from './judge-item.js';
import { type Visits, planVisits } from './plan-visits.js';

export interface ExaminationsAnswer {
  readonly items: readonly ItemJudgement[];
  readonly visits: Visits;
}

/** Every item judged on every day of the window, and the fewest examiner visits that keep what can be kept in date. */
export function solveExaminations(problem: ExaminationsCase): ExaminationsAnswer {
  const items = problem.items.map((item) => judgeItem(item, problem.window));
  return { items, visits: planVisits(problem, items) };
}
