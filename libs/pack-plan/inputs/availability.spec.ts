import { type TourFile } from '#tour-file';
import { demoTour } from '../../../tests/support/demo-tour.js';
import { judgeAvailability } from './availability.js';
import { changedInputs, changesBetween, fingerprintOf, gatherInputs, shortDays, usableItems, whyNotUsable, withFloor } from './index.js';

const id = 'P-010';
const itemOf = (file: any, of = id) => file.items.find((each: any) => each.id === of);
const changed = (change: (file: any) => void): TourFile => {
  const file = structuredClone(demoTour());
  change(file);
  return file;
};
const [prepFrom, lastDay, returnTo] = ['2027-03-01', '2027-03-05', '2027-03-17'];
const why = (change: (item: any, file: any) => void) =>
  whyNotUsable(
    changed((file) => change(itemOf(file), file)),
    'quayside',
    id,
  );
const booking = (from: string, to: string, more: object = {}) => ({ item: id, tour: 'Other', from, to, ...more });

describe('whether an item may travel', () => {
  it('is none of these: promised to others, hired for less than the tour, elsewhere, out of service, out of date', () => {
    expect(why(() => undefined)).toBeNull();
    expect(why((item) => (item.state = 'in repair'))).toMatchObject({ code: 'state' });
    expect(why((item) => (item.depot = 'Away'))).toEqual({ code: 'other-depot', depot: 'Away', wanted: 'Ferry Lane' });
    expect(why((item) => Object.assign(item, { state: 'in repair', depot: 'Away' }))).toMatchObject({ code: 'state' });
    expect(whyNotUsable(demoTour(), 'no such show', 'P-047')).toBeNull();
    expect(whyNotUsable(demoTour(), 'quayside', 'nobody')).toBeNull();
  });

  it.each([
    ['before the tour', booking('2027-02-01', '2027-02-28'), false],
    ['until its first day', booking('2027-02-01', prepFrom), true],
    ['on its last day', booking(returnTo, '2027-04-01'), true],
    ['after it', booking('2027-03-18', '2027-04-01'), false],
    ['of pieces of a batch', booking(prepFrom, returnTo, { count: 3 }), false],
    ['to this tour by its name', booking(prepFrom, returnTo, { tour: 'Harbour Lights' }), false],
    ['to this tour by its id', booking(prepFrom, returnTo, { tourId: 'harbour-lights' }), false],
    ['to another of the same name', booking(prepFrom, returnTo, { tour: 'Harbour Lights', tourId: 'other' }), true],
  ])('a promise %s', (_, promise, bars) => {
    const file = changed((each) => each.bookings.push(promise));
    const { isPromised, missingOn, reason } = judgeAvailability(file, lastDay).get(id)!;
    expect(isPromised).toBe(bars);
    expect(reason).toEqual(bars ? { code: 'promised', to: promise.tour, from: promise.from, until: promise.to } : null);
    expect(missingOn).toEqual(bars ? [{ from: promise.from, to: promise.to, why: reason }] : []);
  });

  it.each([
    ['all of the tour', prepFrom, returnTo, false],
    ['from the day after', '2027-03-02', returnTo, true],
    ['until the day before', prepFrom, '2027-03-16', true],
  ])('a hire for %s', (_, from, to, bars) => {
    expect(why((item) => (item.hire = { from, to }))).toEqual(bars ? { code: 'hired', from, until: to } : null);
    const { missingOn } = judgeAvailability(
      changed((file) => (itemOf(file).hire = { from, to })),
      lastDay,
    ).get(id)!;
    expect(missingOn).toEqual(bars ? [{ from: prepFrom, to: returnTo, why: { code: 'hired', from, until: to } }] : []);
  });

  it('is in date through the last day of the show, and has no judgement where no rule asks', () => {
    const due = (on: string) =>
      why((item) => Object.assign(item, { intervals: ['P1Y'], examinations: [{ on, outcome: 'pass', satisfies: [] }] }));
    expect(judgeAvailability(demoTour(), lastDay).get(id)!.judgement).toBeNull();
    const through = (on: string) =>
      judgeAvailability(
        changed((file) => Object.assign(itemOf(file), { intervals: ['P1Y'], examinations: [{ on, outcome: 'pass' }] })),
        lastDay,
      ).get(id)!;
    expect(through('2026-03-05')).toMatchObject({ reason: null, judgement: { state: 'falls due', dueOn: '2027-03-05' } });
    expect(through('2026-03-04').reason).not.toBeNull();
    expect(due('2020-01-01')).not.toBeNull();
  });

  it('usable ones come in date first, then least used, then by serial, and batches not at all', () => {
    const file = changed((each) => {
      Object.assign(itemOf(each, 'P-060'), { intervals: ['P1Y'], examinations: [{ on: '2026-03-10', outcome: 'pass' }] });
      itemOf(each, 'P-013').uses = itemOf(each, 'P-026').uses;
      itemOf(each, 'P-039').count = 3;
      delete itemOf(each, 'P-002').uses;
    });
    const inputs = gatherInputs(file, 'quayside');
    const usable = usableItems(inputs, 'box', 'Plover').map(({ item }) => item.id);
    expect(usable.slice(0, 3)).toEqual(['P-002', 'P-013', 'P-026']);
    expect(usable.at(-1)).toBe('P-060');
    expect(usable).not.toContain('P-039');
    expect(usable).not.toContain('P-047');
    expect(usable).not.toContain('D-001');
    expect(usableItems(inputs, 'box').map(({ item }) => item.id)).toContain('D-001');
    expect(() => gatherInputs(file, 'nowhere')).toThrow('show nowhere');
  });
});

describe('the short days of a tour', () => {
  const short = (change: (file: any) => void) => shortDays(gatherInputs(changed(change), 'quayside'));

  it('are none where there are boxes enough', () => {
    expect(short((file) => (file.bookings = []))).toEqual([]);
  });

  it('are those of the shows, with the worst day first of equals, and what keeps boxes back on it', () => {
    const repair = (file: any, from: number, to: number) => {
      for (let n = from; n <= to; n++) itemOf(file, `P-0${n}`).state = 'in repair';
    };
    const found = short((file) => {
      // The shows want 56, 52 and 52. Of 61, P-047 is quarantined and four are in repair: 56. Two are promised on a day of the first, five at the third.
      file.bookings = [];
      repair(file, 10, 13);
      for (const item of ['P-001', 'P-002']) file.bookings.push({ item, tour: 'Other', from: '2027-03-05', to: '2027-03-06' });
      for (const item of ['P-003', 'P-004', 'P-005', 'P-006', 'P-007'])
        file.bookings.push({ item, tour: 'Other', from: '2027-03-13', to: '2027-03-14' });
    });
    expect(found).toMatchObject([
      { model: 'Plover', day: '2027-03-05', days: { from: '2027-03-05', to: '2027-03-05' }, missing: 2, show: { id: 'quayside' } },
      { model: 'Plover', day: '2027-03-13', days: { from: '2027-03-13', to: '2027-03-14' }, missing: 1, show: { id: 'fenland' } },
    ]);
    expect(found[0]!.keptBack).toEqual([
      { box: 'P-001', why: { code: 'promised', to: 'Other' } },
      { box: 'P-002', why: { code: 'promised', to: 'Other' } },
      { box: 'P-010', why: { code: 'state', state: 'in repair' } },
    ]);
  });

  it.each<[string, (item: any, file: any) => void, object | null]>([
    ['nothing', () => undefined, null],
    ['another depot', (item) => (item.depot = 'Away'), { code: 'other-depot', depot: 'Away' }],
    [
      'a hire from the day after',
      (item) => (item.hire = { from: '2027-03-05', to: returnTo }),
      { code: 'hired', from: '2027-03-05', until: returnTo },
    ],
    [
      'a hire until the day before',
      (item) => (item.hire = { from: prepFrom, to: '2027-03-03' }),
      { code: 'hired', from: prepFrom, until: '2027-03-03' },
    ],
    ['a hire from that day through that day', (item) => (item.hire = { from: '2027-03-04', to: '2027-03-05' }), null],
    ['a promise that ends the day before', (_, file) => file.bookings.push(booking('2027-03-01', '2027-03-03')), null],
    [
      'a promise that ends that day',
      (_, file) => file.bookings.push(booking('2027-03-01', '2027-03-04')),
      { code: 'promised', to: 'Other' },
    ],
    [
      'a promise that begins that day',
      (_, file) => file.bookings.push(booking('2027-03-04', '2027-03-06')),
      { code: 'promised', to: 'Other' },
    ],
    ['a promise to this tour', (_, file) => file.bookings.push(booking('2027-03-01', '2027-03-30', { tourId: 'harbour-lights' })), null],
    ['no record', (item) => (item.intervals = ['P1Y']), { code: 'examination', state: 'no record' }],
    [
      'a date that ends the day before',
      (item) => Object.assign(item, { intervals: ['P1Y'], examinations: [{ on: '2026-03-03', outcome: 'pass' }] }),
      { code: 'examination', state: 'falls due' },
    ],
    [
      'a date that ends that day',
      (item) => Object.assign(item, { intervals: ['P1Y'], examinations: [{ on: '2026-03-04', outcome: 'pass' }] }),
      null,
    ],
  ])('on the first, by %s', (_what, change, kept) => {
    // The box is the only one of its model, and the show wants two.
    const file = changed((each) => {
      each.items = each.items.filter((item: any) => item.kind !== 'box' || item.id === id);
      const hang = each.tour.shows[0].hangs[0];
      each.tour.shows[0].hangs = [{ ...hang, boxes: hang.boxes.slice(0, 2) }];
      each.tour.shows = [{ ...each.tour.shows[0], to: each.tour.shows[0].from }];
      change(itemOf(each), each);
    });
    const [found] = shortDays(gatherInputs(file, 'quayside'));
    expect(found!.keptBack).toEqual(kept === null ? [] : [{ box: id, why: kept }]);
    expect(found!.missing).toBe(kept === null ? 1 : 2);
  });
});

describe('what makes a plan old', () => {
  const file = demoTour();
  const plan = {
    fingerprint: fingerprintOf(file, 'quayside'),
    show: { id: 'quayside' },
    carts: { floorBefore: { carts: [], loose: [] }, moves: [] },
  } as unknown as Parameters<typeof changedInputs>[0];
  const old = (change: (file: any) => void) => changedInputs(plan, changed(change));

  it.each<[string, (file: any) => void, object[]]>([
    ['nothing', () => undefined, []],
    [
      'a rename of tour, show and hang',
      (each) => {
        each.tour.name = 'Other';
        each.tour.shows[0].name = 'Other';
        each.tour.shows[0].hangs[0].name = 'Other';
      },
      [],
    ],
    ['where an item stands and how often it was used', (each) => Object.assign(itemOf(each), { in: 'K', stack: [], uses: 999 }), []],
    ['the state of an item', (each) => (itemOf(each).state = 'in repair'), [{ code: 'changed', part: { code: 'item', of: 'box', id } }]],
    [
      'an item less',
      (each) => (each.items = each.items.filter((item: any) => item.id !== id)),
      [
        { code: 'changed', part: { code: 'register' } },
        { code: 'gone', part: { code: 'item', of: 'box', id } },
      ],
    ],
    [
      'an item more',
      (each) => each.items.push({ ...itemOf(each), id: 'NEW' }),
      [
        { code: 'changed', part: { code: 'register' } },
        { code: 'new', part: { code: 'item', of: 'box', id: 'NEW' } },
      ],
    ],
    ['the dates of the tour', (each) => (each.tour.returnTo = '2027-03-18'), [{ code: 'changed', part: { code: 'tour' } }]],
    ['the spares', (each) => (each.tour.spares = []), [{ code: 'changed', part: { code: 'spares' } }]],
    ['the rules', (each) => (each.examinationRules = []), [{ code: 'changed', part: { code: 'examination-rules' } }]],
    ['a promise', (each) => each.bookings.push(booking('2027-03-01', '2027-03-02')), [{ code: 'changed', part: { code: 'bookings' } }]],
    ['the hang of another show', (each) => each.tour.shows[1].hangs[0].boxes.pop(), [{ code: 'changed', part: { code: 'other-shows' } }]],
    ['persons below', (each) => (each.tour.shows[0].personsBelow = false), [{ code: 'changed', part: { code: 'show' } }]],
    ['a hang', (each) => each.tour.shows[0].hangs[2].boxes.pop(), [{ code: 'changed', part: { code: 'hang', id: 'Centre' } }]],
    [
      'a hang and its mirror',
      (each) => each.tour.shows[0].hangs[0].boxes.pop(),
      [
        { code: 'changed', part: { code: 'hang', id: 'Main left' } },
        { code: 'changed', part: { code: 'hang', id: 'Main right' } },
      ],
    ],
    [
      'a model',
      (each) => (each.catalogue.boxes[0].massKg += 1),
      [{ code: 'changed', part: { code: 'model', of: 'boxes', id: demoTour().catalogue.boxes[0]!.model } }],
    ],
  ])('%s', (_what, change, changes) => {
    expect([...old(change)].sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1))).toEqual(
      [...changes].sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1)),
    );
  });

  it('knows what is new, gone and changed, each part once', () => {
    const [item, other] = Object.keys(plan.fingerprint).filter((key) => key.includes('item')) as [string, string];
    const codes = (then: object, now: object) => changesBetween(then as never, now as never, [item, item, other]).map((each) => each.code);
    expect(codes({ [item]: 'a' }, { [item]: 'a' })).toEqual([]);
    expect(codes({ [item]: 'a' }, { [item]: 'b' })).toEqual(['changed']);
    expect(codes({}, { [item]: 'b' })).toEqual(['new']);
    expect(codes({ [item]: 'a', [other]: 'c' }, {})).toEqual(['gone', 'gone']);
  });

  it('and a floor that fits no point of its list', () => {
    const floor = (stack: readonly string[]) => {
      const onFloor = {
        ...plan,
        carts: {
          floorBefore: { carts: [{ cart: 'C-01', boxes: ['a', 'b'] }], loose: ['c'] },
          moves: [
            { number: 1, box: 'a', from: 'C-01', to: 'floor' },
            { number: 2, box: 'c', from: 'floor', to: 'C-01' },
          ],
        },
      } as unknown as typeof plan;
      const items = [
        ...file.items.filter((each) => each.id !== 'C-01'),
        { id: 'C-01', kind: 'cart', stack },
      ] as unknown as TourFile['items'];
      return changedInputs(onFloor, { ...file, items }).some((each) => each.code === 'floor-differs');
    };
    expect([['a', 'b'], ['b'], ['c', 'b']].map(floor)).toEqual([false, false, false]);
    expect([['b', 'a'], [], ['c', 'a', 'b'], ['c']].map(floor)).toEqual([true, true, true, true]);
    expect(withFloor([], true)).toEqual([]);
    expect(withFloor([], false)).toEqual([{ code: 'floor-differs' }]);
  });
});
