import type { Choice } from '../bound/index.js';
import { type FloorPlan, keptBoxes, loadKey, mayCarry } from '../case/index.js';

/** When the program found no choice: each load in turn takes the free cart that fits it best, and any other cart may give boxes. */
export function plainChoice(floor: FloorPlan): Choice {
  const options = new Options(floor);
  const cartOf = new Array<number>(floor.loads.length).fill(-1);
  const loadOf = new Map<number, number>();
  const give = (load: number, cart: number) => {
    loadOf.set(cart, load);
    cartOf[load] = cart;
  };
  /** Where no cart is free the load takes another's, which then looks for one. */
  const place = (load: number, tried: Set<number>): boolean => {
    for (const cart of options.of(load)) if (!loadOf.has(cart)) return (give(load, cart), true);
    for (const cart of options.of(load)) {
      if (tried.has(cart)) continue;
      tried.add(cart);
      if (!place(loadOf.get(cart)!, tried)) continue;
      give(load, cart);
      return true;
    }
    return false;
  };
  floor.loads.forEach((_, load) => place(load, new Set()));
  const givers = floor.carts.flatMap(({ stack }, cart) => (loadOf.has(cart) || stack.length === 0 ? [] : [[cart, stack.length] as const]));
  return { cartOf, taken: new Map(givers), aside: new Set() };
}

/** Carts for a load, the fewest moves first. */
class Options {
  /** By kind of the lowest box: only these carts can keep any box of a load that wants that kind lowest. */
  private readonly byLowest = new Map<number, number[]>();
  private readonly byHeight: readonly number[];
  private readonly found = new Map<string, readonly number[]>();

  constructor(private readonly floor: FloorPlan) {
    this.byHeight = floor.carts.map((_, cart) => cart).sort((a, b) => floor.carts[a]!.stack.length - floor.carts[b]!.stack.length);
    for (const cart of this.byHeight) {
      const lowest = floor.kindOf[floor.carts[cart]!.stack[0] ?? -1];
      if (lowest === undefined) continue;
      const list = this.byLowest.get(lowest);
      if (list) list.push(cart);
      else this.byLowest.set(lowest, [cart]);
    }
  }

  *of(load: number): Generator<number> {
    yield* this.keeping(load);
    for (const cart of this.byHeight) if (mayCarry(this.floor.carts[cart]!, this.floor.loads[load]!)) yield cart;
  }

  /** Alike for alike loads, and worked out once. */
  private keeping(load: number): readonly number[] {
    const { floor } = this;
    const wanted = floor.loads[load]!;
    const key = loadKey(wanted);
    const known = this.found.get(key);
    if (known) return known;
    const moves = (cart: number) => floor.carts[cart]!.stack.length - 2 * keptBoxes(floor, floor.carts[cart]!.stack, wanted.kinds);
    const carts = (this.byLowest.get(wanted.kinds[0]!) ?? [])
      .filter((cart) => mayCarry(floor.carts[cart]!, wanted))
      .map((cart) => ({ cart, moves: moves(cart) }))
      .sort((a, b) => a.moves - b.moves)
      .map(({ cart }) => cart);
    this.found.set(key, carts);
    return carts;
  }
}
