import type { AllocationCase } from './allocation-case.js';

/**
 * A case in small whole numbers, carts and loads in the order of their ids, so that equal input gives the equal plan. Boxes that can stand for one another share
 * a kind: a model, a pinned serial (its own kind), or 0 for what no load can use. Stacks are bottom first here: a move touches the end.
 */
export interface FloorPlan {
  readonly carts: readonly {
    readonly id: string;
    readonly capacity: number;
    readonly stack: readonly number[];
    readonly carries: ReadonlySet<string> | undefined;
    readonly givesOnly: boolean;
    /** Some load may not be on it: it is a class of its own. */
    readonly isNamed: boolean;
  }[];
  readonly loads: readonly {
    readonly id: string;
    readonly kinds: readonly number[];
    readonly models: readonly string[];
    readonly notOn: readonly string[];
  }[];
  /** Boxes on the floor, in the order of their serials. */
  readonly loose: readonly number[];
  readonly serials: readonly string[];
  /** Kind of each box; 0 = of no use. */
  readonly kindOf: readonly number[];
  readonly kindCount: number;
  /** Name of each kind: a model or a serial. */
  readonly kindNames: readonly string[];
}

/** A box move in small numbers: box, and the index of the cart it comes from and goes to (-1 = the floor). */
export interface NumberedMove {
  readonly box: number;
  readonly from: number;
  readonly to: number;
}

/** Among choices with equally many moves: boxes of low rank first, loads of neighbouring rank on carts that are alike. */
export interface Preferences {
  readonly boxRank: (serial: string) => number;
  readonly loadRank: (load: string) => number;
}

export function floorPlanOf(problem: AllocationCase, prefer: Preferences = { boxRank: () => 0, loadRank: () => 0 }): FloorPlan {
  const inOrder = <T extends { id: string }>(values: readonly T[], rank: (value: T) => number) =>
    values
      .map((value) => ({ value, rank: rank(value) }))
      .sort((a, b) => a.rank - b.rank || (a.value.id < b.value.id ? -1 : 1))
      .map(({ value }) => value);
  const ofStack = (stack: readonly string[]) => stack.reduce((sum, serial) => sum + prefer.boxRank(serial), 0);
  const serials = Object.keys(problem.boxes).sort();
  const numberOf = new Map(serials.map((serial, index) => [serial, index]));
  const unusable = new Set(problem.unusable);
  const named = new Set(problem.loads.flatMap((load) => load.notOn ?? []));
  const kindNumbers = new Map<string, number>();
  const kind = (key: string): number => {
    if (!kindNumbers.has(key)) kindNumbers.set(key, kindNumbers.size + 1);
    return kindNumbers.get(key)!;
  };
  const loads = inOrder(problem.loads, (load) => prefer.loadRank(load.id)).map((load) => ({
    id: load.id,
    kinds: [...load.boxes].reverse().map((box) => ('serial' in box ? kind(`serial ${box.serial}`) : kind(`model ${box.model}`))),
    notOn: [...(load.notOn ?? [])].sort(),
    models: load.boxes.map((box) => ('serial' in box ? (problem.boxes[box.serial] ?? problem.absent[box.serial]!) : box.model)),
  }));
  const kindOf = serials.map((serial) =>
    unusable.has(serial) ? 0 : (kindNumbers.get(`serial ${serial}`) ?? kindNumbers.get(`model ${problem.boxes[serial]}`) ?? 0),
  );
  return {
    carts: inOrder(problem.carts, (cart) => ofStack(cart.stack)).map((cart) => ({
      id: cart.id,
      capacity: cart.capacity,
      stack: [...cart.stack].reverse().map((serial) => numberOf.get(serial)!),
      carries: cart.carries && new Set(cart.carries),
      givesOnly: cart.givesOnly === true,
      isNamed: named.has(cart.id),
    })),
    loads,
    // Taken from the end: what is preferred stands last.
    loose: problem.loose
      .map((serial) => numberOf.get(serial)!)
      .sort((a, b) => prefer.boxRank(serials[b]!) - prefer.boxRank(serials[a]!) || a - b),
    serials,
    kindOf,
    kindCount: kindNumbers.size + 1,
    kindNames: ['', ...[...kindNumbers.keys()].map((key) => key.slice(key.indexOf(' ') + 1))],
  };
}

/** Equal for carts that stand alike in kinds and may carry the same. */
export const cartKey = (floor: FloorPlan, cart: FloorPlan['carts'][number]): string =>
  JSON.stringify([placesKey(cart), cart.stack.map((box) => floor.kindOf[box])]);

/** Equal for carts that may carry the same loads. */
export const placesKey = (cart: FloorPlan['carts'][number]): string =>
  JSON.stringify(cart.givesOnly ? null : [cart.capacity, cart.carries ? [...cart.carries].sort() : null, cart.isNamed ? cart.id : '']);

/** Equal for loads of the same kinds and models. */
export const loadKey = (load: FloorPlan['loads'][number]): string =>
  JSON.stringify([load.kinds, [...new Set(load.models)].sort(), load.notOn]);

/** How many boxes at the bottom of the cart already stand as the load wants them. */
export function keptBoxes(floor: FloorPlan, stack: readonly number[], kinds: readonly number[]): number {
  let kept = 0;
  while (kept < stack.length && kept < kinds.length && floor.kindOf[stack[kept]!] === kinds[kept]) kept++;
  return kept;
}

/** Whether the cart may carry the load at all. */
export function mayCarry(cart: FloorPlan['carts'][number], load: FloorPlan['loads'][number]): boolean {
  return (
    !cart.givesOnly &&
    !load.notOn.includes(cart.id) &&
    load.kinds.length <= cart.capacity &&
    (cart.carries === undefined || load.models.every((model) => cart.carries!.has(model)))
  );
}
