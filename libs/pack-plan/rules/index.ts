/** Which rule of the regime compares which load with which rated value, and what steel is enough by it. */
export { compareJoint, compareLegs, comparePick, compareRated, compareSteel, metalFactors } from './compare-loads.js';
export { dynamicFactorOf, hoistUse, isWornOut, leastDimensionMm, personsBelowFactors, sideLoadFactor, unseenRules } from './regime.js';
export { enoughSteel } from './steel-choice.js';
