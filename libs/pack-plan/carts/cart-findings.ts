import { type CartsResult, type Finding, plural, say } from '../contract/index.js';
import { type PlanInputs, shortDays } from '../inputs/index.js';

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
  const [wrong] = carts.mismatch ?? [];
  if (wrong)
    findings.push(
      say(
        'carts',
        'stop',
        'box-moves-mismatch',
        inputs.show.name,
        null,
        `The box moves did not pass their check (${wrong.code}): a fault of this program. Do not use this plan; make it again, and report it.`,
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
