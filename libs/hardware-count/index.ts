export * from './distribution-tails.js';
export * from './loss-model.js';
export * from './solve-spares.js';
export * from './spares-case.js';
