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
      'an event on the day of the examination blocks: which came first is not known',
      { examinations: [{ on: '2026-12-01', outcome: 'pass' }], events: [{ on: '2026-12-01', what: 'shock load' }] },
      null,
      'blocked',
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
        const saving = savingSets(problem);
        const withAll = subsets(visitDays).map((days) => ({
          days,
          unsaved: saving.filter((sets) => sets && !sets.some((visits) => visits.every((on) => days.includes(on)))).length,
        }));
        const least = Math.min(...withAll.map((each) => each.unsaved));
        expect(answer.visits.cannotBeSaved).toHaveLength(least);
        // So few items and days are searched to the end: the count is proven.
        expect(answer.visits.examinationsAtLeast).toBe(answer.visits.examinations);
        expect(answer.visits.examinations).toBe(answer.visits.days.reduce((sum, each) => sum + each.items.length, 0));
        expect(answer.visits.count).toBe(Math.min(...withAll.filter((each) => each.unsaved === least).map((each) => each.days.length)));
      }),
      { numRuns: 100 },
    );
  });
});

/** For each item, the sets of days that keep it in date by themselves; `null` where nothing has to. */
function savingSets(problem: ExaminationsCase): (string[][] | null)[] {
  return problem.items.map((item) => {
    const alone = { ...problem, items: [item] };
    const bare = solveExaminations({ ...alone, visitDays: [] });
    if (bare.items[0]!.state === 'failed') return null;
    return subsets(problem.visitDays).filter(
      (visits) =>
        verifyExaminations(alone, {
          items: bare.items,
          visits: { ...bare.visits, count: visits.length, days: visits.map((on) => ({ on, items: [item.id] })), cannotBeSaved: [] },
        }).filter((sentence) => !sentence.includes('need not be')).length === 0,
    );
  });
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

describe('what happened on the day of an examination', () => {
  const span = { from: '2027-03-01', to: '2027-04-20' };
  const judged = (item: object) => {
    const result = readExaminationsCase({ window: span, items: [{ id: 'X', intervals: ['P6M'], ...item }], visitDays: ['2027-02-22'] });
    if (!result.ok) throw new Error(JSON.stringify(result.error));
    return solveExaminations(result.value);
  };
  const passed = { on: '2027-01-10', outcome: 'pass' };
  const drop = { on: '2027-01-10', what: 'drop' };

  it.each([
    ['blocks', { examinations: [passed], events: [drop] }, 'blocked'],
    [
      'no longer blocks where the examination answers it',
      { examinations: [{ ...passed, answers: ['2027-01-10'] }], events: [drop] },
      'in date throughout',
    ],
    ['blocks where the examination answers another', { examinations: [{ ...passed, answers: ['2027-01-09'] }], events: [drop] }, 'blocked'],
    [
      'does not block where it was the day before',
      { examinations: [passed], events: [{ ...drop, on: '2027-01-09' }] },
      'in date throughout',
    ],
    [
      'blocks where only an earlier examination answers it',
      {
        examinations: [
          { ...passed, answers: ['2027-02-01'] },
          { ...passed, on: '2027-01-20' },
        ],
        events: [{ ...drop, on: '2027-02-01' }],
      },
      'blocked',
    ],
  ])('%s', (_what, item, state) => {
    expect(judged(item).items[0]!.state).toBe(state);
  });

  it.each([
    ['nothing on file: no state of its own, no visit', {}, 'no interval', null, 0],
    ['a failure bars it', { examinations: [{ on: '2027-01-10', outcome: 'fail' }] }, 'failed', null, 0],
    ['an event bars it until one visit', { events: [drop] }, 'blocked', null, 1],
    ['a defect sets its last day', { examinations: [{ ...passed, defectBy: '2027-03-20' }] }, 'falls due', '2027-03-20', 1],
    ['a defect after the window', { examinations: [{ ...passed, defectBy: '2027-05-20' }] }, 'in date throughout', '2027-05-20', 0],
  ])('without an interval, %s', (_what, item, state, dueOn, visits) => {
    const answer = judged({ intervals: [], ...item });
    expect(answer.items[0]).toMatchObject({ state, dueOn });
    expect(answer.visits.count).toBe(visits);
    expect(answer.visits.cannotBeSaved).toEqual([]);
  });
});

describe('items that are not on every day where the examiner is', () => {
  const day = (offset: number) => addDays('2027-02-20', offset);
  const days = Array.from({ length: 7 }, (_, index) => day(index * 4));
  const items = fc.array(
    fc.record({
      intervals: fc.constantFrom(['P14D'], ['P1M'], ['P6M'], []),
      examinations: fc.array(
        fc.integer({ min: 0, max: 60 }).map((offset) => ({ on: addDays('2026-12-20', offset), outcome: 'pass' as const })),
        { maxLength: 1 },
      ),
      events: fc.array(
        fc.integer({ min: 0, max: 40 }).map((offset) => ({ on: addDays('2027-01-20', offset), what: 'drop' })),
        { maxLength: 1 },
      ),
      seenOn: fc.option(fc.subarray(days), { nil: undefined }),
    }),
    { minLength: 1, maxLength: 5 },
  );

  it('come to the fewest days, then the fewest examinations, then the latest days of all choices', () => {
    fc.assert(
      fc.property(items, (list) => {
        const problem = read({
          window: { from: '2027-02-28', to: '2027-03-31' },
          items: list.map((each, index) => ({ ...each, id: `I${index}` })),
          visitDays: days,
        });
        const answer = solveExaminations(problem);
        expect(verifyExaminations(problem, answer)).toEqual([]);
        const states = answer.items;
        const best = bestOfAll(problem, states);
        expect(answer.visits.cannotBeSaved).toHaveLength(best.unsaved);
        expect(answer.visits.examinationsAtLeast).toBe(best.examinations);
        expect({ days: answer.visits.days.map((each) => each.on), examinations: answer.visits.examinations }).toEqual({
          days: best.days,
          examinations: best.examinations,
        });
      }),
      { numRuns: 120, seed: 7 },
    );
  });
});

/** Every set of days tried, each item by every subset of them: fewest unsaved, then fewest days, fewest examinations, latest days. */
function bestOfAll(
  problem: ExaminationsCase,
  states: readonly { readonly id: string; readonly state: string; readonly dueOn: string | null }[],
) {
  const serving = problem.items.map((item, index) => {
    const state = states[index]!;
    if (state.state === 'in date throughout' || state.state === 'failed' || state.state === 'no interval') return [[]];
    return subsets(problem.visitDays.filter((on) => item.seenOn?.includes(on) ?? true)).filter((visits) =>
      servesWith(problem, item, state, visits),
    );
  });
  const cost = (index: number, chosen: readonly string[]): number =>
    serving[index]!.reduce(
      (least, visits) => (visits.length < least && visits.every((on) => chosen.includes(on)) ? visits.length : least),
      Number.POSITIVE_INFINITY,
    );
  const all = subsets([...problem.visitDays]).map((chosen) => {
    const costs = problem.items.map((_, index) => cost(index, chosen));
    const unsaved = costs.filter((each) => each === Number.POSITIVE_INFINITY).length;
    return { days: [...chosen].sort(), unsaved, examinations: costs.reduce((sum, each) => sum + (Number.isFinite(each) ? each : 0), 0) };
  });
  return all.sort(
    (a, b) =>
      a.unsaved - b.unsaved || a.days.length - b.days.length || a.examinations - b.examinations || (a.days.join() < b.days.join() ? 1 : -1),
  )[0]!;
}

/** Walks the window day by day with these visits. */
function servesWith(
  { window: { from, to } }: ExaminationsCase,
  item: ExaminationsCase['items'][number],
  state: { readonly state: string; readonly dueOn: string | null },
  visits: readonly string[],
): boolean {
  if ([...item.examinations, ...item.events].some((past) => visits.some((on) => on <= past.on))) return false;
  let until = state.state === 'falls due' ? state.dueOn! : '';
  for (let on = [from, ...visits].sort()[0]!; on <= to; on = addDays(on, 1)) {
    if (on >= from && until < on) return false;
    if (visits.includes(on)) {
      const dues = item.intervals.map((each) => (each === 'P14D' ? addDays(on, 14) : addMonthsByHand(on, each === 'P1M' ? 1 : 6)));
      until = dues.sort()[0] ?? '9999-12-31';
    }
  }
  return true;
}

/** Month arithmetic of its own: the same day, clamped to the month's end. */
function addMonthsByHand(on: string, months: number): string {
  const [year, month, date] = on.split('-').map(Number) as [number, number, number];
  const last = new Date(Date.UTC(year, month - 1 + months + 1, 0));
  const clamped = Math.min(date, last.getUTCDate());
  return new Date(Date.UTC(last.getUTCFullYear(), last.getUTCMonth(), clamped)).toISOString().slice(0, 10);
}
