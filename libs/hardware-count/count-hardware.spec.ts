import fc from 'fast-check';
import { eachDay } from '#kernel';
import { type HardwareInput, countHardware, verifyHardware } from '#hardware-count';

const [from, to] = ['2027-03-01', '2027-03-12'];
const days = eachDay(from, to);
const key = fc.constantFrom('pin', 'shackle', 'loom');
const count = fc.integer({ min: 0, max: 40 });
const travels = fc.constantFrom('with its box' as const, 'with its cart' as const, 'loose' as const);
const promise = fc
  .record({ first: fc.integer({ min: 0, max: 11 }), length: fc.integer({ min: 0, max: 6 }), count })
  .map(({ first, length, count: held }) => ({ from: days[first]!, to: days[Math.min(11, first + length)]!, count: held }));
const input: fc.Arbitrary<HardwareInput> = fc.record({
  from: fc.constant(from),
  to: fc.constant(to),
  fitted: fc.array(fc.record({ key, item: fc.constant('piece'), count, where: fc.constantFrom('Left', 'Right') }), {
    minLength: 1,
    maxLength: 8,
  }),
  travelling: fc.array(fc.record({ key, count, travels, load: fc.constantFrom(null, 'Left 1-4', 'Left 5-8'), cart: fc.constant('K01') }), {
    maxLength: 8,
  }),
  staying: fc.array(fc.record({ key, item: fc.constant('piece'), count, where: fc.constant('Left, box 1') }), { maxLength: 3 }),
  lots: fc
    .array(
      fc.record({
        key,
        count: fc.integer({ min: 0, max: 120 }),
        trunk: fc.constantFrom(null, 'HT-1'),
        promises: fc.array(promise, { maxLength: 3 }),
      }),
      {
        maxLength: 6,
      },
    )
    .map((lots) => lots.map((lot, index) => ({ ...lot, id: `L${index}` }))),
  keptAtHome: fc.record({ pin: count, shackle: count }).map((kept) => new Map(Object.entries(kept))),
  spares: fc.record({ pin: count, loom: count }).map((spares) => new Map(Object.entries(spares))),
});

describe('counting hardware', () => {
  it('agrees with a count piece by piece and day by day', () => {
    fc.assert(
      fc.property(input, (each) => {
        expect(verifyHardware(each, countHardware(each), days)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('never counts a spare as fitted: more spares change what is wanted and missing, nothing that hangs', () => {
    fc.assert(
      fc.property(input, (each) => {
        const more = countHardware({ ...each, spares: new Map([...each.spares].map(([name, n]) => [name, n + 5])) });
        countHardware(each).forEach((line, index) => {
          const { fitted, withBox, withCart, loose, difference, onHand } = more[index]!;
          expect({ fitted, withBox, withCart, loose, difference, onHand }).toEqual({
            fitted: line.fitted,
            withBox: line.withBox,
            withCart: line.withCart,
            loose: line.loose,
            difference: line.difference,
            onHand: line.onHand,
          });
          expect(more[index]!.missing).toBeGreaterThanOrEqual(line.missing);
        });
      }),
      { numRuns: 100 },
    );
  });

  it('names the days on which others hold what is missing, and the lots that the pieces come from', () => {
    const [line] = countHardware({
      from,
      to,
      fitted: [{ key: 'pin', item: 'pin', count: 20, where: 'Left' }],
      travelling: [
        { key: 'pin', count: 16, travels: 'with its box', load: 'Left 1-4', cart: 'K01' },
        { key: 'pin', count: 6, travels: 'loose', load: null, cart: null },
      ],
      staying: [{ key: 'pin', item: 'pin', count: 2, where: 'Left, box 1' }],
      lots: [
        { id: 'BOXES', key: 'pin', count: 24, trunk: null, promises: [] },
        { id: 'TRUNK', key: 'pin', count: 12, trunk: 'HT-1', promises: [{ from: '2027-03-05', to: '2027-03-06', count: 5 }] },
      ],
      keptAtHome: new Map([['pin', 8]]),
      spares: new Map([['pin', 4]]),
    });
    expect(line).toMatchObject({
      fitted: 20,
      staysInBox: 2,
      difference: 0,
      onHand: 31,
      missing: 3,
      shortOn: { from: '2027-03-05', to: '2027-03-06' },
      takenFrom: [
        { lot: 'BOXES', trunk: null, count: 16 },
        { lot: 'TRUNK', trunk: 'HT-1', count: 7 },
      ],
      carriers: [{ load: 'Left 1-4', cart: 'K01', count: 16 }],
    });
  });

  const one: HardwareInput = {
    from,
    to,
    fitted: [{ key: 'pin', item: 'pin', count: 20, where: 'Left' }],
    travelling: [
      { key: 'pin', count: 12, travels: 'with its box', load: 'Left 1-4', cart: 'K01' },
      { key: 'pin', count: 4, travels: 'with its cart', load: 'Left 1-4', cart: 'K01' },
      { key: 'pin', count: 6, travels: 'loose', load: null, cart: null },
    ],
    staying: [{ key: 'pin', item: 'pin', count: 2, where: 'Left, box 1' }],
    lots: [
      { id: 'BOXES', key: 'pin', count: 24, trunk: null, promises: [] },
      { id: 'TRUNK', key: 'pin', count: 12, trunk: 'HT-1', promises: [{ from: '2027-03-05', to: '2027-03-06', count: 5 }] },
    ],
    keptAtHome: new Map([['pin', 8]]),
    spares: new Map([['pin', 4]]),
  };
  const sentences: Record<string, RegExp> = {
    fitted: /21 fitted, counted 20/,
    withBox: /13 with its box, counted 12/,
    withCart: /5 with its cart, counted 4/,
    loose: /7 loose, counted 6/,
    staysInBox: /3 staying, counted 2/,
    difference: /not reconciled/,
    spares: /5 spares, counted 4/,
    onHand: /32 on hand, counted 31/,
    keptAtHome: /9 kept at home, counted 8/,
    missing: /4 missing, counted 3/,
  };

  it.each(Object.entries(sentences))('has a checker that names what is wrong: %s', (field, sentence) => {
    const [line] = countHardware(one);
    expect(verifyHardware(one, [line!], days)).toEqual([]);
    const changed = { ...line!, [field]: (line as unknown as Record<string, number>)[field]! + 1 };
    expect(verifyHardware(one, [changed], days).join('\n')).toMatch(sentence);
  });

  it('has a checker that names lines, days and lots that are wrong', () => {
    const line = countHardware(one)[0]!;
    const wrong = (change: object) => verifyHardware(one, [{ ...line, ...change }], days);
    expect(verifyHardware(one, [], days)).toEqual(['pin stands in 0 lines']);
    expect(verifyHardware(one, [line, line], days)).toEqual(['pin stands in 2 lines']);
    expect(wrong({ shortOn: null })).toEqual(['pin: missing without a day, or a day without anything missing']);
    expect(wrong({ shortOn: { from: '2027-03-04', to: '2027-03-06' } }).join()).toMatch(/counted 2027-03-05 to 2027-03-06/);
    expect(wrong({ shortOn: { from: '2027-03-05', to: '2027-03-07' } }).join()).toMatch(/counted 2027-03-05 to 2027-03-06/);
    expect(wrong({ takenFrom: [{ lot: 'OTHER', trunk: null, count: 1 }] })).toEqual(['pin: 1 taken from OTHER']);
    expect(wrong({ takenFrom: [{ lot: 'TRUNK', trunk: 'HT-1', count: 0 }] })).toEqual(['pin: 0 taken from TRUNK']);
    expect(wrong({ takenFrom: [{ lot: 'TRUNK', trunk: 'HT-1', count: 13 }] })).toEqual(['pin: 13 taken from TRUNK']);
    const twice = [...line.takenFrom, { lot: 'BOXES', trunk: null, count: 4 }];
    expect(wrong({ takenFrom: twice })).toEqual(['pin: more is taken than is wanted']);
  });
});
