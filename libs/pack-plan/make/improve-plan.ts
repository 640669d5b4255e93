import type { TourFile } from '#tour-file';
import type { ImprovementFact } from '#trade';
import { type Words, english } from '#words';
import { planCarts } from '../carts/index.js';
import type { CartsResult, PackPlan, SolveLimits } from '../contract/index.js';
import { changedInputs, floorFits, gatherInputs } from '../inputs/index.js';
import { makeSteadyPlan } from './make-pack-plan.js';

/** What longer work on a plan came to: a plan where it is strictly better. */
export interface Improvement {
  readonly fact: ImprovementFact;
  readonly better: PackPlan | null;
}

/** True where nobody knows whether a shorter list of box moves exists: the search was stopped. */
export const isOpen = ({ carts }: Pick<PackPlan, 'carts'>): boolean => carts.loads.length > 0 && carts.boxMoves > carts.bound;

/**
 * Looks, with the work of `limits`, for a plan of fewer box moves that leaves no more places without a box. Only for the floor and the inputs of the
 * plan in hand: against another floor the numbers of moves do not compare. A plan that a checker does not agree with is never offered.
 */
export function improvePlan(file: TourFile, now: PackPlan, limits: SolveLimits, words: Words = english): Improvement {
  if (changedInputs(now, file).length > 0 || !isUntouched(file, now)) return { fact: { code: 'overtaken' }, better: null };
  const { boxMoves: moves } = now.carts;
  const carts = planCarts(gatherInputs(file, now.show.id, words), limits);
  const atLeast = Math.max(now.carts.bound, carts.bound);
  if (isShorter(carts, now.carts)) {
    const better = makeSteadyPlan(file, now.show.id, limits, now, words);
    if (isShorter(better.carts, now.carts) && better.findings.every(({ code }) => code !== 'checker-disagrees'))
      return { fact: { code: 'shorter', moves, shorter: better.carts.boxMoves, atLeast }, better };
  }
  return { fact: atLeast >= moves ? { code: 'proved', moves } : { code: 'not-shorter', moves, atLeast }, better: null };
}

const isShorter = (one: CartsResult, other: CartsResult): boolean => one.boxMoves < other.boxMoves && withoutBox(one) <= withoutBox(other);

const withoutBox = ({ loads }: CartsResult): number => loads.flatMap((load) => load.boxes.filter((box) => box.serial === null)).length;

/** No box has been moved since the plan was made. */
function isUntouched(file: TourFile, { carts }: PackPlan): boolean {
  const stacks = new Map(file.items.map((item) => [item.id, item.stack ?? []]));
  return floorFits({ carts: { ...carts, moves: [] } }, (cart) => stacks.get(cart) ?? []);
}
