import { invariant } from '#kernel';
import {
  type AllocationAnswer,
  type AllocationCase,
  type BoxShortage,
  type CartShortage,
  type StoppedBy,
  makeAllocationCase,
} from '../case/index.js';
import { type AllocationLimits, type CheckedAllocation, solveAllocation } from '../solve/index.js';

/** A wish that came after the number of moves: what a box counts, for example 1 where it falls due soon, or its uses. */
export interface Wish {
  readonly code: string;
  readonly of: (serial: string) => number;
}

/** The answer in hand, as far as it is compared. */
export interface AnswerInHand extends Pick<AllocationAnswer, 'boxMoves' | 'assignments'> {
  readonly cartsTouched: number;
}

/** Why this one stands there, and not another: what it costs to do without it. */
export type Why =
  /** The place wants this very box. */
  | { readonly code: 'pinned' }
  /** Without it there is no plan at all. */
  | { readonly code: 'no other'; readonly short: readonly BoxShortage[]; readonly cartsShort: CartShortage | null }
  | WhyNotAnother;

export interface WhyNotAnother {
  /** `another`: the best plan without it has more moves, or touches more carts, or serves the wishes worse; or it is as good, and this was one of several. */
  readonly code: 'another';
  /** The box or the cart that takes the place in that plan. */
  readonly other: string;
  readonly movesMore: number;
  /** Proven: no plan without it has fewer moves more. Equal to `movesMore` where the search was finished. */
  readonly movesMoreAtLeast: number;
  readonly cartsMore: number;
  /** By wish: how much more the boxes of all loads count. */
  readonly wishesMore: readonly { readonly code: string; readonly more: number }[];
  readonly stoppedBy: StoppedBy;
}

/**
 * Why a box stands in a place (`slot` from 1 at the top of its load), found by barring it from every load and asking again. The answer has to be one of this
 * case, and not infeasible.
 */
export function whyThisBox(
  problem: AllocationCase,
  answer: AnswerInHand,
  place: { readonly load: string; readonly slot: number },
  wishes: readonly Wish[],
  limits: AllocationLimits,
): Why {
  const wanted = problem.loads.find((load) => load.id === place.load)?.boxes[place.slot - 1];
  const serial = assignmentOf(answer, place.load)?.boxes[place.slot - 1];
  invariant(wanted !== undefined && serial !== undefined, 'the place is one of the answer');
  if ('serial' in wanted) return { code: 'pinned' };
  const without = solveAllocation(caseWith({ ...problem, unusable: [...problem.unusable, serial] }), limits);
  return compare(answer, without, wishes, assignmentOf(without, place.load)?.boxes[place.slot - 1]);
}

/** Why a load stands on its cart, found by barring that cart for it and asking again. */
export function whyThisCart(
  problem: AllocationCase,
  answer: AnswerInHand,
  load: string,
  wishes: readonly Wish[],
  limits: AllocationLimits,
): Why {
  const cart = assignmentOf(answer, load)?.cart;
  invariant(cart !== undefined, 'the load is one of the answer');
  const loads = problem.loads.map((each) => (each.id === load ? { ...each, notOn: [...(each.notOn ?? []), cart] } : each));
  const without = solveAllocation(caseWith({ ...problem, loads }), limits);
  return compare(answer, without, wishes, assignmentOf(without, load)?.cart);
}

function compare(answer: AnswerInHand, without: CheckedAllocation, wishes: readonly Wish[], other: string | undefined): Why {
  if (without.status === 'infeasible') return { code: 'no other', short: without.short ?? [], cartsShort: without.cartsShort ?? null };
  invariant(without.mismatch.length === 0 && other !== undefined, 'a checked plan fills every place');
  return {
    code: 'another',
    other,
    movesMore: without.boxMoves - answer.boxMoves,
    movesMoreAtLeast: without.bound - answer.boxMoves,
    cartsMore: without.measures.cartsTouched - answer.cartsTouched,
    wishesMore: wishes.map(({ code, of }) => ({ code, more: countOf(without, of) - countOf(answer, of) })),
    stoppedBy: without.stoppedBy,
  };
}

const countOf = ({ assignments }: Pick<AllocationAnswer, 'assignments'>, of: Wish['of']): number =>
  assignments.reduce((sum, { boxes }) => sum + boxes.reduce((part, serial) => part + of(serial), 0), 0);

const assignmentOf = ({ assignments }: Pick<AllocationAnswer, 'assignments'>, load: string) =>
  assignments.find((each) => each.load === load);

function caseWith(input: Parameters<typeof makeAllocationCase>[0]): AllocationCase {
  const made = makeAllocationCase(input);
  invariant(made.ok, 'a case with one thing barred is a case');
  return made.value;
}
