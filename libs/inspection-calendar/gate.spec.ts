import fc from 'fast-check';
import { type GatedItem, type Place, answersThatHold, findDueDate, intervalsIn, judge, unjudgedPlaces } from '#inspection-calendar';
import { addDays, eachDay } from '#kernel';

const from = '2027-03-01';
const days = { from, to: '2027-03-17' };
const rule = { jurisdiction: 'UK', kinds: ['hoist'], intervals: ['P12M'] };
const home: Place = { jurisdictions: ['UK'], rules: [rule] };
const base: GatedItem = {
  id: 'X-1',
  kind: 'hoist',
  state: 'in service',
  examinations: [{ on: '2026-10-01', outcome: 'pass' }],
  events: [],
};
const of = (item: Partial<GatedItem>, place: Place = home) => judge({ ...base, ...item }, days, place);

describe('the gate', () => {
  it('lets pass what is in service, in date and without events', () => {
    expect(of({})).toMatchObject({ barredFrom: null, reason: null, notJudgedIn: [] });
  });

  it.each([
    ['quarantined', { state: 'quarantined', reason: 'cracked' }, { code: 'state', state: 'quarantined', remark: 'cracked' }, from],
    ['retired', { state: 'retired' }, { code: 'state', state: 'retired', remark: null }, from],
    ['of a model that waits for the safety officer', { unaccepted: 'model' as const }, { code: 'not-accepted', of: 'model' }, from],
    ['failed', { examinations: [{ on: '2026-10-01', outcome: 'fail' as const }] }, { code: 'failed' }, from],
    ['shock-loaded since', { events: [{ on: '2026-10-02', what: 'dropped' }] }, { code: 'blocked' }, from],
    ['shock-loaded on the day of its examination', { events: [{ on: '2026-10-01', what: 'dropped' }] }, { code: 'blocked' }, from],
    ['never examined', { examinations: [] }, { code: 'no-record' }, from],
    [
      'run out on the way',
      { examinations: [{ on: '2026-03-05', outcome: 'pass' as const }] },
      { code: 'out-of-date', dueOn: '2027-03-05' },
      '2027-03-06',
    ],
    [
      'given back on the way',
      { hire: { from: '2027-01-01', to: '2027-03-10' } },
      { code: 'hired', from: '2027-01-01', until: '2027-03-10' },
      '2027-03-11',
    ],
    [
      'hired too late',
      { hire: { from: '2027-03-02', to: '2027-12-31' } },
      { code: 'hired', from: '2027-03-02', until: '2027-12-31' },
      from,
    ],
  ])('bars what is %s', (_state, item, reason, on) => {
    expect(of(item)).toMatchObject({ barredFrom: on, reason });
  });

  it('judges kinds without a rule by state, failures, events and defects alone, and says that no rule speaks', () => {
    const box = { kind: 'box', examinations: [] };
    expect(of(box)).toMatchObject({ reason: null, judgement: { state: 'no interval' } });
    expect(of({ ...box, events: [{ on: '2027-02-01', what: 'fell off the dock' }] }).reason).toEqual({ code: 'blocked' });
    expect(of({ ...box, examinations: [{ on: '2027-02-01', outcome: 'fail' }] }).reason).toEqual({ code: 'failed' });
    expect(of({ ...box, examinations: [{ on: '2027-02-01', outcome: 'pass', defectBy: '2027-03-05' }] })).toMatchObject({
      reason: { code: 'out-of-date', dueOn: '2027-03-05' },
      barredFrom: '2027-03-06',
    });
  });

  it('lets an examination answer what it names', () => {
    const examinations = [{ on: '2026-10-01', outcome: 'pass' as const, answers: ['2026-10-01'] }];
    expect(of({ events: [{ on: '2026-10-01', what: 'dropped' }], examinations }).reason).toBeNull();
  });

  it('names visited places without a rule on file', () => {
    expect(of({}, { ...home, jurisdictions: ['UK', 'FR'] }).notJudgedIn).toEqual(['FR']);
    expect(of({}, { jurisdictions: ['England'], rules: [rule] }).notJudgedIn).toEqual(['England']);
  });

  it('judges a part of a country by the rules of the country, and by its own, which hold there alone', () => {
    const rules = [
      { jurisdiction: 'US', kinds: ['hoist'], intervals: ['P1Y'] },
      { jurisdiction: 'US-CA', kinds: ['hoist'], intervals: ['P3M'] },
    ];
    const at = (jurisdiction: string) => ({ jurisdictions: [jurisdiction], rules });
    expect(intervalsIn(base, at('US-CA'))).toEqual(['P1Y', 'P3M']);
    expect(intervalsIn(base, at('US-NV'))).toEqual(['P1Y']);
    expect(intervalsIn(base, at('US'))).toEqual(['P1Y']);
    expect(of({}, at('US-NV')).notJudgedIn).toEqual([]);
    expect(of({}, { ...at('US'), rules: rules.slice(1) }).notJudgedIn).toEqual(['US']);
  });

  // Day by day against the dates of the examinations engine, which has its own published checks.
  it('agrees with a look at every single day', () => {
    const near = fc.integer({ min: -400, max: 40 }).map((by) => addDays(from, by));
    const records = fc.array(
      fc.record({
        on: near,
        outcome: fc.constantFrom('pass' as const, 'pass' as const, 'fail' as const),
        defectBy: fc.option(near, { nil: undefined }),
      }),
      { maxLength: 3 },
    );
    const item = fc.record({
      id: fc.constant('X-1'),
      kind: fc.constantFrom('box', 'hoist'),
      state: fc.constantFrom('in service', 'in service', 'in service', 'in repair', 'quarantined', 'retired'),
      examinations: records,
      events: fc.array(fc.record({ on: near, what: fc.constant('event') }), { maxLength: 2 }),
      hire: fc.option(
        fc.tuple(near, near).map(([a, b]) => (a < b ? { from: a, to: b } : { from: b, to: a })),
        { nil: undefined },
      ),
      declaredOn: fc.option(near, { nil: undefined }),
    });
    let barred = 0;
    fc.assert(
      fc.property(item, (each) => {
        const due = findDueDate({ ...each, intervals: [...intervalsIn(each, home)] }, from);
        const mayOn = (day: string): boolean =>
          each.state === 'in service' &&
          (each.hire === undefined || (each.hire.from <= day && day <= each.hire.to)) &&
          (due.dueOn === null ? due.state === 'no interval' : day <= due.dueOn);
        // An item that is hired from a later day on is not there when the window begins.
        const lateHire = each.hire !== undefined && each.hire.from > from;
        const first = lateHire ? from : (eachDay(days.from, days.to).find((day) => !mayOn(day)) ?? null);
        const { barredFrom, reason } = judge(each, days, home);
        expect(barredFrom).toBe(first);
        expect(reason === null).toBe(first === null);
        if (first !== null) barred++;
      }),
      { numRuns: 2000, seed: 11 },
    );
    expect(barred).toBeGreaterThan(100);
    expect(barred).toBeLessThan(1990);
  });
});

describe('rules taken for a place without rules', () => {
  const rule = (jurisdiction: string, ...intervals: string[]) => ({ jurisdiction, kinds: ['hoist'], intervals });
  const taken = [{ place: 'NO', rulesOf: 'GB' }];
  const hoist = { kind: 'hoist' };

  it('judge it by those of the other place, and it is no longer unjudged', () => {
    const place = { jurisdictions: ['NO'], rules: [rule('GB', 'P6M')], taken };
    expect(unjudgedPlaces({ ...place, taken: [] })).toEqual(['NO']);
    expect(unjudgedPlaces(place)).toEqual([]);
    expect(intervalsIn(hoist, place)).toEqual(['P6M']);
    expect(answersThatHold(place)).toEqual(taken);
  });

  it.each([
    ['the place has rules of its own', ['NO'], [rule('GB', 'P6M'), rule('NO', 'P12M')], [], ['P12M']],
    ['those rules are no longer on file', ['NO'], [rule('DE', 'P6M')], ['NO'], []],
    ['the tour goes elsewhere', ['DE'], [rule('GB', 'P6M'), rule('DE', 'P12M')], [], ['P12M']],
  ])('fall away where %s', (_, jurisdictions, rules, unjudged, intervals) => {
    const place = { jurisdictions, rules, taken };
    expect(answersThatHold(place)).toEqual([]);
    expect(unjudgedPlaces(place)).toEqual(unjudged);
    expect(intervalsIn(hoist, place)).toEqual(intervals);
  });
});
