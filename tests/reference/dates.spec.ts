import { addPeriod, isoWeekOf, readPeriod } from '#kernel';
import { findDueDate } from '#inspection-calendar';

const later = (date: string, period: string) => addPeriod(date, readPeriod(period)!);

describe('dates against published values', () => {
  // Temporal proposal documentation (tc39), overflow "constrain"; the last three derived from the same rule.
  it.each([
    ['2019-01-31', 'P1M', '2019-02-28'],
    ['2006-08-24', 'P20Y4M', '2026-12-24'],
    ['2025-08-31', 'P1M', '2025-09-30'],
    ['2025-01-31', 'P2M', '2025-03-31'],
    ['2023-02-28', 'P12M', '2024-02-28'],
    ['2024-02-29', 'P48M', '2028-02-29'],
  ])('%s and %s is %s', (date, period, wanted) => expect(later(date, period)).toBe(wanted));

  it('counts from the real date, never from the due date before: 31 January, one month and one month, is 28 March', () => {
    expect(later(later('2025-01-31', 'P1M'), 'P1M')).toBe('2025-03-28');
  });

  // Rules: LOLER 1998 reg. 9(3)(a); DGUV Vorschrift 54 sec. 23; AS 1353.1 / AS 4497.1 (textile slings). Dates derived by month arithmetic.
  it.each([
    ['UK accessory', ['P6M'], '2024-08-31', '2025-02-28'],
    ['UK accessory', ['P6M'], '2023-08-31', '2024-02-29'],
    ['UK hoist', ['P12M'], '2024-02-29', '2025-02-28'],
    ['DE hoist, yearly', ['P1Y'], '2024-02-29', '2025-02-28'],
    ['DE hoist, four-yearly', ['P4Y'], '2024-02-29', '2028-02-29'],
    ['DE hoist, both', ['P1Y', 'P4Y'], '2024-02-29', '2025-02-28'],
    ['AU textile sling', ['P3M'], '2025-11-30', '2026-02-28'],
    ['UK accessory', ['P6M'], '2025-12-31', '2026-06-30'],
  ])('%s, every %s, examined on %s, is due on %s', (_what, intervals, on, dueOn) => {
    const item = { id: 'X', intervals, examinations: [{ on, outcome: 'pass' as const }], events: [] };
    expect(findDueDate(item, on)).toMatchObject({ dueOn });
  });

  it('a yearly check does not restart the four-yearly one (BetrSichV Annex 3 sec. 3)', () => {
    const item = {
      id: 'X',
      intervals: ['P1Y', 'P4Y'],
      examinations: [
        { on: '2023-05-02', outcome: 'pass' as const },
        { on: '2027-01-10', outcome: 'pass' as const, satisfies: ['P1Y'] },
      ],
      events: [],
    };
    expect(findDueDate(item, '2027-02-01')).toMatchObject({ dueOn: '2027-05-02' });
  });

  // ISO 8601:2000 5.2.3.1 for 1985; the rest derived from "week 1 holds the first Thursday".
  it.each([
    ['1985-04-12', '1985-W15', 5],
    ['2005-01-01', '2004-W53', 6],
    ['2005-01-02', '2004-W53', 7],
    ['2007-12-31', '2008-W01', 1],
    ['2008-12-28', '2008-W52', 7],
    ['2008-12-29', '2009-W01', 1],
    ['2010-01-03', '2009-W53', 7],
    ['2024-12-30', '2025-W01', 1],
    ['2026-01-01', '2026-W01', 4],
    ['2026-12-31', '2026-W53', 4],
    ['2027-01-01', '2026-W53', 5],
  ])('%s lies in %s, day %i', (date, week, weekday) => expect(isoWeekOf(date)).toEqual({ week, weekday }));
});
