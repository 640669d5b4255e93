import { eachDay } from '#kernel';
import type { CartsResult, DueResult, Finding, Section, Weight } from './plan.js';
import type { PlanInputs } from './plan-inputs.js';
import { shortDays } from './short-days.js';

/** A finding in the words of its section. */
export const say = (section: Section, weight: Weight, code: string, subject: string, date: string | null, sentence: string): Finding => ({
  code,
  weight,
  section,
  subject,
  date,
  sentence,
});
export const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** What the plan has to say of its carts: the moves and their proof, what is short and when, what is out of service and stands in a wanted cart. */
export function cartFindings(inputs: PlanInputs, carts: CartsResult): Finding[] {
  const findings: Finding[] = [];
  const planned = new Map(carts.loads.filter((each) => each.cart !== null).map((each) => [each.cart!, each]));
  if (carts.status === 'infeasible')
    findings.push(
      say('carts', 'stop', 'design-not-served', inputs.show.name, inputs.show.from, carts.reason ?? 'The fleet cannot serve this design.'),
    );
  else if (carts.status === 'optimal')
    findings.push(
      say(
        'carts',
        'agrees',
        'box-moves',
        inputs.show.name,
        null,
        carts.boxMoves === 0
          ? 'Every cart stands as it is wanted: no box has to be moved.'
          : `${plural(carts.boxMoves, 'box move')}; no shorter list exists.`,
      ),
    );
  else
    findings.push(
      say(
        'carts',
        'look',
        'box-moves',
        inputs.show.name,
        null,
        `${plural(carts.boxMoves, 'box move')}; at least ${carts.bound} are needed. A shorter list may exist.`,
      ),
    );
  for (const short of shortDays(inputs))
    findings.push(say('carts', short.show === inputs.show.name ? 'stop' : 'look', 'model-short', short.model, short.day, short.sentence));
  for (const { cart, boxes } of carts.floorBefore.carts) {
    boxes.forEach((serial, index) => {
      const item = inputs.items.get(serial)!;
      if (item.state === 'in service') return;
      const load = planned.get(cart);
      const what = `${cart} slot ${index + 1} holds ${serial}: ${item.state}${item.reason ? `, ${item.reason}` : ''}.`;
      const then = load ? ` It comes off; the cart is wanted for ${load.id}.` : ' The cart is not used in this plan and stays behind.';
      findings.push(say('carts', 'look', 'out-of-service-in-cart', serial, null, what + then));
    });
  }
  for (const load of carts.loads)
    for (const exception of load.exceptions)
      findings.push(
        say(
          'carts',
          exception.startsWith('slot') ? 'stop' : 'look',
          'cart-exception',
          load.cart ?? load.id,
          null,
          `${load.id}${load.cart ? ` (${load.cart})` : ''}: ${exception}.`,
        ),
      );
  return findings;
}

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

/** Things that are promised twice over the dates of the tour. */
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
