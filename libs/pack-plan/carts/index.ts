/** Result 1: cart loads, the boxes and carts found for them, and the fewest box moves. */
export type { WantedLoad } from './allocation-case.js';
export { allocationCase, cartModel, wantedLoads } from './allocation-case.js';
export { describeMoves } from './box-moves.js';
export { cartFindings } from './cart-findings.js';
export { planCarts } from './plan-carts.js';
export type { Place } from './why-here.js';
export { whyHere } from './why-here.js';
export { preferencesOf } from './wishes.js';
