import type { AllocationAnswer, AllocationCase } from '../case/index.js';

/** One thing wrong with an answer; `move` counts from 1, `slot` from 1 at the top. */
export type AllocationMismatch =
  | { readonly code: 'no reason given' | 'moves miscounted' | 'bound above the plan' | 'wrongly called optimal' }
  | { readonly code: MoveFault; readonly move: number; readonly box: string; readonly from: string; readonly to: string }
  | {
      readonly code: 'no cart given' | 'cart given twice' | 'not what is said' | 'wrong height' | 'cart out of use' | 'cart barred';
      readonly load: string;
      readonly cart: string;
    }
  | { readonly code: 'unusable box' | 'not what is wanted'; readonly load: string; readonly slot: number; readonly box: string };

type MoveFault =
  | 'goes nowhere'
  | 'not on the floor'
  | 'not on top there'
  | 'no such cart'
  | 'cart out of use'
  | 'cart is full'
  | 'cart may not carry it';

/** Carries an answer out move by move on the case as it was written and looks at what stands where at the end. */
export function verifyAllocation(problem: AllocationCase, answer: AllocationAnswer): readonly AllocationMismatch[] {
  if (answer.status === 'infeasible')
    return answer.reason === undefined || ((answer.short ?? []).length === 0 && !answer.cartsShort) ? [{ code: 'no reason given' }] : [];
  const { stacks, wrong } = carryOut(problem, answer);
  wrong.push(...checkLoads(problem, answer, stacks));
  if (answer.boxMoves !== answer.moves.length) wrong.push({ code: 'moves miscounted' });
  if (answer.bound > answer.boxMoves) wrong.push({ code: 'bound above the plan' });
  if ((answer.status === 'optimal') !== (answer.bound === answer.boxMoves)) wrong.push({ code: 'wrongly called optimal' });
  return wrong;
}

type Stacks = ReadonlyMap<string, string[]>;

/** Stacks bottom first, so that a move touches the end. */
function carryOut(problem: AllocationCase, answer: AllocationAnswer): { stacks: Stacks; wrong: AllocationMismatch[] } {
  const wrong: AllocationMismatch[] = [];
  const stacks = new Map(problem.carts.map((cart) => [cart.id, [...cart.stack].reverse()]));
  const cartById = new Map(problem.carts.map((cart) => [cart.id, cart]));
  const floor = new Set(problem.loose);
  answer.moves.forEach(({ box, from, to }, index) => {
    const say = (code: MoveFault) => wrong.push({ code, move: index + 1, box, from, to });
    if (from === to) say('goes nowhere');
    if (from === 'floor') {
      if (!floor.delete(box)) say('not on the floor');
    } else if (stacks.get(from)?.at(-1) === box) stacks.get(from)!.pop();
    else say('not on top there');
    if (to === 'floor') return floor.add(box);
    const cart = cartById.get(to);
    if (!cart) return say('no such cart');
    stacks.get(to)!.push(box);
    if (cart.givesOnly) say('cart out of use');
    if (stacks.get(to)!.length > cart.capacity) say('cart is full');
    if (cart.carries && !cart.carries.includes(problem.boxes[box]!)) say('cart may not carry it');
    return undefined;
  });
  return { stacks, wrong };
}

function checkLoads(problem: AllocationCase, answer: AllocationAnswer, stacks: Stacks): AllocationMismatch[] {
  const wrong: AllocationMismatch[] = [];
  const unusable = new Set(problem.unusable);
  const outOfUse = new Set(problem.carts.filter((cart) => cart.givesOnly).map((cart) => cart.id));
  const assignments = new Map(answer.assignments.map((each) => [each.load, each]));
  const carts = new Set<string>();
  for (const { id: load, boxes, notOn } of problem.loads) {
    const assignment = assignments.get(load);
    if (!assignment) {
      wrong.push({ code: 'no cart given', load, cart: '' });
      continue;
    }
    const { cart } = assignment;
    if (carts.has(cart)) wrong.push({ code: 'cart given twice', load, cart });
    carts.add(cart);
    if (outOfUse.has(cart)) wrong.push({ code: 'cart out of use', load, cart });
    if (notOn?.includes(cart)) wrong.push({ code: 'cart barred', load, cart });
    const stack = [...(stacks.get(cart) ?? [])].reverse();
    if (stack.join('\n') !== assignment.boxes.join('\n')) wrong.push({ code: 'not what is said', load, cart });
    if (stack.length !== boxes.length) wrong.push({ code: 'wrong height', load, cart });
    boxes.forEach((wanted, at) => {
      const box = stack[at];
      if (box === undefined) return;
      if (unusable.has(box)) wrong.push({ code: 'unusable box', load, slot: at + 1, box });
      if ('serial' in wanted ? wanted.serial !== box : problem.boxes[box] !== wanted.model)
        wrong.push({ code: 'not what is wanted', load, slot: at + 1, box });
    });
  }
  return wrong;
}
