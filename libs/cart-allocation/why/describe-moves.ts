import type { AllocationAnswer, AllocationCase } from '../case/index.js';

/** Why a move is made; `load` is the id of a load. */
export type MoveReason =
  | { readonly code: 'into-slot'; readonly load: string; readonly slot: number }
  /** It must not ride in a load and leaves the stack. */
  | { readonly code: 'out-of-service' }
  /** It waits for a move of its own: into a load, or onto a cart that carries none. */
  | { readonly code: 'set-aside'; readonly load: string }
  | { readonly code: 'set-aside-for-cart'; readonly cart: string }
  | { readonly code: 'makes-room'; readonly load: string }
  | { readonly code: 'on-wanted-box' };

/** Why each move is made, in the order of the moves. */
export function moveReasons(problem: AllocationCase, answer: AllocationAnswer): readonly MoveReason[] {
  const loadOfCart = new Map(answer.assignments.map((each) => [each.cart, each]));
  const unusable = new Set(problem.unusable);
  const lastMoveOf = new Map(answer.moves.map((move, index) => [move.box, { move, index }]));
  return answer.moves.map(({ box, from, to }, index): MoveReason => {
    const goal = loadOfCart.get(to);
    if (goal) return { code: 'into-slot', load: goal.load, slot: goal.boxes.indexOf(box) + 1 };
    if (unusable.has(box)) return { code: 'out-of-service' };
    const later = lastMoveOf.get(box)!;
    if (later.index > index) {
      const load = loadOfCart.get(later.move.to)?.load;
      return load === undefined ? { code: 'set-aside-for-cart', cart: later.move.to } : { code: 'set-aside', load };
    }
    const left = loadOfCart.get(from);
    return left ? { code: 'makes-room', load: left.load } : { code: 'on-wanted-box' };
  });
}

/** Rounds for a crew: moves of one round touch no cart twice and wait for none of their own round. */
export function groupMoves(_problem: AllocationCase, answer: AllocationAnswer): readonly number[] {
  const freeFrom = new Map<string, number>();
  return answer.moves.map(({ box, from, to }) => {
    const places = [box, ...[from, to].filter((each) => each !== 'floor')];
    const round = Math.max(1, ...places.map((each) => freeFrom.get(each) ?? 1));
    for (const each of places) freeFrom.set(each, round + 1);
    return round;
  });
}

/** Box moves of doing it without a plan: unstack every cart in use, then build each load in turn. */
export function naiveBoxMoves(problem: AllocationCase): number {
  const busy = [...problem.carts].sort((a, b) => b.stack.length - a.stack.length).slice(0, problem.loads.length);
  return busy.reduce((sum, cart) => sum + cart.stack.length, 0) + problem.loads.reduce((sum, load) => sum + load.boxes.length, 0);
}
