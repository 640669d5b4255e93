import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { addPeriod, dateOfDayNumber, isInterval, isPlainDate, periodsFromWords, readPeriod } from '#kernel';

describe('months later', () => {
  // DERIVED from LOLER 1998 reg. 9 and BetrSichV Annex 3 intervals with Temporal's documented `constrain` arithmetic.
  it.each([
    ['2024-08-31', 'P6M', '2025-02-28'],
    ['2023-08-31', 'P6M', '2024-02-29'],
    ['2024-02-29', 'P12M', '2025-02-28'],
    ['2024-02-29', 'P4Y', '2028-02-29'],
    ['2025-11-30', 'P3M', '2026-02-28'],
    ['2025-12-31', 'P6M', '2026-06-30'],
    ['2019-01-31', 'P1M', '2019-02-28'],
    ['2006-08-24', 'P20Y4M', '2026-12-24'],
    ['2023-02-28', 'P12M', '2024-02-28'],
  ])('%s and %s gives %s', (from, period, to) => {
    expect(addPeriod(from, readPeriod(period)!)).toBe(to);
  });

  it('agrees with the Temporal reference on any day and period', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -20_000, max: 60_000 }),
        fc.integer({ min: 0, max: 120 }),
        fc.integer({ min: 0, max: 400 }),
        (day, months, days) => {
          const from = dateOfDayNumber(day);
          expect(addPeriod(from, { months, days })).toBe(Temporal.PlainDate.from(from).add({ months }).add({ days }).toString());
        },
      ),
    );
  });

  it('knows which days exist', () => {
    expect(['2024-02-29', '2023-02-29', '2026-13-01', '2026-1-1', '9999999-01-01', ''].map(isPlainDate)).toEqual([
      true,
      false,
      false,
      false,
      false,
      false,
    ]);
  });
});

describe('periods as people write them', () => {
  it.each([
    ['6 months', ['P6M']],
    ['1 year, 14 Days; 2weeks', ['P1Y', 'P14D', 'P2W']],
    ['12 months', ['P12M']],
    ['P6M P4Y, P2Y6M', ['P6M', 'P4Y', 'P2Y6M']],
    [' , ', []],
  ])('%s', (text, periods) => {
    expect(periodsFromWords(text)).toEqual(periods);
    expect(periods.every(isInterval)).toBe(true);
  });

  it.each(['1 year 6 months', 'six months', '0 months', '-1 year', '1.5 years', 'P6'])(
    '%s is refused by its reader, not guessed at',
    (text) => {
      expect(periodsFromWords(text).every(isInterval)).toBe(false);
    },
  );
});
