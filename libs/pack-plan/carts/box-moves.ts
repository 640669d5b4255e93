import { type AllocationAnswer, type AllocationCase, groupMoves, moveReasons } from '#cart-allocation';
import type { MoveReason } from '#trade';
import { type Words, tell } from '#words';
import type { BoxMove } from '../contract/index.js';

/** The moves of an answer as lines for a crew: why each is made, round by round, numbered in that order. */
export function describeMoves(
  problem: AllocationCase,
  answer: AllocationAnswer,
  loads: readonly { readonly id: string; readonly name: string }[],
  words: Words,
): BoxMove[] {
  const reasons = moveReasons(problem, answer);
  const rounds = groupMoves(problem, answer);
  const names = new Map(loads.map(({ id, name }) => [id, name]));
  const subjectOf = (id: string) => ({ kind: 'cart load' as const, id, name: names.get(id) ?? id });
  return answer.moves
    .map((move, index) => {
      const fact = factOf(reasons[index]!, subjectOf);
      return { ...move, why: tell(words.moves, fact), fact, round: rounds[index]! };
    })
    .sort((a, b) => a.round - b.round)
    .map((move, index) => ({ number: index + 1, ...move }));
}

function factOf(
  reason: ReturnType<typeof moveReasons>[number],
  subjectOf: (load: string) => Extract<MoveReason, { code: 'set-aside' }>['load'],
): MoveReason {
  if (reason.code === 'set-aside-for-cart') return { code: reason.code, cart: { kind: 'cart', id: reason.cart } };
  return 'load' in reason ? { ...reason, load: subjectOf(reason.load) } : reason;
}
