export * from './distribution-tails.js';
export * from './loss-model.js';
export * from './solve-spares.js';
export * from './spares-case.js';
export * from './count-hardware.js';
export * from './verify-hardware.js';
