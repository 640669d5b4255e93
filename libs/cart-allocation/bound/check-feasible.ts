import { type AllocationCase, type BoxShortage, type CartShortage, type FloorPlan, mayCarry, placesKey } from '../case/index.js';

export interface Shortage {
  readonly reason: 'boxes short' | 'carts short';
  readonly short?: readonly BoxShortage[];
  readonly cartsShort?: CartShortage;
}

/** Why no plan can exist: boxes short, or carts short. undefined: every load can have its boxes and a cart. */
export function findShortage(problem: AllocationCase, floor: FloorPlan): Shortage | undefined {
  const short = [...pinnedShort(problem), ...modelsShort(problem)];
  if (short.length > 0) return { reason: 'boxes short', short };
  const cartsShort = findCartShortage(floor);
  return cartsShort && { reason: 'carts short', cartsShort };
}

/** Each place for a pinned serial that cannot be filled with it, one by one. */
function pinnedShort(problem: AllocationCase): BoxShortage[] {
  const unusable = new Set(problem.unusable);
  const pinned = new Set<string>();
  return problem.loads.flatMap((load) =>
    load.boxes.flatMap((box): BoxShortage[] => {
      if (!('serial' in box)) return [];
      const { serial } = box;
      const isHere = Object.hasOwn(problem.boxes, serial);
      const code = !isHere ? 'not here' : unusable.has(serial) ? 'unusable' : pinned.has(serial) ? 'wanted twice' : undefined;
      pinned.add(serial);
      return code ? [{ model: (isHere ? problem.boxes : problem.absent)[serial]!, missing: 1, serial, code }] : [];
    }),
  );
}

function modelsShort(problem: AllocationCase): BoxShortage[] {
  const unusable = new Set(problem.unusable);
  const pinned = new Set(problem.loads.flatMap((load) => load.boxes.flatMap((box) => ('serial' in box ? [box.serial] : []))));
  const supply = new Map<string, number>();
  for (const [serial, model] of Object.entries(problem.boxes))
    if (!unusable.has(serial) && !pinned.has(serial)) supply.set(model, (supply.get(model) ?? 0) + 1);
  const demand = new Map<string, number>();
  for (const load of problem.loads)
    for (const box of load.boxes) if ('model' in box) demand.set(box.model, (demand.get(box.model) ?? 0) + 1);
  return [...demand]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([model, wanted]): BoxShortage[] => {
      const missing = wanted - (supply.get(model) ?? 0);
      return missing > 0 ? [{ model, missing, code: 'too few' }] : [];
    });
}

/** Every load needs a cart of its own: a matching of loads to carts that may carry them (augmenting paths over classes of carts). */
function findCartShortage(floor: FloorPlan): CartShortage | undefined {
  const counts = { loads: floor.loads.length, carts: floor.carts.filter((cart) => !cart.givesOnly).length };
  const homeless = floor.loads.find((load) => !floor.carts.some((cart) => mayCarry(cart, load)));
  if (homeless) return { code: 'no cart may carry it', load: homeless.id, ...counts };
  const unmatched = findUnmatched(floor);
  return unmatched === undefined ? undefined : { code: 'no cart is left', load: unmatched, ...counts };
}

/** Carts that may carry the same are one class with a number of places. */
function findUnmatched(floor: FloorPlan): string | undefined {
  const classes = new Map<string, { cart: FloorPlan['carts'][number]; places: number; held: number[] }>();
  for (const cart of floor.carts) {
    const key = placesKey(cart);
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
