import { examinationRule } from '#tour-file';
import { starterSets } from './starter-sets.js';

const rules = starterSets.flatMap((set) => set.rules);
const of = (jurisdiction: string, kind: string) =>
  rules.filter(
    (each) => each.jurisdiction === jurisdiction && each.kinds.includes(kind as 'hoist') && each.intervals.length > 0 && !each.check,
  );

describe('sets of examination rules to begin with', () => {
  it('are rules as the register keeps them, each with its source, none from memory', () => {
    for (const rule of rules) {
      expect(examinationRule.parse(rule)).toEqual(rule);
      expect(rule.source).not.toBe('');
      expect(rule.status).not.toBe('from memory');
    }
  });

  it('say of a rule that is a reading, or known from a copy by others, that the company has to make it its own', () => {
    for (const rule of rules.filter((each) => /read as|copy by others/.test(each.source))) expect(rule.status).toBe('house rule');
  });

  // Lifting Operations and Lifting Equipment Regulations 1998, reg. 9(3)(a)(i) and (ii).
  it('hold accessories to 6 months and hoists to 12 in the United Kingdom', () => {
    expect(of('GB', 'shackle').map((each) => each.intervals)).toEqual([['P6M']]);
    expect(of('GB', 'sling').map((each) => each.intervals)).toEqual([['P6M']]);
    expect(of('GB', 'hoist').map((each) => each.intervals)).toEqual([['P12M']]);
  });

  // DGUV Vorschrift 17 § 34 (1)(2): by an expert every four years, and yearly; each counts from its own last examination.
  it('hold hoists to one year and to four in Germany', () => {
    expect(of('DE', 'hoist').map((each) => each.intervals)).toEqual([['P1Y', 'P4Y']]);
  });
});
