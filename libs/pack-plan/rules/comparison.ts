import type { LoadRule, RatedLoad } from '#tour-file';
import { type ComparedPart, type ComparisonCause, type ComparisonFact, type FactorFact, verdictOfCause } from '#trade';
import { tell } from '#words';
import type { Comparison, Factor } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { ratedKg } from './rated-load.js';
import { ruleSubject } from './rule-subject.js';

type Told = Pick<PlanInputs, 'words' | 'loadRule'>;

/** A comparison in words. Where the rule speaks without a factor, no load and no limit are stated. */
export function toldComparison({ words }: Told, fact: ComparisonFact, factors: readonly Factor[]): Comparison {
  const what = tell(words.parts, fact.part);
  const verdict = verdictOfCause[fact.code];
  const sentence = tell(words.comparisons, fact);
  const { code, part, value, unit, limit, rated, worstAt, use, rule } = fact;
  if (isFigured(code))
    return { what, value, unit, limit, rated, factors, verdict, sentence, fact: { code, part, ...(worstAt ? { worstAt } : {}) } };
  const ruled = { field: rule?.field ?? null, value, limit };
  const kept = { code, part, ruled, ...(use ? { use } : {}) };
  return { what, value: 0, unit: '', limit: null, verdict, sentence, rated: null, factors, fact: kept };
}

/** The same comparison with the moment at which its load stands. */
export function toldAt(inputs: Told, comparison: Comparison, worstAt: NonNullable<ComparisonFact['worstAt']>): Comparison {
  const fact = comparisonFact(inputs.loadRule, comparison);
  return fact && isFigured(fact.code) ? toldComparison(inputs, { ...fact, worstAt }, comparison.factors) : comparison;
}

const isFigured = (code: ComparisonCause): boolean =>
  code === 'within' || code === 'over' || code === 'would-be-pushed' || code === 'no-rated-value';

/** The comparison whole: with its figures, and the fields of the load rule that had a say. */
export function comparisonFact(loadRule: LoadRule, { fact, value, unit, limit, rated, factors }: Comparison): ComparisonFact | null {
  if (fact === null) return null;
  const { ruled, ...rest } = fact;
  const rule = ruled ? ruleSubject(loadRule, ruled.field) : null;
  const figures = ruled ? { value: ruled.value, unit: 'deg', limit: ruled.limit, rated: null } : { value, unit, limit, rated };
  return { ...rest, ...figures, factors: factorFacts(loadRule, factors), rule };
}

export const factorFacts = (loadRule: LoadRule, factors: readonly Factor[]): readonly FactorFact[] =>
  factors.flatMap(({ fact, factor }) => (fact ? [{ cause: fact.cause, factor, rule: ruleSubject(loadRule, fact.field) }] : []));

/** A load in kilograms against a rated load in its own unit. */
export function compareRated(
  inputs: Told,
  part: ComparedPart,
  valueKg: number,
  rated: RatedLoad | null,
  factors: readonly Factor[],
): Comparison {
  const limit = rated === null ? null : reduced(ratedKg(rated), factors);
  return compareFigures(inputs, part, valueKg, limit, 'kg', rated === null ? null : { value: rated.value, unit: rated.unit }, factors);
}

/** Newtons against a rated force. */
export function compareForce(
  inputs: Told,
  part: ComparedPart,
  value: number,
  rated: number | undefined,
  factors: readonly Factor[],
): Comparison {
  if (rated === undefined) return compareFigures(inputs, part, value, null, 'N', null, []);
  return compareFigures(inputs, part, value, reduced(rated, factors), 'N', { value: rated, unit: 'N' }, factors);
}

const reduced = (rated: number, factors: readonly Factor[]): number => factors.reduce((left, each) => left * each.factor, rated);

function compareFigures(
  inputs: Told,
  part: ComparedPart,
  value: number,
  limit: number | null,
  unit: string,
  rated: Comparison['rated'],
  factors: readonly Factor[],
): Comparison {
  const code = limit === null ? 'no-rated-value' : value < 0 ? 'would-be-pushed' : value <= limit ? 'within' : 'over';
  const facts = factorFacts(inputs.loadRule, factors);
  return toldComparison(inputs, { code, part, value, unit, limit, rated, factors: facts, rule: null }, factors);
}
