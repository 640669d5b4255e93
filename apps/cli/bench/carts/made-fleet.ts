import { type AllocationCase, makeAllocationCase } from '#cart-allocation';
import { invariant, seededRandom } from '#kernel';

/**
 * A made-up floor of `cartCount` carts of four: heights 0/2/3/4 weighted 1:0.5:1:8, each cart mostly (85 %) of one of 1-3 models
 * weighted 5:3:2, one loose box for ten carts, 3 % of boxes unusable; half as many loads as carts, 20 % with another model at the bottom,
 * 5 % part loads, 2 % of positions pinned to a usable serial. What the fleet cannot serve is not asked for.
 */
export function makeFleet(cartCount: number, seed: number): AllocationCase {
  const random = seededRandom(seed * 7919 + cartCount);
  const pick = <T>(options: readonly (readonly [T, number])[]): T => {
    let at = random() * options.reduce((sum, [, weight]) => sum + weight, 0);
    for (const [value, weight] of options) if ((at -= weight) < 0) return value;
    return options.at(-1)![0];
  };
  const weights = [
    ['A', 5],
    ['B', 3],
    ['C', 2],
  ] as const;
  const models = weights.slice(0, 1 + Math.floor(random() * 3));
  const boxes: Record<string, string> = {};
  const unusable: string[] = [];
  let made = 0;
  const serials: string[] = [];
  const next = (model: string): string => {
    const serial = `${model}${String(++made).padStart(5, '0')}`;
    boxes[serial] = model;
    serials.push(serial);
    if (random() < 0.03) unusable.push(serial);
    return serial;
  };
  const carts = Array.from({ length: cartCount }, (_, index) => {
    const height = pick([
      [0, 1],
      [2, 0.5],
      [3, 1],
      [4, 8],
    ]);
    const main = pick(models);
    const stack = Array.from({ length: height }, () => next(random() < 0.85 ? main : pick(models)));
    return { id: `K${String(index + 1).padStart(4, '0')}`, capacity: 4, stack };
  });
  const loose = Array.from({ length: Math.floor(cartCount / 10) }, () => next(pick(models)));
  const loads = makeLoads(Math.floor(cartCount / 2), { boxes, unusable, serials, models, random, pick });
  const fleet = makeAllocationCase({ carts, loose, boxes, unusable, loads });
  invariant(fleet.ok, 'a made fleet is a case');
  return fleet.value;
}

interface Stock {
  readonly boxes: Readonly<Record<string, string>>;
  readonly unusable: readonly string[];
  readonly serials: readonly string[];
  readonly models: readonly (readonly [string, number])[];
  readonly random: () => number;
  readonly pick: <T>(options: readonly (readonly [T, number])[]) => T;
}

function makeLoads(count: number, { boxes, unusable, serials, models, random, pick }: Stock): AllocationCase['loads'] {
  const out = new Set(unusable);
  const usable = serials.filter((serial) => !out.has(serial));
  const left = new Map<string, number>();
  for (const serial of usable) left.set(boxes[serial]!, (left.get(boxes[serial]!) ?? 0) + 1);
  const pinned = new Set<string>();
  const loads: AllocationCase['loads'][number][] = [];
  while (loads.length < count) {
    const main = pick(models);
    const size = random() < 0.05 ? 1 + Math.floor(random() * 3) : 4;
    const wanted = Array.from({ length: size }, () => main);
    if (random() < 0.2) wanted[size - 1] = pick(models);
    const need = (model: string) => wanted.filter((each) => each === model).length;
    if (wanted.some((model) => (left.get(model) ?? 0) < need(model))) break;
    for (const model of wanted) left.set(model, left.get(model)! - 1);
    const boxesWanted = wanted.map((model) => {
      if (random() >= 0.02) return { model };
      const free = usable.filter((serial) => boxes[serial] === model && !pinned.has(serial));
      const serial = free[Math.floor(random() * free.length)];
      if (serial === undefined) return { model };
      pinned.add(serial);
      return { serial };
    });
    loads.push({ id: `L${String(loads.length + 1).padStart(4, '0')}`, boxes: boxesWanted });
  }
  return loads;
}
