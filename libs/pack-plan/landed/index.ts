/** Plans as earlier versions stored them, read in the shape of new ones: a released revision prints years later. */
export { wholeHardware } from './whole-hardware.js';
export { wholePlan } from './whole-plan.js';
