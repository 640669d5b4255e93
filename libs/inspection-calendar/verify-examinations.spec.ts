import { type ExaminationsAnswer, readExaminationsCase, solveExaminations, verifyExaminations } from '#inspection-calendar';

const passed = (on: string) => [{ on, outcome: 'pass' }];
const read = readExaminationsCase({
  window: { from: '2027-03-01', to: '2027-04-20' },
  items: [
    { id: 'DUE', intervals: ['P6M'], examinations: passed('2026-09-15') },
    { id: 'TWICE', intervals: ['P1M'], examinations: passed('2027-02-20') },
    { id: 'FINE', intervals: ['P6M'], examinations: passed('2027-01-10') },
    { id: 'FAILED', intervals: ['P6M'], examinations: [{ on: '2027-01-10', outcome: 'fail' }] },
    { id: 'FREE', intervals: [], examinations: [] },
    { id: 'LATE', intervals: ['P6M'], examinations: passed('2026-08-28') },
    { id: 'AWAY', intervals: ['P6M'], examinations: passed('2026-09-15'), seenOn: ['2027-03-10'] },
    { id: 'DROPPED', intervals: ['P6M'], examinations: passed('2027-01-10'), events: [{ on: '2027-02-23', what: 'drop' }] },
  ],
  visitDays: ['2027-02-25', '2027-03-10', '2027-03-12', '2027-04-05'],
});
if (!read.ok) throw new Error(JSON.stringify(read.error));
const problem = read.value;
const good = solveExaminations(problem);

const without = (id: string) => (answer: ExaminationsAnswer) => ({
  ...answer,
  visits: { ...answer.visits, days: answer.visits.days.map((day) => ({ ...day, items: day.items.filter((each) => each !== id) })) },
});
const also = (id: string, on: string) => (answer: ExaminationsAnswer) => ({
  ...answer,
  visits: {
    ...answer.visits,
    days: answer.visits.days.map((day) => (day.on === on ? { ...day, items: [...day.items, id] } : day)),
  },
});
const visits = (change: (of: ExaminationsAnswer['visits']) => object) => (answer: ExaminationsAnswer) => ({
  ...answer,
  visits: { ...answer.visits, ...change(answer.visits) },
});

describe('the checker of examinations', () => {
  it('has nothing to say of an answer by hand', () => {
    // LATE and DROPPED before the first day; AWAY on the only day it can; DUE with it; TWICE then and within a month again.
    expect(good.visits.days).toEqual([
      { on: '2027-02-25', items: ['LATE', 'DROPPED'] },
      { on: '2027-03-10', items: ['DUE', 'TWICE', 'AWAY'] },
      { on: '2027-04-05', items: ['TWICE'] },
    ]);
    expect(verifyExaminations(problem, good)).toEqual([]);
  });

  it.each<[string, (answer: ExaminationsAnswer) => ExaminationsAnswer, string]>([
    ['a count that is not that of the days', visits(({ count }) => ({ count: count + 1 })), 'count is not the number of days'],
    [
      'a day that is none of the examiner',
      visits(({ days }) => ({ days: days.map((day) => (day.on === '2027-04-05' ? { ...day, on: '2027-04-06' } : day)) })),
      '2027-04-06 is no visit day',
    ],
    [
      'a day on which nobody is examined',
      visits(({ days, count }) => ({ count: count + 1, days: [...days, { on: '2027-03-12', items: [] }] })),
      'nobody is examined on 2027-03-12',
    ],
    ['an item that falls due and is not seen', without('DUE'), 'DUE is out of date on 2027-03-16'],
    ['an item that was out of date before', without('LATE'), 'LATE is out of date on 2027-03-01'],
    ['an item that is blocked', without('DROPPED'), 'DROPPED is out of date on 2027-03-01'],
    ['a second visit that is left out', visits(({ days }) => ({ count: 2, days: days.slice(0, 2) })), 'TWICE is out of date on 2027-04-11'],
    ['an item that need not be seen', also('FINE', '2027-03-10'), 'FINE is examined but need not be'],
    ['a failed item', also('FAILED', '2027-03-10'), 'FAILED is examined but failed'],
    ['an item that no rule asks for', also('FREE', '2027-03-10'), 'FREE is examined but no rule asks for it'],
    ['an item that is elsewhere that day', also('AWAY', '2027-02-25'), 'AWAY is not where the examiner is on the day of a visit'],
    ['an item that cannot be saved', visits(() => ({ cannotBeSaved: ['DUE'] })), 'DUE is examined but cannot be saved'],
  ])('names %s', (_what, change, sentence) => {
    expect(verifyExaminations(problem, change(good))).toContain(sentence);
  });

  it('names a visit on the day of the last examination or event, or before it', () => {
    const on = '2027-02-25';
    for (const [day, stale] of [
      ['2027-02-24', false],
      ['2027-02-25', true],
      ['2027-02-26', true],
    ] as const) {
      const items = problem.items.map((item) => (item.id === 'DROPPED' ? { ...item, events: [{ on: day, what: 'drop' }] } : item));
      const wrong = verifyExaminations({ ...problem, items: items }, good);
      expect(wrong.includes('DROPPED is examined on or before its last examination or event')).toBe(stale);
      expect(good.visits.days[0]!.on).toBe(on);
    }
  });

  it('is content with an item that cannot be saved and is not seen', () => {
    const gone = visits(() => ({ cannotBeSaved: ['DUE'] }))(without('DUE')(good));
    expect(verifyExaminations(problem, gone)).toEqual([]);
  });
});
