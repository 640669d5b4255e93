import { eachDay } from '#kernel';
import { type Finding, say } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';

/** What the inputs themselves say: a tour longer than four months. */
export function inputFindings(inputs: PlanInputs): Finding[] {
  const days = eachDay(inputs.file.tour.prepFrom, inputs.file.tour.returnTo).length;
  return days > 120
    ? [
        say(
          'inputs',
          'look',
          'long-tour',
          inputs.file.tour.name,
          inputs.file.tour.prepFrom,
          `The tour lasts ${days} days. Examinations and losses are judged over all of them.`,
        ),
      ]
    : [];
}
