/** What changed from one plan to the next. */
export type { PlanDifference } from './difference.js';
export { differenceBetween } from './difference.js';
