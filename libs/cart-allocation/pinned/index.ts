/**
 * Shortest plans where the boxes that move cannot stand for one another (pinned serials).
 *
 * Idea: with the carts chosen, a box moves once, straight into its place, or twice, over the floor; so only the boxes set aside count. Whatever can go
 * into its place does so at once (`progress.ts`), and a step lifts boxes off one stack up to the next that can (`states.ts`); best-first over these
 * states (`best-first.ts`).
 * Bound: circles of boxes that wait for one another, no box in two of them (`circles.ts`).
 * Check: the plan by `check/verify-allocation.ts` as any other; the bound by trying everything on small floors (`search-pinned.spec.ts`).
 * Tried and left out: `pinned.decision.md`.
 */
export { type PinnedWork, pinnedWorkOf } from './pinned-work.js';
export { type PinnedAnswer, searchPinned } from './search-pinned.js';
export { settledChoice } from './settled-choice.js';
