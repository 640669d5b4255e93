import type { AllocationAnswer, AllocationCase } from '../case/index.js';

/** Carries an answer out move by move on the case as it was written and looks at what stands where at the end; what is wrong, one sentence each. */
export function verifyAllocation(problem: AllocationCase, answer: AllocationAnswer): readonly string[] {
  if (answer.status === 'infeasible')
    return answer.reason === undefined && (answer.short ?? []).length === 0 ? ['infeasible without a reason'] : [];
  const wrong: string[] = [];
  const stacks = new Map(problem.carts.map((cart) => [cart.id, [...cart.stack]]));
  const cartById = new Map(problem.carts.map((cart) => [cart.id, cart]));
  const floor = new Set(problem.loose);
  answer.moves.forEach(({ box, from, to }, index) => {
    const say = (sentence: string) => wrong.push(`move ${index + 1} (${box} from ${from} to ${to}): ${sentence}`);
    if (from === to) say('goes nowhere');
    if (from === 'floor') {
      if (!floor.delete(box)) say('the box is not on the floor');
    } else if (stacks.get(from)?.[0] === box) stacks.get(from)!.shift();
    else say('the box is not on top there');
    if (to === 'floor') floor.add(box);
    else if (!stacks.has(to)) say('no such cart');
    else {
      stacks.get(to)!.unshift(box);
      const cart = cartById.get(to)!;
      if (stacks.get(to)!.length > cart.capacity) say('the cart is full');
      if (cart.carries && !cart.carries.includes(problem.boxes[box]!)) say('the cart may not carry it');
    }
  });
  const carts = new Set<string>();
  for (const load of problem.loads) {
    const assignment = answer.assignments.find((each) => each.load === load.id);
    if (!assignment) {
      wrong.push(`${load.id} has no cart`);
      continue;
    }
    if (carts.has(assignment.cart)) wrong.push(`${assignment.cart} has two loads`);
    carts.add(assignment.cart);
    const stack = stacks.get(assignment.cart) ?? [];
    if (stack.join('\n') !== assignment.boxes.join('\n'))
      wrong.push(`${assignment.cart} ends with ${stack.join(', ')}, not with what ${load.id} says`);
    if (stack.length !== load.boxes.length) wrong.push(`${load.id} has ${stack.length} boxes instead of ${load.boxes.length}`);
    load.boxes.forEach((wanted, slot) => {
      const serial = stack[slot];
      if (serial === undefined) return;
      if (problem.unusable.includes(serial)) wrong.push(`${load.id} slot ${slot + 1}: ${serial} may not be used`);
      if ('serial' in wanted ? wanted.serial !== serial : problem.boxes[serial] !== wanted.model)
        wrong.push(`${load.id} slot ${slot + 1}: ${serial} is not what is wanted`);
    });
  }
  if (answer.boxMoves !== answer.moves.length) wrong.push('boxMoves is not the number of moves');
  if (answer.bound > answer.boxMoves) wrong.push('the bound is above the plan');
  if ((answer.status === 'optimal') !== (answer.bound === answer.boxMoves)) wrong.push('optimal only when the bound meets the plan');
  return wrong;
}
