import type { CartLoad, PlannedBox } from '../contract/index.js';

/** What loads and steps need to know of a cart load; which cart and boxes serve it may still be open. */
export type LoadOnCart = Pick<CartLoad, 'id' | 'name' | 'hang' | 'cart' | 'cartModel'> & {
  readonly boxes: readonly Pick<PlannedBox, 'position' | 'serial' | 'splayDeg' | 'splaySet' | 'splaySetAtPosition'>[];
};
