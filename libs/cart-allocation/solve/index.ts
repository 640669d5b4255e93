/** The story of the search, from the case to a plan that passed its check. */
export * from './solve-allocation.js';
