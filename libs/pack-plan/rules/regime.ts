import type { LoadRule, Show } from '#tour-file';
import type { FactorCause } from '#trade';
import { type Words, english, tell } from '#words';
import type { Factor } from '../contract/index.js';
import { ruleSubject } from './rule-subject.js';

type Element = NonNullable<LoadRule['workingCoefficients']>['elements'][number]['element'];

/** Factor on point loads: of the class of hoisting at its speed where the regime names one, else the regime's own. */
export const dynamicFactorOf = (rule: LoadRule): number =>
  rule.hoisting ? rule.hoisting.least + rule.hoisting.perSpeedSPerM * rule.hoisting.speedMps : rule.dynamicFactor;

/** A factor in words, with the field of the regime that it comes from. */
export function toldFactor(words: Words, cause: FactorCause, factor: number, rule: LoadRule, field: string): Factor {
  const { source, status } = ruleSubject(rule, field);
  return { what: tell(words.factors, cause), factor, source, status, fact: { cause, field } };
}

/** What of the rated load of an element may be used: all of it while nobody is below, else by its coefficients or by the general share. */
export function personsBelowFactors(
  rule: LoadRule,
  show: Pick<Show, 'personsBelow'>,
  element: Element,
  words: Words = english,
): readonly Factor[] {
  if (!show.personsBelow) return [];
  const found = rule.workingCoefficients?.elements.find((each) => each.element === element);
  if (!found) return [generalShare(rule, words)];
  const { personsBelow, nobodyBelow } = found;
  const field = `workingCoefficients.elements[${element}]`;
  return [toldFactor(words, { code: 'coefficient', personsBelow, nobodyBelow }, nobodyBelow / personsBelow, rule, field)];
}

/** The share of everything that nothing closer is given for. */
export const generalShare = (rule: LoadRule, words: Words): Factor =>
  toldFactor(words, { code: 'persons-below' }, rule.usableShareWithPersonsBelow, rule, 'usableShareWithPersonsBelow');

/** A shackle pulled aside by `angleDeg` from its line: factor 0 where that is not permitted, undefined where the regime has no rule. */
export function sideLoadFactor(rule: LoadRule, angleDeg: number, words: Words = english): Factor | undefined {
  if (!rule.sideLoad) return undefined;
  const band = [...rule.sideLoad.bands].sort((a, b) => a.upToDeg - b.upToDeg).find((each) => angleDeg <= each.upToDeg + 1e-9);
  return toldFactor(words, { code: 'side-load', angleDeg }, band?.share ?? 0, rule, 'sideLoad.bands');
}

/** What a line may carry while the other of two picks is slack; null where the regime asks for nothing. */
export const onePickSlackFactor = (rule: LoadRule, words: Words = english): Factor | null =>
  rule.onePickSlack ? toldFactor(words, { code: 'one-pick-slack' }, rule.onePickSlack.usableShare, rule, 'onePickSlack.usableShare') : null;

/** A worn dimension against the regime's limit: out of use when `lossShare` of the original or more is gone. */
export const isWornOut = (originalMm: number, measuredMm: number, lossShare: number): boolean =>
  measuredMm <= leastDimensionMm(originalMm, lossShare) + 1e-9;

export const leastDimensionMm = (originalMm: number, lossShare: number): number => originalMm * (1 - lossShare);
