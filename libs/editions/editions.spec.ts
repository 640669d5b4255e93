import fc from 'fast-check';
import {
  type ItemsOnFile,
  changesOf,
  decideChange,
  decideNewItem,
  directionOfIntervals,
  guardOf,
  guardedModels,
  isNewRuleCautious,
  itemGuard,
  loadRuleGuard,
} from '#editions';
import { addPeriod, readPeriod } from '#kernel';
import { type Item, modelExamples } from '#tour-file';

const hoist = { ...modelExamples.hoists, ratedLoad: { value: 500, unit: 'kg' as const } };
const hoistGuard = guardOf('hoists')!;
const figure = fc.double({ min: 0.1, max: 1e6, noNaN: true });

describe('which way a change goes', () => {
  it.each([
    ['a lower rating', { ratedLoad: { value: 250, unit: 'kg' } }, []],
    ['a higher rating', { ratedLoad: { value: 1000, unit: 'kg' } }, ['ratedLoad']],
    ['the same figure in another unit', { ratedLoad: { value: 500, unit: 'lb' } }, ['ratedLoad']],
    ['another source of the same rating', { ratedLoad: { value: 500, unit: 'kg', source: 'a label' } }, ['ratedLoad']],
    ['another class of hoist', { hoistClass: 'over people' }, ['hoistClass']],
    ['a heavier body', { massKg: hoist.massKg + 1 }, []],
    ['a lighter body', { massKg: hoist.massKg - 1 }, ['massKg']],
    ['another maker', { maker: 'Ferry Works' }, []],
  ])('of a hoist: %s', (_what, change, waits) => {
    const wanted = { ...hoist, ...change };
    const decided = decideChange(hoistGuard, hoist as object, wanted);
    expect(decided.waits.map((each) => each.field)).toEqual(waits);
    expect(decided.inForce).toEqual({
      ...wanted,
      ...Object.fromEntries(waits.map((field) => [field, hoist[field as keyof typeof hoist]])),
    });
  });

  it.each([
    ['put out of service', { state: 'retired' }, []],
    ['back in service', { state: 'in service' }, ['state']],
    ['declared later', { declaredOn: '2027-02-01' }, ['declaredOn']],
    ['declared earlier', { declaredOn: '2026-01-01' }, []],
    ['not declared', { declaredOn: undefined }, []],
    ['fewer', { count: 12 }, []],
    ['more', { count: 60 }, ['count']],
    ['of another model', { model: 'B' }, ['model']],
    ['used more often', { uses: 41 }, []],
    ['used less often', { uses: 39 }, ['uses']],
    ['used as often as nobody says', { uses: undefined }, ['uses']],
    ['first used earlier', { firstUsedOn: '2024-12-31' }, []],
    ['first used later', { firstUsedOn: '2025-01-02' }, ['firstUsedOn']],
    ['first used nobody says when', { firstUsedOn: undefined }, ['firstUsedOn']],
  ])('of an examined lot: %s', (_what, change, waits) => {
    const was = { model: 'A', state: 'in repair', declaredOn: '2026-06-01', firstUsedOn: '2025-01-01', uses: 40, count: 16 };
    expect(decideChange(itemGuard(true), was, { ...was, ...change }).waits.map((each) => each.field)).toEqual(waits);
  });

  it('of an item of which neither uses nor a first day were said: the first ones at once', () => {
    expect(decideChange(itemGuard(false), {}, { uses: 3, firstUsedOn: '2026-05-01' }).waits).toEqual([]);
  });

  it('of a lot that nobody examined or declared: its count is free', () => {
    expect(decideChange(itemGuard(false), { count: 16 }, { count: 60 }).waits).toEqual([]);
  });

  it('of a regime: factors up and shares down at once, the other way and everything unclear not', () => {
    const was = {
      title: 'House',
      dynamicFactor: 1.25,
      usableShareWithPersonsBelow: 0.5,
      legAngle: { source: 's', status: 'found', leastFromHorizontalDeg: 30 },
    };
    const waits = (change: object) => decideChange(loadRuleGuard, was, { ...was, ...change }).waits.map((each) => each.field);
    expect(waits({ dynamicFactor: 1.6, usableShareWithPersonsBelow: 0.4, title: 'Ours' })).toEqual([]);
    expect(waits({ dynamicFactor: 1 })).toEqual(['dynamicFactor']);
    expect(waits({ usableShareWithPersonsBelow: 1 })).toEqual(['usableShareWithPersonsBelow']);
    expect(waits({ legAngle: { ...was.legAngle, leastFromHorizontalDeg: 45 } })).toEqual([]);
    expect(waits({ legAngle: { ...was.legAngle, leastFromHorizontalDeg: 45, status: 'from memory' } })).toEqual(['legAngle']);
    expect(waits({ legAngle: undefined })).toEqual(['legAngle']);
    expect(waits({ wear: { source: 's', status: 'found', limits: [] } })).toEqual(['wear']);
  });

  it('guards every model that hangs or lifts, and no truck or case', () => {
    expect([...guardedModels].sort()).toEqual([
      'aids',
      'boxes',
      'carts',
      'cells',
      'frames',
      'grids',
      'hoists',
      'looms',
      'pins',
      'shackles',
      'slings',
    ]);
  });

  it('of one figure there and back: never both at once, and nothing waits that did not change', () => {
    for (const kind of guardedModels)
      for (const field of Object.keys(guardOf(kind)!))
        fc.assert(
          fc.property(figure, figure, (a, b) => {
            const there = changesOf(guardOf(kind)!, { [field]: a }, { [field]: b });
            const back = changesOf(guardOf(kind)!, { [field]: b }, { [field]: a });
            if (a === b) return there.length === 0 && back.length === 0;
            return [there, back].flat().filter((each) => each.direction === 'cautious').length <= 1;
          }),
          { numRuns: 30, seed: 7 },
        );
  });

  it('what holds and what waits together are what was wanted', () => {
    const model = fc.record(
      {
        massKg: figure,
        ratedLoad: fc.record({ value: figure, unit: fc.constantFrom('kg', 't') }),
        hoistClass: fc.string(),
        maker: fc.string(),
        chainKgPerM: figure,
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(model, model, (was, wanted) => {
        const { inForce, waits } = decideChange(hoistGuard, was as Record<string, unknown>, wanted as Record<string, unknown>);
        const whole: Record<string, unknown> = { ...inForce };
        for (const { field, wanted: value } of waits) {
          if (value === undefined) delete whole[field];
          else whole[field] = value;
        }
        expect(whole).toEqual(wanted);
        // Nothing permissive slips in: what holds differs from what was only cautiously.
        expect(decideChange(hoistGuard, was as Record<string, unknown>, inForce).waits).toEqual([]);
      }),
      { numRuns: 50, seed: 3 },
    );
  });
});

describe('intervals', () => {
  it.each([
    [['P1Y'], ['P6M'], 'cautious'],
    [['P1Y'], ['P12M'], 'cautious'],
    [['P1Y'], ['P2Y'], 'permissive'],
    [['P1Y', 'P4Y'], ['P1Y'], 'permissive'],
    [['P1Y', 'P4Y'], ['P6M', 'P3Y'], 'cautious'],
    [['P6M', 'P1Y'], ['P1Y', 'P6M', 'P99Y'], 'cautious'],
    [['P1M'], ['P31D'], 'permissive'],
    [['P1M'], ['P28D'], 'cautious'],
    [['P1Y'], [], 'permissive'],
    [[], ['P6M'], 'permissive'],
    [[], [], 'permissive'],
  ] as const)('from %j to %j', (was, wanted, direction) => {
    expect(directionOfIntervals(was, wanted)).toBe(direction);
  });

  it('that are cautious never let anything run longer, whatever day it was examined on', () => {
    const period = fc.constantFrom(
      'P1D',
      'P28D',
      'P30D',
      'P31D',
      'P1M',
      'P3M',
      'P6M',
      'P364D',
      'P52W',
      'P1Y',
      'P12M',
      'P366D',
      'P13M',
      'P99Y',
    );
    const day = fc.integer({ min: 0, max: 4000 }).map((n) => new Date(Date.UTC(2024, 0, 1 + n)).toISOString().slice(0, 10));
    const lastDay = (from: string, intervals: readonly string[]) =>
      intervals.map((each) => addPeriod(from, readPeriod(each)!)).sort()[0] ?? '9999';
    fc.assert(
      fc.property(fc.array(period, { minLength: 1, maxLength: 3 }), fc.array(period, { maxLength: 3 }), day, (was, wanted, from) => {
        if (directionOfIntervals(was, wanted) === 'cautious') expect(lastDay(from, wanted) <= lastDay(from, was)).toBe(true);
      }),
      { numRuns: 50, seed: 11 },
    );
  });
});

describe('what is new', () => {
  const onFile: ItemsOnFile = { intervals: ['P1Y'], isModelOutOfUse: false };
  const item: Item = {
    ...{ id: 'H-90', kind: 'hoist', model: 'A', state: 'in service', depot: 'Ferry Lane', declaredOn: '2027-01-10' },
    examinations: [
      { on: '2026-10-01', outcome: 'pass' },
      { on: '2026-11-01', outcome: 'fail' },
    ],
    events: [{ on: '2026-12-01', what: 'dropped' }],
  };

  it('what speaks against an item holds at once, what speaks for it waits', () => {
    const held = decideNewItem(item, onFile);
    expect(held).toMatchObject({ waitsWhole: false, declaredOn: '2027-01-10', examinations: [{ outcome: 'pass' }] });
    expect(held.inForce).toMatchObject({ examinations: [{ outcome: 'fail' }], events: [{ what: 'dropped' }] });
    expect(held.inForce.declaredOn).toBeUndefined();
  });

  it.each([
    ['no intervals of its own', undefined, onFile, false],
    ['shorter intervals', ['P6M'], onFile, false],
    ['none at all', [], onFile, true],
    ['ninety-nine years', ['P99Y'], onFile, true],
    ['ninety-nine years where no rule says anything', ['P99Y'], { ...onFile, intervals: [] }, true],
    ['a model of which something is out of use', undefined, { ...onFile, isModelOutOfUse: true }, true],
  ])('an item with %s waits as a whole or not', (_what, intervals, say, waits) => {
    const held = decideNewItem({ ...item, intervals }, say);
    expect([held.waitsWhole, held.inForce.unaccepted]).toEqual([waits, waits ? 'item' : undefined]);
  });

  it('a mark that a file brings along does not count', () => {
    expect(decideNewItem({ ...item, unaccepted: 'model' }, onFile).inForce.unaccepted).toBeUndefined();
  });

  it('a rule more in a place that is judged holds at once, the first of a place waits', () => {
    const rule = { jurisdiction: 'GB', kinds: ['hoist' as const], intervals: ['P99Y'], source: 's', status: 'house rule' as const };
    expect(isNewRuleCautious(rule, [{ ...rule, kinds: ['grid'] }])).toBe(true);
    expect(isNewRuleCautious(rule, [{ ...rule, jurisdiction: 'DE' }])).toBe(false);
    expect(isNewRuleCautious(rule, [])).toBe(false);
  });
});
