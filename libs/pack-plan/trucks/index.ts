/** Result 4: freight, rows, axles and what the dock wants otherwise. */
export { emptyTruckFindings } from './empty-trucks.js';
export { planTruck } from './plan-truck.js';
export type { RowSwap } from './row-swap.js';
export { swapOf } from './row-swap.js';
export { truckFindings } from './truck-findings.js';
