import { WorkBudget } from '#kernel';
import { seededFloor } from '../../../tests/support/seeded-floors.js';
import { cartKey, floorPlanOf, keptBoxes, loadKey, mayCarry } from '../case/index.js';
import { classesOf, leastComingIn, promisingPairs } from './promising-pairs.js';

const floor = floorPlanOf(seededFloor(1, { carts: 150, loads: 90, pinned: 0.7 }));
const carts = classesOf(floor.carts.map((cart) => cartKey(floor, cart)));
const loads = classesOf(floor.loads.map(loadKey));
const budget = (work: number, timeLimitSeconds = 1e6) => new WorkBudget({ work, timeLimitSeconds, now: () => 0 });
const cartOf = (cartClass: number) => floor.carts[carts[cartClass]![0]!]!;
const loadOf = (loadClass: number) => floor.loads[loads[loadClass]![0]!]!;

describe('pairs of carts and loads', () => {
  it('are all of them where a program holds as many', () => {
    const pairs = carts.length * loads.length;
    expect(pairs).toBeGreaterThan(5000);
    expect(promisingPairs(floor, carts, loads, budget(20 * pairs))).toBeUndefined();
    expect(promisingPairs(floor, carts, loads, budget(20 * (pairs - 1)))).toBeDefined();
    expect(promisingPairs(floor, carts, loads, budget(1e9, (pairs + 1) / 12_000))).toBeUndefined();
    const hurried = budget(1e9, (pairs - 1) / 12_000);
    expect(promisingPairs(floor, carts, loads, hurried)).toBeDefined();
    expect(hurried.stoppedBy).toBe('clock');
  });

  it.each([
    ['little work', 1, 1e6, 1000],
    ['more work', 80_000, 1e6, 4000],
    ['little time', 1e9, 0.01, 1200],
  ])('with %s are those of fewest moves and as many others all around, for every load', (_what, work, seconds, most) => {
    const limited = budget(work, seconds);
    const pairs = promisingPairs(floor, carts, loads, limited)!;
    expect(limited.stoppedBy).toBe(seconds < 1 ? 'clock' : undefined);
    const each = Math.max(4, Math.floor(most / loads.length / 2));
    loads.forEach((_, loadClass) => {
      const wanted = loadOf(loadClass);
      const chosen = carts.flatMap((__, cartClass) => (pairs.get(cartClass)?.includes(loadClass) ? [cartClass] : []));
      expect(chosen.length).toBeGreaterThanOrEqual(each);
      expect(chosen.length).toBeLessThanOrEqual(2 * each);
      expect(chosen.every((cartClass) => mayCarry(cartOf(cartClass), wanted))).toBe(true);
      // Of the carts that keep something no one left out needs fewer moves than one that is in, as far as those are looked for.
      const kept = (cartClass: number) => keptBoxes(floor, cartOf(cartClass).stack, wanted.kinds);
      const moves = (cartClass: number) => cartOf(cartClass).stack.length - 2 * kept(cartClass);
      const able = carts.flatMap((__, cartClass) => (kept(cartClass) > 0 ? [moves(cartClass)] : [])).sort((a, b) => a - b);
      const taken = chosen
        .filter((cartClass) => kept(cartClass) > 0)
        .map(moves)
        .sort((a, b) => a - b);
      expect(taken.slice(0, each)).toEqual(able.slice(0, each));
    });
    // None twice.
    for (const list of pairs.values()) expect(new Set(list).size).toBe(list.length);
    // The others are spread: no cart class is in far more pairs than its share.
    expect(Math.max(...[...pairs.values()].map((list) => list.length))).toBeLessThan(0.6 * loads.length);
  });
});

it('at the least come in the boxes that no cart can keep, load by load', () => {
  const least = floor.loads.reduce(
    (sum, load) =>
      sum +
      load.kinds.length -
      Math.max(...floor.carts.map((cart) => (mayCarry(cart, load) ? keptBoxes(floor, cart.stack, load.kinds) : 0))),
    0,
  );
  expect(leastComingIn(floor, carts, loads)).toBe(least);
});
