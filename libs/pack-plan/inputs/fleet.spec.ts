import type { Item, Tour } from '#tour-file';
import { type FleetInput, designOf, firstDayFor, fleetCalendar, remediesFor } from './index.js';

const box = (id: string, change: object = {}): Item =>
  ({ id, kind: 'box', model: 'A', depot: 'Home', state: 'in service', examinations: [], events: [], ...change }) as unknown as Item;
const show = (boxes: readonly string[]) => ({ hangs: [{ id: 'h', boxes: boxes.map((model) => ({ model })), picks: [], extras: [] }] });
const tour = (id: string, from: string, to: string, shows: readonly (readonly string[])[], change: object = {}): Tour =>
  ({ id, name: `Tour ${id}`, depot: 'Home', prepFrom: from, returnTo: to, shows: shows.map(show), ...change }) as unknown as Tour;
const input = (change: Partial<FleetInput> = {}): FleetInput => ({
  kit: { items: [box('B1'), box('B2'), box('B3')], examinationRules: [] },
  bookings: [],
  tours: [],
  ...change,
});
const withItems = (items: readonly Item[], change: Partial<FleetInput> = {}) =>
  input({ kit: { items: [...items], examinationRules: [] }, ...change });
const promise = (item: string, from: string, to: string, change: object = {}) =>
  ({ item, from, to, tour: 'Other', ...change }) as FleetInput['bookings'][number];
const days = (of: FleetInput, from = '2027-03-01', to = '2027-03-05', model = 'A') =>
  fleetCalendar(of, from, to)
    .find((each) => each.model === model)!
    .days.map(({ free, promised, out, short }) => [free, promised, out, short].join(' '));

describe('the calendar of a fleet', () => {
  it('has every model of box by its name and every day, and counts no cart and nothing retired', () => {
    const items = [box('Z1', { model: 'Z' }), box('B1'), box('B2', { state: 'retired' }), box('K1', { kind: 'cart' })];
    expect(fleetCalendar(withItems(items), '2027-02-28', '2027-03-01')).toEqual([
      { model: 'A', count: 1, days: ['2027-02-28', '2027-03-01'].map((day) => ({ day, free: 1, promised: 0, out: 0, short: 0 })) },
      { model: 'Z', count: 1, days: ['2027-02-28', '2027-03-01'].map((day) => ({ day, free: 1, promised: 0, out: 0, short: 0 })) },
    ]);
  });

  it('takes a promise from its first day through its last; one of a number of pieces is of a batch', () => {
    expect(days(input({ bookings: [promise('B1', '2027-03-02', '2027-03-04')] }))).toEqual([
      '3 0 0 0',
      '2 1 0 0',
      '2 1 0 0',
      '2 1 0 0',
      '3 0 0 0',
    ]);
    expect(days(input({ bookings: [promise('B1', '2027-03-02', '2027-03-04', { count: 4 })] }))).toEqual(Array(5).fill('3 0 0 0'));
  });

  it('takes out what is not in service, elsewhere, or not hired on that day', () => {
    expect(days(withItems([box('B1', { state: 'in repair' }), box('B2')]))).toEqual(Array(5).fill('1 0 1 0'));
    expect(days(withItems([box('B1', { depot: 'Away' }), box('B2')], { depot: 'Home' }))).toEqual(Array(5).fill('1 0 1 0'));
    expect(days(withItems([box('B1', { depot: 'Away' }), box('B2')]))).toEqual(Array(5).fill('2 0 0 0'));
    const hired = box('B1', { hire: { from: '2027-03-02', to: '2027-03-04' } });
    expect(days(withItems([hired]))).toEqual(['0 0 1 0', '1 0 0 0', '1 0 0 0', '1 0 0 0', '0 0 1 0']);
    // A promise is told before what is wrong with the box.
    const promised = { bookings: [promise('B1', '2027-03-01', '2027-03-01')] };
    expect(days(withItems([box('B1', { state: 'in repair' })], promised), '2027-03-01', '2027-03-01')).toEqual(['0 1 0 0']);
  });

  it('takes out what is out of date, by its own intervals before those of the rules of its kind', () => {
    const passed = (on: string) => [{ on, outcome: 'pass' }];
    const due = box('B1', { examinations: passed('2026-09-03') });
    const rules = [{ jurisdiction: 'UK', kinds: ['box'], intervals: ['P6M'] }] as unknown as FleetInput['kit']['examinationRules'];
    expect(days(input({ kit: { items: [due], examinationRules: rules } }))).toEqual([
      '1 0 0 0',
      '1 0 0 0',
      '1 0 0 0',
      '0 0 1 0',
      '0 0 1 0',
    ]);
    const ofOthers = [{ ...rules[0]!, kinds: ['hoist'] }] as typeof rules;
    expect(days(input({ kit: { items: [due], examinationRules: ofOthers } }))).toEqual(Array(5).fill('1 0 0 0'));
    const yearly = box('B1', { examinations: passed('2026-09-03'), intervals: ['P1Y'] });
    expect(days(input({ kit: { items: [yearly], examinationRules: rules } }))).toEqual(Array(5).fill('1 0 0 0'));
    expect(days(withItems([box('B1', { intervals: ['P1Y'] })]))).toEqual(Array(5).fill('0 0 1 0'));
  });

  it('is short where tours want more than they hold and is free: the most of any show, from prep to return', () => {
    const wanting = tour('t', '2027-03-02', '2027-03-04', [['A', 'A'], ['A', 'A', 'A', 'A', 'A'], ['A']]);
    expect(days(input({ tours: [wanting] }))).toEqual(['3 0 0 0', '3 0 0 2', '3 0 0 2', '3 0 0 2', '3 0 0 0']);
    const held = promise('B1', '2027-03-02', '2027-03-04', { tourId: 't' });
    expect(days(input({ tours: [wanting], bookings: [held] }))).toEqual(['3 0 0 0', '2 1 0 2', '2 1 0 2', '2 1 0 2', '3 0 0 0']);
    const ofAnother = promise('B1', '2027-03-02', '2027-03-04', { tourId: 'u' });
    expect(days(input({ tours: [wanting], bookings: [ofAnother] }))[1]).toBe('2 1 0 3');
    const fewer = tour('t', '2027-03-02', '2027-03-04', [['A']]);
    expect(days(input({ tours: [fewer, fewer] }))[1]).toBe('3 0 0 0');
    expect(days(input({ tours: [wanting, fewer] }))[1]).toBe('3 0 0 3');
    expect(days(input({ tours: [wanting], depot: 'Away' }))[1]).toBe('0 0 3 0');
    expect(days(input({ tours: [wanting], depot: 'Home' }))[1]).toBe('3 0 0 2');
    // More held than wanted is not less than none.
    const none = tour('t', '2027-03-02', '2027-03-04', [['A']]);
    const all = ['B1', 'B2', 'B3'].map((id) => promise(id, '2027-03-02', '2027-03-04', { tourId: 't' }));
    expect(days(input({ tours: [none, wanting], bookings: all.slice(0, 2) }))[1]).toBe('1 2 0 2');
    expect(designOf(show(['A', 'Z', 'A']) as unknown as Tour['shows'][number])).toEqual(
      new Map([
        ['A', 2],
        ['Z', 1],
      ]),
    );
  });

  it('finds the first day from which a design is served for so many days on end', () => {
    const calendar = fleetCalendar(input({ bookings: [promise('B1', '2027-03-03', '2027-03-03')] }), '2027-03-01', '2027-03-06');
    const first = (count: number, span: number) => firstDayFor(calendar, new Map([['A', count]]), span);
    expect(first(3, 2)).toBe('2027-03-01');
    expect(first(3, 3)).toBe('2027-03-04');
    expect(first(3, 4)).toBeUndefined();
    expect(first(2, 6)).toBe('2027-03-01');
    expect(first(4, 1)).toBeUndefined();
    expect(firstDayFor(calendar, new Map([['Z', 1]]), 1)).toBeUndefined();
    expect(firstDayFor([], new Map([['A', 1]]), 1)).toBeUndefined();
  });
});

describe('what would free a box', () => {
  const day = '2027-03-03';
  it('names one way a box that is held back, the quickest first, then by serial', () => {
    const items = [
      box('H', { hire: { from: '2027-03-04', to: '2027-03-09' } }),
      box('P'),
      box('D', { depot: 'Away' }),
      box('R', { state: 'in repair', reason: 'driver' }),
      box('Q', { state: 'quarantined' }),
      box('E2', { intervals: ['P1Y'] }),
      box('E1', { intervals: ['P1Y'] }),
      box('FREE'),
      box('GONE', { state: 'retired' }),
      box('Z', { model: 'Z', state: 'in repair' }),
    ];
    const facts = remediesFor(withItems(items, { depot: 'Home', bookings: [promise('P', '2027-03-02', '2027-03-31')] }), 'A', day).map(
      (each) => each.fact,
    );
    expect(facts).toEqual([
      { code: 'examination', box: 'E1', day },
      { code: 'examination', box: 'E2', day },
      { code: 'release from quarantine', box: 'Q', remark: null },
      { code: 'repair', box: 'R', remark: 'driver' },
      { code: 'another depot', box: 'D', depot: 'Away' },
      { code: 'return', box: 'P', tour: 'Other', until: '2027-03-31', freeFrom: '2027-04-01' },
      { code: 'longer hire', box: 'H', from: '2027-03-04', until: '2027-03-09', day },
    ]);
  });

  it('asks for no longer hire on the first and last day of one', () => {
    const hired = withItems([box('H', { hire: { from: '2027-03-02', to: '2027-03-04' } })]);
    expect(['2027-03-01', '2027-03-02', '2027-03-04', '2027-03-05'].map((on) => remediesFor(hired, 'A', on).length)).toEqual([1, 0, 0, 1]);
  });
});
