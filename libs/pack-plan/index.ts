export * from './difference.js';
export { changedInputs, fingerprintOf } from './fingerprint.js';
export * from './make-pack-plan.js';
export * from './plan.js';
export type { SolveLimits } from './plan-carts.js';
export { allocationCase } from './allocation-case.js';
export { gatherInputs } from './plan-inputs.js';
export { hangCase } from './plan-picks.js';
export * from './check-cart.js';
