/** Which rule of the regime compares which load with which rated value, and what steel is enough by it. */
export { compareJoint, compareAlone, compareLegs, comparePick, compareSteel, metalFactors } from './compare-loads.js';
export { compareRated, comparisonFact, toldAt, toldComparison } from './comparison.js';
export { ratedKg } from './rated-load.js';
export {
  dynamicFactorOf,
  isWornOut,
  leastDimensionMm,
  onePickSlackFactor,
  personsBelowFactors,
  sideLoadFactor,
} from './regime.js';
export { hoistUse } from './hoist-use.js';
export { useCaseOf } from './use-case.js';
export { belowPublished } from './below-published.js';
export { ruleSubject, unseenRules } from './rule-subject.js';
export { enoughSteel } from './steel-choice.js';
