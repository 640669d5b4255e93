/**
 * What no plan can beat: why a case cannot be done at all, and else the fewest box moves that any plan needs, with the choice of carts that promises
 * as few. Idea and source: box-moves.decision.md.
 */
export { type BoundAnswer, type Choice, solveBound } from './bound-program.js';
export { findShortage } from './check-feasible.js';
