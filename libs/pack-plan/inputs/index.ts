/** What a plan is made from, looked up once: the show with its models and rules, who may fly on which day, and a hash of each part. */
export { applicableIntervals, placeOf } from './applicable-intervals.js';
export { whyNotUsable } from './availability.js';
export type { Fingerprint } from './fingerprint.js';
export {
  changedInputs,
  changesBetween,
  fingerprintOf,
  fingerprintOfIds,
  fingerprintOfItems,
  fingerprintWithoutItems,
  floorFits,
  withFloor,
  itemsPart,
  loadingPart,
  partsOfItem,
} from './fingerprint.js';
export type { FleetInput } from './fleet-calendar.js';
export { designOf, firstDayFor, fleetCalendar } from './fleet-calendar.js';
export { framesOf } from './frames-of.js';
export type { PlanInputs } from './plan-inputs.js';
export { gatherInputs, modelOf, usableItems } from './plan-inputs.js';
export { remediesFor } from './remedies.js';
export { shortDays } from './short-days.js';
