/** The inside of one truck while it is loaded: where a piece can stand, in which order it can go in, whether the load may drive like that. */
export * from './check-load.js';
export * from './load-space.js';
export * from './loading-order.js';
export * from './truck-answer.js';
