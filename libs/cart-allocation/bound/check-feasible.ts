import { type AllocationCase, type FloorPlan, mayCarry } from '../case/index.js';

export interface Shortage {
  /** `serial`: the pinned one that is short. */
  readonly short?: readonly { readonly model: string; readonly missing: number; readonly serial?: string }[];
  readonly reason?: string;
}

/** Why no plan can exist: boxes short, a pinned serial that cannot fly, carts short. undefined: every load can have its boxes and a cart. */
export function findShortage(problem: AllocationCase, floor: FloorPlan): Shortage | undefined {
  return pinnedFault(problem) ?? boxesShort(problem) ?? cartsShort(floor);
}

function pinnedFault(problem: AllocationCase): Shortage | undefined {
  const unusable = new Set(problem.unusable);
  const pinned = new Map<string, string>();
  for (const load of problem.loads)
    for (const box of load.boxes) {
      if (!('serial' in box)) continue;
      if (unusable.has(box.serial))
        return {
          short: [{ model: problem.boxes[box.serial]!, missing: 1, serial: box.serial }],
          reason: `${box.serial} is wanted in ${load.id} but may not be used.`,
        };
      if (pinned.has(box.serial))
        return { reason: `${box.serial} is wanted in ${pinned.get(box.serial)} and in ${load.id}: one box cannot be in two places.` };
      pinned.set(box.serial, load.id);
    }
  return undefined;
}

function boxesShort(problem: AllocationCase): Shortage | undefined {
  const unusable = new Set(problem.unusable);
  const pinned = new Set(problem.loads.flatMap((load) => load.boxes.flatMap((box) => ('serial' in box ? [box.serial] : []))));
  const supply = new Map<string, number>();
  for (const [serial, model] of Object.entries(problem.boxes))
    if (!unusable.has(serial) && !pinned.has(serial)) supply.set(model, (supply.get(model) ?? 0) + 1);
  const demand = new Map<string, number>();
  for (const load of problem.loads)
    for (const box of load.boxes) if ('model' in box) demand.set(box.model, (demand.get(box.model) ?? 0) + 1);
  const short = [...demand]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([model, wanted]) => {
      const missing = wanted - (supply.get(model) ?? 0);
      return missing > 0 ? [{ model, missing }] : [];
    });
  if (short.length === 0) return undefined;
  return { short, reason: `Too few boxes that may be used: ${short.map(({ model, missing }) => `${missing} ${model}`).join(', ')} short.` };
}

/** Every load needs a cart of its own: a matching of loads to carts that may carry them (augmenting paths over classes of carts). */
function cartsShort(floor: FloorPlan): Shortage | undefined {
  const homeless = floor.loads.find((load) => !floor.carts.some((cart) => mayCarry(cart, load)));
  if (homeless)
    return {
      reason: `No cart may carry ${homeless.id}: ${homeless.kinds.length} boxes of ${[...new Set(homeless.models)].join(' and ')}.`,
    };
  if (floor.loads.length > floor.carts.length)
    return { reason: `Too few carts: ${floor.loads.length} loads, ${floor.carts.length} carts.` };
  const unmatched = findUnmatched(floor);
  return unmatched === undefined ? undefined : { reason: `Too few carts that may carry ${unmatched}.` };
}

/** Carts alike in capacity and in what they carry are one class with a number of places. */
function findUnmatched(floor: FloorPlan): string | undefined {
  const classes = new Map<string, { cart: FloorPlan['carts'][number]; places: number; held: number[] }>();
  for (const cart of floor.carts) {
    const key = JSON.stringify([cart.capacity, cart.carries ? [...cart.carries].sort() : null]);
    const found = classes.get(key);
    if (found) found.places++;
    else classes.set(key, { cart, places: 1, held: [] });
  }
  const list = [...classes.values()];
  const place = (load: number, tried: Set<number>): boolean => {
    for (const [index, each] of list.entries()) {
      if (tried.has(index) || !mayCarry(each.cart, floor.loads[load]!)) continue;
      tried.add(index);
      if (each.held.length < each.places) return each.held.push(load) > 0;
      for (const [at, other] of each.held.entries())
        if (place(other, tried)) {
          each.held[at] = load;
          return true;
        }
    }
    return false;
  };
  const failed = floor.loads.findIndex((_, load) => !place(load, new Set()));
  return failed < 0 ? undefined : floor.loads[failed]!.id;
}
