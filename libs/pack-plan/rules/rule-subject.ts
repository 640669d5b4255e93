import type { LoadRule } from '#tour-file';
import type { RuleSubject } from '#trade';

/** A field of a regime with the place where its value stands: that of the field where it has one of its own. `field` null: the whole regime. */
export function ruleSubject(rule: LoadRule, field: string | null): RuleSubject {
  const part = field === null ? undefined : rule[field.split(/[.[]/)[0] as keyof LoadRule];
  const { source, status } = typeof part === 'object' ? part : rule;
  return {
    kind: 'rule',
    id: rule.id,
    title: rule.title,
    jurisdiction: rule.jurisdiction,
    edition: rule.edition ?? null,
    field,
    source,
    status,
  };
}

/** What in the regime was written down from memory. */
export function unseenRules(rule: LoadRule): readonly RuleSubject[] {
  const fields = [
    'hoisting',
    'workingCoefficients',
    'sideLoad',
    'legAngle',
    'hoistClasses',
    'useCases',
    'secondarySuspension',
    'reserve',
    'onePickSlack',
    'reading',
    'wear',
  ] as const;
  return [ruleSubject(rule, null), ...fields.filter((field) => rule[field] !== undefined).map((field) => ruleSubject(rule, field))].filter(
    (each) => each.status === 'from memory',
  );
}
