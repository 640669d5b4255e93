import { seededFloor } from '../../../tests/support/seeded-floors.js';
import { cartKey, floorPlanOf, loadKey, mayCarry } from '../case/index.js';
import { nearestPairs } from './nearest-pairs.js';
import { classesOf } from './promising-pairs.js';

const floor = floorPlanOf(seededFloor(1, { carts: 60, loads: 30, pinned: 0.7 }));
const carts = classesOf(floor.carts.map((cart) => cartKey(floor, cart)));
const loads = classesOf(floor.loads.map(loadKey));
const names = carts.flatMap((_, cartClass) => loads.map((__, loadClass) => `x${cartClass}_${loadClass}`));
const has = (pairs: ReadonlyMap<number, readonly number[]>, name: string) => {
  const [cartClass, loadClass] = name.slice(1).split('_').map(Number);
  return pairs.get(cartClass!)?.includes(loadClass!) === true;
};

describe('pairs near a relaxation', () => {
  // Every seventh pair costs half a move, every eleventh is used at a cost that it would not be taken for, all others cost two moves.
  const reducedCosts = new Map(names.map((name, index) => [name, index % 7 === 0 ? 0.5 : 2]));
  const values = new Map(names.filter((_, index) => index % 11 === 0).map((name) => [name, 0.3]));
  const pairs = nearestPairs(floor, carts, loads, { values, reducedCosts });

  it('are those that it uses and those that cost less than a move', () => {
    expect(names.filter((name, index) => (index % 7 === 0 || index % 11 === 0) && !has(pairs, name))).toEqual([]);
  });

  it('and for every load some carts that may carry it, but not all the others', () => {
    const others = names.filter((name, index) => index % 7 !== 0 && index % 11 !== 0);
    const taken = others.filter((name) => has(pairs, name));
    expect(taken.length).toBeLessThanOrEqual(4 * loads.length);
    const bare = nearestPairs(floor, carts, loads, { values: new Map(), reducedCosts: new Map() });
    loads.forEach(([load], loadClass) => {
      const held = carts.flatMap(([cart], cartClass) => (bare.get(cartClass)?.includes(loadClass) ? [floor.carts[cart!]!] : []));
      expect(held).toHaveLength(4);
      expect(held.every((cart) => mayCarry(cart, floor.loads[load!]!))).toBe(true);
    });
  });
});
