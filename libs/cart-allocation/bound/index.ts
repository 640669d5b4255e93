/**
 * What no plan can beat: why a case cannot be done at all, and else the fewest box moves that any plan needs, with the choice of carts that promises
 * as few. Idea and source: box-moves.decision.md.
 */
export { type BoundAnswer, BoundProgram } from './bound-program.js';
export { findShortage } from './check-feasible.js';
export type { Choice } from './choice.js';
