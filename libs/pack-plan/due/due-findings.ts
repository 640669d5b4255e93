import { type DueResult, type Finding, plural, say } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';

/** What runs out when, and which visit clears it. */
export function dueFindings(inputs: PlanInputs, due: DueResult): Finding[] {
  const findings: Finding[] = [];
  const shows = inputs.file.tour.shows;
  for (const item of due.items) {
    const visit = due.visits.days.find((day) => day.items.includes(item.item));
    const remedy = visit
      ? ` The examiner’s visit on ${visit.on} clears it.`
      : due.visits.cannotBeSaved.includes(item.item)
        ? ' No visit day on the list can clear it in time.'
        : '';
    const after = shows.filter((show) => item.dueOn !== null && show.to > item.dueOn).length;
    const inPlan = item.where !== 'not in this plan';
    if (item.state === 'falls due')
      findings.push(
        say(
          'due',
          'look',
          'falls-due',
          item.item,
          item.dueOn,
          `${item.item} (${item.kind}, ${item.where}) runs out on ${item.dueOn}, with ${plural(after, 'show')} of this tour after it.${remedy}`,
        ),
      );
    else if (item.state !== 'in date throughout')
      findings.push(
        say(
          'due',
          inPlan ? 'stop' : 'look',
          item.state.replaceAll(' ', '-'),
          item.item,
          item.dueOn,
          `${item.item} (${item.kind}): ${item.sentence}${remedy}`,
        ),
      );
  }
  return findings;
}
