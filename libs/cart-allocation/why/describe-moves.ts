import type { AllocationAnswer, AllocationCase } from '../case/index.js';

/** Why each move is made, in the words of the floor. */
export function moveReasons(problem: AllocationCase, answer: AllocationAnswer): readonly string[] {
  const loadOfCart = new Map(answer.assignments.map((each) => [each.cart, each]));
  const unusable = new Set(problem.unusable);
  const lastMoveOf = new Map(answer.moves.map((move, index) => [move.box, { move, index }]));
  return answer.moves.map(({ box, from, to }, index) => {
    const goal = loadOfCart.get(to);
    if (goal) return `slot ${goal.boxes.indexOf(box) + 1} of ${goal.load}`;
    if (unusable.has(box)) return 'out of service: must not ride in a load';
    const later = lastMoveOf.get(box)!;
    if (later.index > index) return `set aside for ${loadOfCart.get(later.move.to)?.load ?? later.move.to}`;
    const left = loadOfCart.get(from);
    return left ? `makes room for ${left.load}` : 'stands on a box that is wanted';
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
