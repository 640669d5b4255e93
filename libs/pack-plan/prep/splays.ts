import type { CartLoad, PlannedBox } from '../contract/index.js';

const apartDeg = 1e-6;

/** Boxes whose splay is set in the cart, top first; what is set at the point or to the grid is none of the cart's. */
export const splaysToSet = ({ boxes }: Pick<CartLoad, 'boxes'>): readonly PlannedBox[] =>
  boxes.filter((each) => each.splaySet === 'in the cart');

/** Slots whose splay reads otherwise than planned, or was not read. `read`: degrees by slot. */
export function wrongSplays(load: Pick<CartLoad, 'boxes'>, read: ReadonlyMap<number, number>): readonly PlannedBox[] {
  return splaysToSet(load).filter(({ slot, splayDeg }) => {
    const found = read.get(slot);
    return found === undefined || Math.abs(found - splayDeg) > apartDeg;
  });
}
