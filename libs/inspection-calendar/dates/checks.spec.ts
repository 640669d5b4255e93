import { type GatedItem, type PlaceRule, judge } from '#inspection-calendar';
import { english, tell } from '#words';
import { findDueDate } from './due-date.js';
import type { CaseExamination, ExaminedItem } from './examinations-case.js';

const passed = (on: string, more: Partial<CaseExamination> = {}): CaseExamination => ({ on, outcome: 'pass', ...more });
const item = (more: Partial<ExaminedItem>): ExaminedItem => ({
  ...{ id: 'H-01', intervals: ['P1Y', 'electrical P1Y'], examinations: [], events: [] },
  ...more,
});
const due = (examinations: CaseExamination[], more: Partial<ExaminedItem> = {}) =>
  findDueDate(item({ examinations, ...more }), '2027-03-01');
const electrical = { check: 'electrical' } as const;

describe('checks beside the examination are regimes of their own', () => {
  it('a record of one renews nothing of another, even where both are due every year', () => {
    expect(due([passed('2027-01-10')])).toMatchObject({ state: 'no record', because: { interval: 'electrical P1Y' } });
    expect(due([passed('2027-01-10', electrical)])).toMatchObject({ state: 'no record', because: { interval: 'P1Y' } });
    expect(due([passed('2027-01-10'), passed('2026-05-01', electrical)]).dueOn).toBe('2027-05-01');
    expect(due([passed('2026-05-01', electrical), passed('2026-04-01'), passed('2027-01-10')]).dueOn).toBe('2027-05-01');
  });

  it('a failed one keeps an item from use until that check is passed', () => {
    const failed: CaseExamination = { on: '2027-02-01', outcome: 'fail', ...electrical };
    expect(due([passed('2027-01-10'), failed, passed('2027-02-20')])).toMatchObject({ state: 'failed', because: { check: 'electrical' } });
    expect(due([passed('2027-01-10'), failed, passed('2027-02-20', electrical)]).dueOn).toBe('2028-01-10');
    expect(due([passed('2027-01-10'), { ...failed, check: 'pre-use' }], { intervals: ['P1Y'] })).toMatchObject({ state: 'failed' });
  });

  it('an event is answered by the examination alone, and a declaration stands in for nothing else', () => {
    const events = [{ on: '2027-02-01', what: 'shock load' }];
    const both = [passed('2027-01-10'), passed('2027-01-10', electrical)];
    expect(due([...both, passed('2027-02-20', electrical)], { events })).toMatchObject({ state: 'blocked' });
    expect(due([...both, passed('2027-02-20')], { events }).dueOn).toBe('2028-01-10');
    expect(due([], { declaredOn: '2027-01-01' })).toMatchObject({ state: 'no record', because: { interval: 'electrical P1Y' } });
  });

  it('are told by name', () => {
    const say = (examinations: CaseExamination[]) => tell(english.dueCauses, due(examinations).because);
    expect(say([passed('2027-01-10')])).toBe('no passed electrical check for the interval of 12 months is on file');
    expect(say([passed('2027-01-10'), passed('2026-05-01', electrical)])).toBe('electrical check of 2026-05-01, plus 12 months');
    expect(say([{ on: '2027-02-01', outcome: 'fail', ...electrical }])).toBe('it failed its electrical check of 2027-02-01');
  });

  it('the gate asks for both where rules of both are on file, also of an item with intervals of its own', () => {
    const rules: PlaceRule[] = [
      { jurisdiction: 'GB', kinds: ['hoist'], intervals: ['P12M'] },
      { jurisdiction: 'GB', kinds: ['hoist'], check: 'electrical', intervals: ['P6M'] },
    ];
    const hoist: GatedItem = {
      ...{ id: 'H-01', kind: 'hoist', state: 'in service', events: [] },
      examinations: [passed('2027-01-10'), passed('2027-01-10', electrical)],
    };
    const days = { from: '2027-03-01', to: '2027-08-01' };
    expect(judge(hoist, days, { jurisdictions: ['GB'], rules }).barredFrom).toBe('2027-07-11');
    expect(judge({ ...hoist, intervals: ['P2Y'] }, days, { jurisdictions: ['GB'], rules }).barredFrom).toBe('2027-07-11');
    // Electrical rules alone judge no lifting equipment: the place stays without rules.
    expect(judge(hoist, days, { jurisdictions: ['GB'], rules: rules.slice(1) }).notJudgedIn).toEqual(['GB']);
  });
});
