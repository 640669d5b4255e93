/** Which days serve everybody who needs one of some: the fewest, then with the fewest examinations, proven as far as the counted work goes. */
export { type CoverAnswer, findFewestDays } from './fewest-days.js';
export type { Demand } from './demand.js';
export { daysOf } from './demand.js';
