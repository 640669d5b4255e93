import { type FloorPlan, mayCarry, placesKey } from '../case/index.js';

/**
 * By load: the cart that some shortest plan gives it, where that can be said at once: every wanted box is there once, all carts may carry the same, and
 * there is an empty cart for every load whose lowest box does not stand lowest on a cart. A load on its own cart keeps what stands there; one on an empty
 * cart waits for nothing: an exchange of carts with any other plan costs no move. undefined: which carts are best is a question.
 */
export function settledChoice(floor: FloorPlan): readonly number[] | undefined {
  const [first] = floor.carts;
  if (!first || floor.carts.some((cart) => placesKey(cart) !== placesKey(first))) return undefined;
  if (floor.loads.some((load) => !mayCarry(first, load)) || !isEachOnce(floor)) return undefined;
  const cartOn = new Map(floor.carts.flatMap(({ stack }, cart) => (stack.length > 0 ? [[floor.kindOf[stack[0]!]!, cart] as const] : [])));
  const empty = floor.carts.flatMap(({ stack }, cart) => (stack.length === 0 ? [cart] : [])).reverse();
  const cartOf = floor.loads.map(({ kinds }) => cartOn.get(kinds[0]!) ?? empty.pop());
  return cartOf.every((cart) => cart !== undefined) ? cartOf : undefined;
}

function isEachOnce(floor: FloorPlan): boolean {
  const counts = new Int32Array(floor.kindCount);
  for (const kind of floor.kindOf) counts[kind]!++;
  return counts.subarray(1).every((count) => count === 1);
}
