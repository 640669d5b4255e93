/** Judges any answer from its placements alone. Knows the case and nothing of how loads are found. */
export * from './on-duty.js';
export * from './verify-truck-pack.js';
