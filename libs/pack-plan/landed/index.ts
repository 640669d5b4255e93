/** Plans as earlier versions stored them, read in the shape of new ones: a released revision prints years later. */
export { printedPlan } from './printed-plan.js';
export { landedKeyOf, wholeFingerprint } from './whole-fingerprint.js';
export { wholeHardware } from './whole-hardware.js';
export { wholeCarts, wholeTruck } from './whole-freight.js';
export type { KeptPlan } from './whole-plan.js';
export { wholeDue, wholeHang, wholePicks, wholePlan } from './whole-plan.js';
