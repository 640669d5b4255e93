import type { WorkBudget } from '#kernel';
import { type FloorPlan, keptBoxes, mayCarry } from '../case/index.js';

/** Units of work for a column of the program. */
export const unitsPerColumn = 20;
/** Pairs of cart and load classes that a program may hold; each second of the clock is good for so many. */
const mostPairs = 30_000;
const pairsPerSecond = 12_000;

/**
 * Where there are more pairs of cart and load classes than a program may have: for each load class the carts that need the fewest moves, and some
 * others all around, so that every load can have a cart. undefined: all pairs.
 */
export function promisingPairs(
  floor: FloorPlan,
  carts: readonly number[][],
  loads: readonly number[][],
  budget: WorkBudget,
): ReadonlyMap<number, readonly number[]> | undefined {
  const inTime = Math.round(pairsPerSecond * Math.max(0.1, budget.secondsLeft()));
  const most = Math.min(mostPairs, Math.max(1000, Math.round(budget.workLeft / unitsPerColumn)));
  if (carts.length * loads.length <= Math.min(most, inTime)) return undefined;
  if (inTime < most) budget.cutOffByClock();
  const each = Math.max(4, Math.floor(Math.min(most, inTime) / loads.length / 2));
  const pairs = new Map<number, number[]>();
  // Only a cart whose lowest box is the load's lowest can keep any; of the others the lowest stack is best.
  const byLowest = new Map<number, number[]>();
  const byHeight = carts.map((_, cartClass) => cartClass);
  const stackOf = (cartClass: number) => floor.carts[carts[cartClass]![0]!]!.stack;
  byHeight.sort((a, b) => stackOf(a).length - stackOf(b).length);
  for (const cartClass of byHeight) {
    const lowest = floor.kindOf[stackOf(cartClass)[0] ?? -1];
    if (lowest !== undefined) addTo(byLowest, lowest, cartClass);
  }
  loads.forEach(([load], loadClass) => {
    const wanted = floor.loads[load!]!;
    const add = (cartClass: number): boolean => {
      if (!mayCarry(floor.carts[carts[cartClass]![0]!]!, wanted)) return false;
      if (pairs.get(cartClass)?.at(-1) !== loadClass) addTo(pairs, cartClass, loadClass);
      return true;
    };
    const moves = (cartClass: number) => stackOf(cartClass).length - 2 * keptBoxes(floor, stackOf(cartClass), wanted.kinds);
    const keeping = (byLowest.get(wanted.kinds[0]!) ?? []).map((cartClass) => ({ cartClass, moves: moves(cartClass) }));
    let left = each;
    for (const { cartClass } of keeping.sort((a, b) => a.moves - b.moves)) if (left > 0 && add(cartClass)) left--;
    const start = Math.floor((loadClass * byHeight.length) / loads.length);
    left += each;
    for (let step = 0; step < byHeight.length && left > 0; step++) if (add(byHeight[(start + step) % byHeight.length]!)) left--;
  });
  return pairs;
}

/** Boxes that must come into place however the carts are chosen. */
export function leastComingIn(floor: FloorPlan, carts: readonly number[][], loads: readonly number[][]): number {
  const byLowest = new Map<number, FloorPlan['carts'][number][]>();
  for (const [first] of carts) {
    const cart = floor.carts[first!]!;
    const lowest = floor.kindOf[cart.stack[0] ?? -1];
    if (lowest !== undefined) addTo(byLowest, lowest, cart);
  }
  return loads.reduce((sum, members) => {
    const wanted = floor.loads[members[0]!]!;
    const most = (byLowest.get(wanted.kinds[0]!) ?? []).reduce(
      (best, cart) => (mayCarry(cart, wanted) ? Math.max(best, keptBoxes(floor, cart.stack, wanted.kinds)) : best),
      0,
    );
    return sum + members.length * (wanted.kinds.length - most);
  }, 0);
}

export function addTo<K, V>(lists: Map<K, V[]>, key: K, value: V): void {
  const list = lists.get(key);
  if (list) list.push(value);
  else lists.set(key, [value]);
}

/** Members of each class, in order of first appearance. */
export function classesOf(keys: readonly string[]): number[][] {
  const classes = new Map<string, number[]>();
  keys.forEach((key, index) => addTo(classes, key, index));
  return [...classes.values()];
}
