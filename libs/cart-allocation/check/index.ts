/** Carries an answer out on the case as it is written, sharing no code with the searches: what it finds wrong is wrong. */
export { type AllocationMismatch, verifyAllocation } from './verify-allocation.js';
