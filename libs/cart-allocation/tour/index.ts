/** A whole tour: prep and every load-in planned together, so that the box moves of all, weighed by where they are made, are fewest. */
export * from './plan-tour.js';
export type { TourMoves, TourShow } from './tour-case.js';
export { verifyTour } from './verify-tour.js';
