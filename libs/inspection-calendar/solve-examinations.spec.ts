import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { type ExaminationsCase, readExaminationsCase, solveExaminations, verifyExaminations } from '#inspection-calendar';
import { addDays } from '#kernel';

function read(input: unknown): ExaminationsCase {
  const result = readExaminationsCase(input);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const window = { from: '2027-03-01', to: '2027-04-20' };
const one = (item: object, visitDays: string[] = []) =>
  solveExaminations(read({ window, items: [{ id: 'X', intervals: ['P6M'], examinations: [], ...item }], visitDays }));

describe('examinations due', () => {
  it('answers the example of the case format', () => {
    const problem = read(JSON.parse(readFileSync('tests/cases/examinations/three-items.json', 'utf8')));
    const answer = solveExaminations(problem);
    expect(answer.items.map(({ id, dueOn, state }) => ({ id, dueOn, state }))).toEqual([
      { id: 'H01', dueOn: '2027-03-15', state: 'falls due' },
      { id: 'SH-03', dueOn: '2027-03-20', state: 'falls due' },
      { id: 'SL-11', dueOn: '2027-07-10', state: 'in date throughout' },
    ]);
    expect(answer.visits).toMatchObject({ count: 1, days: [{ on: '2027-03-12', items: ['H01', 'SH-03'] }], cannotBeSaved: [] });
    expect(verifyExaminations(problem, answer)).toEqual([]);
  });

  it.each([
    ['a pass restarts its interval', { examinations: [{ on: '2026-12-01', outcome: 'pass' }] }, '2027-06-01', 'in date throughout'],
    ['the last day is still usable', { examinations: [{ on: '2026-10-20', outcome: 'pass' }] }, '2027-04-20', 'in date throughout'],
    ['out before the first day is overdue', { examinations: [{ on: '2026-08-28', outcome: 'pass' }] }, '2027-02-28', 'overdue'],
    ['due on the first day falls due', { examinations: [{ on: '2026-09-01', outcome: 'pass' }] }, '2027-03-01', 'falls due'],
    [
      'the report may shorten',
      { examinations: [{ on: '2026-12-01', outcome: 'pass', nextLatestOn: '2027-03-31' }] },
      '2027-03-31',
      'falls due',
    ],
    [
      'the report may not lengthen',
      { examinations: [{ on: '2026-12-01', outcome: 'pass', nextLatestOn: '2028-03-31' }] },
      '2027-06-01',
      'in date throughout',
    ],
    [
      'but lengthens under a scheme',
      { examinations: [{ on: '2026-06-01', outcome: 'pass', nextLatestOn: '2027-12-01', underScheme: true }] },
      '2027-12-01',
      'in date throughout',
    ],
    ['a dated defect caps', { examinations: [{ on: '2026-12-01', outcome: 'pass', defectBy: '2027-03-05' }] }, '2027-03-05', 'falls due'],
    [
      'the defect of an earlier examination does not',
      {
        examinations: [
          { on: '2026-11-01', outcome: 'pass', defectBy: '2027-03-05' },
          { on: '2026-12-01', outcome: 'pass' },
        ],
      },
      '2027-06-01',
      'in date throughout',
    ],
    [
      'a yearly check does not restart the four-yearly',
      { intervals: ['P1Y', 'P4Y'], examinations: [{ on: '2027-01-01', outcome: 'pass', satisfies: ['P1Y'] }] },
      null,
      'no record',
    ],
    ['nothing at all', {}, null, 'no record'],
    ['a young declaration counts', { declaredOn: '2027-01-10' }, '2027-07-10', 'in date throughout'],
    ['a declaration of exactly twelve months counts', { intervals: ['P2Y'], declaredOn: '2026-03-01' }, '2028-03-01', 'in date throughout'],
    ['an older one does not', { intervals: ['P2Y'], declaredOn: '2026-02-28' }, null, 'no record'],
    [
      'a failed one stays failed',
      {
        examinations: [
          { on: '2026-12-01', outcome: 'pass' },
          { on: '2027-01-01', outcome: 'fail' },
        ],
      },
      null,
      'failed',
    ],
    [
      'of two on one day the later in the list counts',
      {
        examinations: [
          { on: '2027-01-01', outcome: 'fail' },
          { on: '2027-01-01', outcome: 'pass' },
        ],
      },
      '2027-07-01',
      'in date throughout',
    ],
    [
      'an event after the examination blocks',
      { examinations: [{ on: '2026-12-01', outcome: 'pass' }], events: [{ on: '2026-12-02', what: 'shock load' }] },
      null,
      'blocked',
    ],
    [
      'an event on the day of the examination does not',
      { examinations: [{ on: '2026-12-01', outcome: 'pass' }], events: [{ on: '2026-12-01', what: 'shock load' }] },
      '2027-06-01',
      'in date throughout',
    ],
    [
      'an event without an examination blocks',
      { declaredOn: '2027-01-10', events: [{ on: '2027-01-11', what: 'overload' }] },
      null,
      'blocked',
    ],
  ])('%s', (_what, item, dueOn, state) => {
    expect(one(item).items[0]).toMatchObject({ dueOn, state });
  });

  it.each([
    [
      'sees an item on the day it is due',
      { examinations: [{ on: '2026-10-01', outcome: 'pass' }] },
      ['2027-04-01'],
      { count: 1, days: [{ on: '2027-04-01', items: ['X'] }], cannotBeSaved: [] },
    ],
    [
      'but not a day later',
      { examinations: [{ on: '2026-10-01', outcome: 'pass' }] },
      ['2027-04-02'],
      { count: 0, days: [], cannotBeSaved: ['X'] },
    ],
    [
      'needs a visit before the window for what is overdue',
      { examinations: [{ on: '2026-01-01', outcome: 'pass' }] },
      ['2027-03-01'],
      { count: 0, days: [], cannotBeSaved: ['X'] },
    ],
    [
      'and takes it there',
      { examinations: [{ on: '2026-01-01', outcome: 'pass' }] },
      ['2027-02-01', '2027-02-28', '2027-03-01'],
      { count: 1, days: [{ on: '2027-02-28', items: ['X'] }], cannotBeSaved: [] },
    ],
    [
      'counts no visit on the day of the last event',
      { examinations: [{ on: '2027-01-01', outcome: 'pass' }], events: [{ on: '2027-02-10', what: 'drop' }] },
      ['2027-02-10'],
      { count: 0, days: [], cannotBeSaved: ['X'] },
    ],
    [
      'leaves a failed item out of both lists',
      { examinations: [{ on: '2027-01-01', outcome: 'fail' }] },
      ['2027-02-10'],
      { count: 0, days: [], cannotBeSaved: [] },
    ],
    [
      'goes twice where once does not reach',
      { intervals: ['P1M'], examinations: [{ on: '2027-02-20', outcome: 'pass' }] },
      ['2027-03-01', '2027-03-10', '2027-04-05', '2027-04-15'],
      {
        count: 2,
        days: [
          { on: '2027-03-10', items: ['X'] },
          { on: '2027-04-05', items: ['X'] },
        ],
        cannotBeSaved: [],
      },
    ],
  ])('%s', (_what, item, visitDays, visits) => {
    expect(one(item, visitDays).visits).toMatchObject(visits);
  });

  it('never needs more visit days than the best of all subsets, and never leaves out what could be saved', () => {
    const day = fc.integer({ min: 0, max: 60 }).map((offset) => addDays('2027-02-10', offset));
    const item = fc.record({
      intervals: fc.uniqueArray(fc.constantFrom('P14D', 'P1M', 'P6W', 'P2M'), { minLength: 1, maxLength: 2 }),
      examinations: fc.array(
        fc.record({
          on: fc.integer({ min: 0, max: 70 }).map((offset) => addDays('2027-01-01', offset)),
          outcome: fc.constantFrom('pass' as const, 'pass' as const, 'fail' as const),
        }),
        { maxLength: 2 },
      ),
      events: fc.array(fc.record({ on: day, what: fc.constant('drop') }), { maxLength: 1 }),
    });
    fc.assert(
      fc.property(fc.array(item, { minLength: 1, maxLength: 5 }), fc.uniqueArray(day, { maxLength: 6 }), (items, visitDays) => {
        const problem = read({
          window: { from: '2027-03-01', to: '2027-04-05' },
          items: items.map((each, index) => ({ ...each, id: `I${index}` })),
          visitDays,
        });
        const answer = solveExaminations(problem);
        expect(verifyExaminations(problem, answer)).toEqual([]);
        const withAll = subsets(visitDays).map((days) => ({ days, unsaved: unsavedWith(problem, days) }));
        const least = Math.min(...withAll.map((each) => each.unsaved));
        expect(answer.visits.cannotBeSaved).toHaveLength(least);
        expect(answer.visits.count).toBe(Math.min(...withAll.filter((each) => each.unsaved === least).map((each) => each.days.length)));
      }),
      { numRuns: 100 },
    );
  });
});

/** How many items no choice among these days can keep in date, by trying every chain of visits of each item. */
function unsavedWith(problem: ExaminationsCase, days: readonly string[]): number {
  return problem.items.filter((item) => {
    const alone = { ...problem, items: [item], visitDays: [...days] };
    const judged = solveExaminations({ ...alone, visitDays: [] }).items[0]!;
    if (judged.state === 'failed') return false;
    return !subsets(days).some(
      (visits) =>
        verifyExaminations(alone, {
          items: [judged],
          visits: {
            ...solveExaminations({ ...alone, visitDays: [] }).visits,
            count: visits.length,
            days: visits.map((on) => ({ on, items: ['', item.id].slice(1) })),
            cannotBeSaved: [],
          },
        }).filter((sentence) => !sentence.includes('need not be')).length === 0,
    );
  }).length;
}

function subsets<T>(values: readonly T[]): T[][] {
  return values.reduce<T[][]>((all, value) => [...all, ...all.map((each) => [...each, value])], [[]]);
}

describe('a malformed examinations case', () => {
  const item = { id: 'X', intervals: ['P6M'], examinations: [] };
  it.each([
    ['a reversed window', { window: { from: '2027-04-01', to: '2027-03-01' }, items: [] }, 'window.to'],
    ['a day that does not exist', { window: { from: '2027-02-29', to: '2027-03-01' }, items: [] }, 'window.from'],
    ['an interval that is none', { window, items: [{ ...item, intervals: ['6 months'] }] }, 'items[0].intervals[0]'],
    [
      'an outcome that is none',
      { window, items: [{ ...item, examinations: [{ on: '2027-01-01', outcome: 'good' }] }] },
      'items[0].examinations[0].outcome',
    ],
    ['one id twice', { window, items: [item, item] }, 'items[1].id'],
  ])('is refused: %s', (_what, input, field) => {
    const result = readExaminationsCase(input);
    expect(result.ok ? [] : result.error.map((fault) => fault.field)).toContain(field);
  });
});
