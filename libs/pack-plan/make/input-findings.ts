import { eachDay } from '#kernel';
import type { InputFinding } from '#trade';
import type { PlanInputs } from '../inputs/index.js';

const usualDays = 120;

/** What the inputs themselves say: a tour longer than four months. */
export function inputFindings({ file: { tour } }: PlanInputs): InputFinding[] {
  const days = eachDay(tour.prepFrom, tour.returnTo).length;
  if (days <= usualDays) return [];
  return [
    { code: 'long-tour', subjects: { tour: { kind: 'tour', id: tour.id, name: tour.name } }, numbers: { days }, date: tour.prepFrom },
  ];
}
