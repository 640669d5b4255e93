import { examinationRule } from '#tour-file';
import { ruleFrom, ruleText, typedRule } from './rule-text.js';
import { starterSets } from './starter-sets.js';

describe('a rule in the form', () => {
  it.each(starterSets.flatMap((set) => set.rules.map((rule) => [rule.source, rule] as const)))(
    'comes out as it went in: %s',
    (_source, rule) => {
      const typed = typedRule.parse(ruleText(rule));
      expect(examinationRule.parse(ruleFrom(typed, rule))).toEqual(rule);
    },
  );

  it('of another check and basis is one, with who may examine and how long it is kept', () => {
    const typed = typedRule.parse({
      ...ruleText(starterSets[0]!.rules[0]!),
      ...{ jurisdiction: 'US', part: 'CA', kinds: 'hoist', check: 'electrical', basis: 'hours', intervals: '', every: '500' },
      ...{ mayExamine: 'electrician; engineer', keptFor: 'P5Y', keptUntil: 'use', keptBy: 'house rule 4' },
    });
    expect(examinationRule.parse(ruleFrom(typed, null))).toMatchObject({
      ...{ jurisdiction: 'US-CA', kinds: ['hoist'], check: 'electrical', basis: 'hours', every: 500, intervals: [] },
      ...{ mayExamine: ['electrician', 'engineer'], retention: { atLeast: 'P5Y', whileInUse: true, source: 'house rule 4' } },
    });
  });
});
