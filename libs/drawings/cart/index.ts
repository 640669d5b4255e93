/** A cart as it stands, and its code. */
export { drawCart, drawStacks } from './draw-cart.js';
export { drawMove } from './draw-move.js';
export { drawCode } from './draw-code.js';
