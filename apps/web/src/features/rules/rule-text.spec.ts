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

  it('names the fields that a record must hold, and takes a field out again', () => {
    const rule = starterSets[0]!.rules[0]!;
    const typed = typedRule.parse({ ...ruleText(rule), list: '', fields: 'Remarks; report number' });
    expect(examinationRule.parse(ruleFrom(typed, null)).record).toEqual({
      fields: ['remarks', 'report'],
      source: rule.source,
      status: rule.status,
    });
    const kept = examinationRule.parse(ruleFrom(typed, null));
    expect(ruleText(kept)).toMatchObject({ list: 'own', fields: 'Remarks; Report number' });
    const less = typedRule.parse({ ...ruleText(kept), fields: 'Remarks' });
    expect(examinationRule.parse(ruleFrom(less, kept)).record?.fields).toEqual(['remarks']);
    expect(examinationRule.parse(ruleFrom(typedRule.parse({ ...ruleText(kept), fields: '' }), kept)).record).toBeUndefined();
    const wrong = typedRule.safeParse({ ...ruleText(rule), fields: 'Colour' });
    expect(wrong.error?.issues[0]).toMatchObject({ path: ['fields'], message: expect.stringContaining('Report number') });
  });

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
