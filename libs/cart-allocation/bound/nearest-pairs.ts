import { type FloorPlan, keptBoxes, mayCarry } from '../case/index.js';
import { addTo } from './promising-pairs.js';

/** Pairs of cart and load classes that a program holds when its relaxation has said which; beside those that give every load a cart. */
const mostNear = 12_000;
/** A pair whose use costs a move or more beyond the relaxation is not in a choice that meets its bound. */
const mostReducedCost = 1 - 1e-6;
/** Cart classes all around for each load class, so that every load can have a cart. */
const around = 4;

/** What a relaxation over all pairs says of a column: its value, and what using it would cost beyond the least. */
export interface Relaxed {
  readonly values: ReadonlyMap<string, number>;
  readonly reducedCosts: ReadonlyMap<string, number>;
}

/** By cart class: load classes, those first that the relaxation uses, then those that cost the least beyond it. */
export function nearestPairs(
  floor: FloorPlan,
  carts: readonly number[][],
  loads: readonly number[][],
  { values, reducedCosts }: Relaxed,
): ReadonlyMap<number, readonly number[]> {
  const cartOf = (cartClass: number) => floor.carts[carts[cartClass]![0]!]!;
  const loadOf = (loadClass: number) => floor.loads[loads[loadClass]![0]!]!;
  const near: { cartClass: number; loadClass: number; cost: number; moves: number }[] = [];
  const chosen = carts.map(() => new Set<number>());
  carts.forEach((_, cartClass) =>
    loads.forEach((__, loadClass) => {
      const name = `x${cartClass}_${loadClass}`;
      const cost = (values.get(name) ?? 0) > 1e-6 ? -1 : (reducedCosts.get(name) ?? Infinity);
      if (cost > mostReducedCost) return;
      const { stack } = cartOf(cartClass);
      const moves = stack.length - 2 * keptBoxes(floor, stack, loadOf(loadClass).kinds);
      near.push({ cartClass, loadClass, cost: Math.round(cost * 1e6), moves });
    }),
  );
  near.sort((a, b) => a.cost - b.cost || a.moves - b.moves);
  for (const { cartClass, loadClass } of near.slice(0, mostNear)) chosen[cartClass]!.add(loadClass);
  loads.forEach((_, loadClass) => {
    const start = Math.floor((loadClass * carts.length) / loads.length);
    for (let step = 0, left = around; step < carts.length && left > 0; step++) {
      const cartClass = (start + step) % carts.length;
      if (!mayCarry(cartOf(cartClass), loadOf(loadClass))) continue;
      chosen[cartClass]!.add(loadClass);
      left--;
    }
  });
  const pairs = new Map<number, number[]>();
  chosen.forEach((list, cartClass) => [...list].sort((a, b) => a - b).forEach((loadClass) => addTo(pairs, cartClass, loadClass)));
  return pairs;
}
