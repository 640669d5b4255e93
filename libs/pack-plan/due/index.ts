/** Result 5: what lifts, its last day of use, and the fewest visits of the examiner. */
export { dueFindings } from './due-findings.js';
export { planDue } from './plan-due.js';
