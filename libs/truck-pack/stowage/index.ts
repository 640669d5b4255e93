/** Sea containers and air pallets of a fleet, loaded without rows by the search that fills one container. */
export * from './solve-stowage.js';
