/** What the floor does with a plan: what is left of the moves, what happens between two shows, whether a cart is right. */
export type { BarredItem } from './barred.js';
export { barredItems } from './barred.js';
export type { BetweenShows } from './between-shows.js';
export { betweenShows } from './between-shows.js';
export { checkCart } from './check-cart.js';
export type { BoxFacts, Floor, WorkList } from './work-list.js';
export { workListOf } from './work-list.js';
