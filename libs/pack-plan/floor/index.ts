/** What the floor does with a plan: what is left of the moves, what happens between two shows, whether a cart is right. */
export type { BarredItem } from './barred.js';
export { barredItems } from './barred.js';
export type { BetweenShows } from './between-shows.js';
export { betweenShows } from './between-shows.js';
export { checkCart } from './check-cart.js';
export type { FloorRecord, MoveMade } from './move-back.js';
export { againstMoveBack, isSame } from './move-back.js';
export type { MoveAction, MovesInHand } from './moves-in-hand.js';
export { afterMove, movesInHand } from './moves-in-hand.js';
export { bounceMs, tapGate } from './second-tap.js';
export type { FloorJob, FloorState, WhatNow } from './what-now.js';
export { whatNow } from './what-now.js';
export type { BoxFacts, Floor, WorkList } from './work-list.js';
export { workListOf } from './work-list.js';
