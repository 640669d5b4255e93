/** A second opinion on a whole plan: everything that can be counted again from the tour file alone, without the rooms that made it. */
export { checkPlan } from './check-plan.js';
