import { type FloorPlan, keptBoxes } from '../case/index.js';

/**
 * What a choice of carts leaves to be done where no box that moves can stand for another. A mover is a box that there is once, that comes off one cart and
 * into a place on another or the same.
 */
export interface PinnedWork {
  /** By stack: its cart, and what comes off it, top first: a mover, or -1 for a box that only goes to the floor. */
  readonly stacks: readonly { readonly cart: number; readonly off: readonly number[] }[];
  /** By load: its cart, what comes on, bottom first (a mover, or -1 for a box that stands on the floor), and the stack that has to be gone first (-1: none). */
  readonly loads: readonly { readonly cart: number; readonly on: readonly number[]; readonly after: number }[];
  readonly movers: readonly Mover[];
  /** Moves when no mover is set aside on the floor but those that have to be. */
  readonly leastMoves: number;
}

export interface Mover {
  readonly stack: number;
  /** Movers and other boxes that lie above it. */
  readonly depth: number;
  readonly load: number;
  /** Boxes that come onto the load's cart before it. */
  readonly place: number;
  /** It has to be set aside whatever else is done: its place waits for something that lies below it. */
  readonly isAside: boolean;
}

/** undefined: some box that moves can stand for another, so that this search does not know it. */
export function pinnedWorkOf(floor: FloorPlan, cartOf: readonly number[]): PinnedWork | undefined {
  const loadOn = new Map(cartOf.map((cart, load) => [cart, load]));
  const counts = new Int32Array(floor.kindCount);
  for (const kind of floor.kindOf) counts[kind]!++;
  const kept = floor.loads.map(({ kinds }, load) => keptBoxes(floor, floor.carts[cartOf[load]!]!.stack, kinds));
  const placeOf = new Map<number, { load: number; place: number }>();
  const wanted = new Int32Array(floor.kindCount);
  floor.loads.forEach(({ kinds }, load) =>
    kinds.slice(kept[load]).forEach((kind, place) => {
      wanted[kind]!++;
      placeOf.set(kind, { load, place });
    }),
  );
  const isMoved = (box: number) => counts[floor.kindOf[box]!] === 1 && placeOf.has(floor.kindOf[box]!);
  const stacks = floor.carts.flatMap(({ stack }, cart) => {
    const load = loadOn.get(cart);
    const from = load === undefined ? stack.findIndex(isMoved) : kept[load]!;
    return from < 0 || from >= stack.length ? [] : [{ cart, boxes: stack.slice(from).reverse() }];
  });
  const loose = new Int32Array(floor.kindCount);
  for (const box of floor.loose) loose[floor.kindOf[box]!]!++;
  const offKinds = new Set(stacks.flatMap(({ boxes }) => boxes.map((box) => floor.kindOf[box]!)));
  for (let kind = 1; kind < floor.kindCount; kind++)
    if (wanted[kind]! > loose[kind]! + Number(counts[kind] === 1 && offKinds.has(kind))) return undefined;
    else if (wanted[kind]! > 0 && counts[kind]! > 1 && offKinds.has(kind)) return undefined;
  return numbered(floor, cartOf, kept, stacks, placeOf);
}

function numbered(
  floor: FloorPlan,
  cartOf: readonly number[],
  kept: readonly number[],
  stacks: readonly { readonly cart: number; readonly boxes: readonly number[] }[],
  placeOf: ReadonlyMap<number, { readonly load: number; readonly place: number }>,
): PinnedWork {
  const moverOf = new Map<number, number>();
  const movers: Mover[] = [];
  const off = stacks.map(({ boxes }, stack) =>
    boxes.map((box, depth) => {
      const to = placeOf.get(floor.kindOf[box]!);
      if (!to) return -1;
      moverOf.set(floor.kindOf[box]!, movers.length);
      const { load, place } = to;
      const waitsForBelow = (below: number): boolean => {
        const at = placeOf.get(floor.kindOf[below]!);
        return at !== undefined && at.load === load && at.place < place;
      };
      const isAside = cartOf[load] === stacks[stack]!.cart || boxes.slice(depth + 1).some(waitsForBelow);
      return movers.push({ stack, depth, ...to, isAside }) - 1;
    }),
  );
  const stackOn = new Map(stacks.map(({ cart }, stack) => [cart, stack]));
  const loads = floor.loads.map(({ kinds }, load) => ({
    cart: cartOf[load]!,
    on: kinds.slice(kept[load]).map((kind) => moverOf.get(kind) ?? -1),
    after: stackOn.get(cartOf[load]!) ?? -1,
  }));
  const lifted = off.reduce((sum, boxes) => sum + boxes.length, 0);
  const placed = loads.reduce((sum, { on }) => sum + on.length, 0);
  return {
    stacks: stacks.map(({ cart }, stack) => ({ cart, off: off[stack]! })),
    loads,
    movers,
    leastMoves: lifted + placed - movers.filter(({ isAside }) => !isAside).length,
  };
}
