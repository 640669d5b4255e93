/** Result 2: masses, loads, joints and stages of every hang, each compared with its rated value; the lift sequence; grids and hoists found for it. */
export type { ChosenItem } from './chosen-items.js';
export { chooseItems, isOurs, plannedSerials } from './chosen-items.js';
export { comparedFindings, pickOf } from './compared-findings.js';
export { judgeReading } from './load-reading.js';
export { pickFindings } from './pick-findings.js';
export { planPicks } from './plan-picks.js';
export { againstTick, againstTickDown, stepsDown } from './running-order.js';
