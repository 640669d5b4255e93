import { type FloorPlan, keptBoxes } from '../case/index.js';
import type { Program } from './program-text.js';

/** Which cart each load gets, and from how many of the top boxes of other carts are taken. */
export interface Choice {
  /** By load: index of its cart. */
  readonly cartOf: readonly number[];
  /** By cart: how many boxes are taken from its top; only carts that get no load. */
  readonly taken: ReadonlyMap<number, number>;
  /** Kinds that there are once and that are set aside on the floor on their way. */
  readonly aside: ReadonlySet<number>;
}

/** The choice that a solution of the program stands for; undefined where it is no whole one. */
export function readChoice(
  floor: FloorPlan,
  carts: readonly number[][],
  loads: readonly number[][],
  columns: Program['columns'],
  values: ReadonlyMap<string, number>,
): Choice | undefined {
  const cartsLeft = carts.map((members) => [...members]);
  const loadsLeft = loads.map((members) => [...members]);
  const cartOf = new Array<number>(floor.loads.length).fill(-1);
  const taken = new Map<number, number>();
  for (const [name, column] of columns) {
    const value = values.get(name) ?? 0;
    // A solver that was cut off may hold no whole solution.
    if (Math.abs(value - Math.round(value)) > 1e-5) return undefined;
    for (let count = Math.round(value); count > 0; count--) {
      const cart = cartsLeft[column.cartClass]!.shift();
      const load = 'taken' in column ? -1 : loadsLeft[column.loadClass]!.shift();
      if (cart === undefined || load === undefined) return undefined;
      if ('taken' in column) taken.set(cart, column.taken);
      else cartOf[load] = cart;
    }
  }
  return cartOf.every((cart) => cart >= 0) && suffices(floor, cartOf, taken) ? { cartOf, taken, aside: new Set() } : undefined;
}

/** Whether what comes off and what lies loose fills every place. */
function suffices(floor: FloorPlan, cartOf: readonly number[], taken: ReadonlyMap<number, number>): boolean {
  const left = new Array<number>(floor.kindCount).fill(0);
  for (const box of floor.loose) left[floor.kindOf[box]!]!++;
  for (const [cart, count] of taken) for (const box of floor.carts[cart]!.stack.slice(-count)) left[floor.kindOf[box]!]!++;
  cartOf.forEach((cart, load) => {
    const { kinds } = floor.loads[load]!;
    const { stack } = floor.carts[cart]!;
    const kept = keptBoxes(floor, stack, kinds);
    for (const box of stack.slice(kept)) left[floor.kindOf[box]!]!++;
    for (const kind of kinds.slice(kept)) left[kind]!--;
  });
  return left.every((count, kind) => kind === 0 || count >= 0);
}
