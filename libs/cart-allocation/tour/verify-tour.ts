import type { TourPlan } from './plan-tour.js';
import type { TourMoves, TourShow } from './tour-case.js';

/** The floor as the check carries it: stacks top first. */
interface Carried {
  readonly stacks: ReadonlyMap<string, string[]>;
  readonly loose: Set<string>;
}

/**
 * What is wrong with a plan of a tour, a sentence each: every move made again on one floor, from the first to the last show; at each show every load whole on a cart of its own,
 * of boxes that may fly there; then the sums. Reads the tour and the plan alone: nothing of the solver, and nothing of the check of one floor.
 */
export function verifyTour(tour: TourMoves, plan: Pick<TourPlan, 'shows' | 'cost' | 'bound' | 'status'>): readonly string[] {
  const wrong: string[] = [];
  const floor: Carried = {
    stacks: new Map(tour.floor.carts.map((cart) => [cart.id, [...cart.stack]])),
    loose: new Set(tour.floor.loose),
  };
  let cost = 0;
  tour.shows.forEach((show, index) => {
    const planned = plan.shows[index];
    if (!planned || planned.show !== show.id) return void wrong.push(`${show.id} is not planned in its turn`);
    const say = (what: string) => void wrong.push(`${show.id}: ${what}`);
    const { moves, assignments, boxMoves } = planned.answer;
    for (const move of moves) carry(tour, floor, move, say);
    if (boxMoves !== moves.length) say(`${boxMoves} moves are said, ${moves.length} listed`);
    checkLoads(tour, show, floor, [...show.loads, ...planned.ahead.map(({ load }) => load)], assignments, say);
    for (const { load, show: later, of } of planned.ahead) {
      const at = tour.shows.findIndex((each) => each.id === later);
      const wanted = tour.shows[at]?.loads.find((each) => each.id === of);
      if (at <= index || JSON.stringify(wanted?.boxes) !== JSON.stringify(load.boxes)) say(`${load.id} is no load of a later show`);
    }
    cost += show.weight * moves.length;
  });
  if (plan.shows.length !== tour.shows.length) wrong.push(`${plan.shows.length} shows are planned of ${tour.shows.length}`);
  if (Math.abs(cost - plan.cost) > 1e-6) wrong.push(`costs ${cost}, not ${plan.cost}`);
  if (plan.bound > cost + 1e-6) wrong.push(`the bound ${plan.bound} is above ${cost}`);
  if (plan.status === 'optimal' && plan.bound < cost - 0.01) wrong.push(`called cheapest at ${cost}, with a bound of ${plan.bound}`);
  return wrong;
}

type Say = (what: string) => void;

function carry(
  { floor }: TourMoves,
  { stacks, loose }: Carried,
  { box, from, to }: { readonly box: string; readonly from: string; readonly to: string },
  say: Say,
): void {
  const lifted = from === 'floor' ? loose.delete(box) : stacks.get(from)?.[0] === box && stacks.get(from)!.shift() === box;
  if (!lifted) return say(`${box} is not on top of ${from}`);
  if (from === to) say(`${box} goes nowhere`);
  if (to === 'floor') return void loose.add(box);
  const cart = floor.carts.find((each) => each.id === to);
  if (!cart) return say(`${to} is no cart`);
  const stack = stacks.get(to)!;
  stack.unshift(box);
  if (cart.givesOnly) say(`${to} is out of use`);
  if (stack.length > cart.capacity) say(`${to} holds ${stack.length} of ${cart.capacity}`);
  if (cart.carries && !cart.carries.includes(floor.boxes[box] ?? '')) say(`${to} may not carry ${box}`);
}

function checkLoads(
  { floor }: TourMoves,
  show: TourShow,
  { stacks }: Carried,
  loads: TourShow['loads'],
  assignments: readonly { readonly load: string; readonly cart: string; readonly boxes: readonly string[] }[],
  say: Say,
): void {
  const grounded = new Set([...floor.unusable, ...(show.unusable ?? [])]);
  const taken = new Set<string>();
  for (const { id, boxes } of loads) {
    const given = assignments.filter((each) => each.load === id);
    const [one] = given;
    if (given.length !== 1 || !one) {
      say(`${id} has ${given.length} carts`);
      continue;
    }
    if (taken.has(one.cart)) say(`${one.cart} has two loads`);
    taken.add(one.cart);
    if (floor.carts.find((each) => each.id === one.cart)?.givesOnly) say(`${one.cart} is out of use`);
    const stack = stacks.get(one.cart) ?? [];
    if (stack.join('\n') !== one.boxes.join('\n')) say(`${one.cart} holds ${stack.join(', ') || 'nothing'}`);
    if (stack.length !== boxes.length) say(`${id} is ${boxes.length} high, ${one.cart} ${stack.length}`);
    boxes.forEach((wanted, slot) => {
      const box = stack[slot];
      if (box === undefined) return;
      if (grounded.has(box)) say(`${box} must not fly`);
      if ('serial' in wanted ? wanted.serial !== box : wanted.model !== floor.boxes[box]) say(`${box} is not what ${id} wants`);
    });
  }
}
