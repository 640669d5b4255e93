/**
 * Two pairs of eyes: what on file is guarded, whether a change of it is cautious (holds at once, from anybody) or permissive (waits for the safety
 * officer), and what is in force meanwhile.
 */
export { type Change, type FieldChange, type Thing, changesOf, decideChange } from './decide-change.js';
export { type Direction, directionOfIntervals } from './direction.js';
export { declarationGuard, guardedModels, guardOf, itemGuard, loadRuleGuard } from './guards.js';
export { type ItemsOnFile, type NewItem, decideNewItem, isNewRuleCautious } from './new-things.js';
export { shownValue } from './shown-value.js';
