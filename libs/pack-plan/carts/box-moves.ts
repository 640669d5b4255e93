import { type AllocationAnswer, type AllocationCase, groupMoves, moveReasons } from '#cart-allocation';
import type { BoxMove } from '../contract/index.js';

/** The moves of an answer as lines for a crew: why each is made, round by round, numbered in that order. */
export function describeMoves(problem: AllocationCase, answer: AllocationAnswer): BoxMove[] {
  const reasons = moveReasons(problem, answer);
  const rounds = groupMoves(problem, answer);
  return answer.moves
    .map((move, index) => ({ ...move, why: reasons[index]!, round: rounds[index]! }))
    .sort((a, b) => a.round - b.round)
    .map((move, index) => ({ number: index + 1, ...move }));
}
