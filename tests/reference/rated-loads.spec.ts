import { hoistingFactor, solveBridle } from '#hang-statics';
import { hoistUse, isWornOut, leastDimensionMm, personsBelowFactors, sideLoadFactor } from '#pack-plan';
import { verdictOfCause } from '#trade';
import { type LoadRule, loadRule } from '#tour-file';
import { ratedKg } from '../../libs/pack-plan/rules/rated-load.js';

const base = {
  id: 'test',
  jurisdiction: 'DE',
  title: 'Rules of these tests',
  source: 'see each test',
  status: 'found',
  dynamicFactor: 1,
  usableShareWithPersonsBelow: 0.5,
};
const rule = (more: object): LoadRule => loadRule.parse({ ...base, ...more });
const standing = { source: 'see each test', status: 'found' };

describe('rated loads in their own units', () => {
  /** Short ton to kilograms: 2,000 lb of 0.45359237 kg exactly (international yard and pound agreement, 1959); rounded as the reference rounds. */
  it.each([
    [0.5, 453.6],
    [0.75, 680.4],
    [1, 907.2],
    [1.5, 1360.8],
    [2, 1814.4],
    [3.25, 2948.4],
    [4.75, 4309.1],
    [6.5, 5896.7],
    [8.5, 7711.1],
    [9.5, 8618.3],
    [12, 10886.2],
  ])('%s short ton are %s kg, and never as many tonnes', (value, kg) => {
    expect(ratedKg({ value, unit: 'short ton' })).toBeCloseTo(kg, 1);
    expect(ratedKg({ value, unit: 't' })).toBe(value * 1000);
  });

  /** Least ultimate strength over five gives the rated load (Seattle City Light Material Standard 6966.15 quoting Federal Specification RR-C-271D). */
  it.each([
    [20_000, 2],
    [32_500, 3.25],
    [47_500, 4.75],
  ])('a shackle that breaks at %i lb is rated %s short ton', (breaksLb, rated) => {
    expect(ratedKg({ value: breaksLb / 5, unit: 'lb' })).toBeCloseTo(ratedKg({ value: rated, unit: 'short ton' }), 9);
  });

  it('a shackle of 5/8 inch by the rule 3 D squared holds 1.1719 short ton, 2,343.75 lb (NAVEDTRA 14251)', () => {
    expect(ratedKg({ value: 3 * (5 / 8) ** 2, unit: 'short ton' })).toBeCloseTo(ratedKg({ value: 2343.75, unit: 'lb' }), 9);
  });

  it('a capacity of 10,000 N is 1,019.7 kg (standard gravity)', () => {
    expect(ratedKg({ value: 10, unit: 'kN' })).toBeCloseTo(1019.7, 1);
  });
});

describe('a rated load that is reduced already', () => {
  /**
   * By hand, with half of the maker's capacity over people (DGUV Information 215-313 sec. 2.1: "maximal mit dem halben Wert der vom Hersteller angegebenen
   * Tragfaehigkeit"): a maker's 1,000 kg leaves 500 kg, and 500 kg that are the half already leave 500 kg, not 250. Names of cases stand for the numbering of
   * a standard that a company enters from its own copy; the quarter for loads moved over people is an assumption of this test.
   */
  const halved = rule({
    hoistClasses: {
      ...standing,
      classes: [{ hoistClass: 'X', holdOverPersons: 'allowed', moveOverPersons: true, usableShareWithPersonsBelow: 0.5 }],
    },
    useCases: {
      ...standing,
      cases: [
        { useCase: 'nobody', people: 'nobody below', usableShare: 1 },
        { useCase: 'hold', people: 'held over', usableShare: 0.5 },
        { useCase: 'move', people: 'moved over', usableShare: 0.25, hoistClasses: ['X'] },
      ],
    },
  });
  const holds = { personsBelow: true, movesOverPersons: false };
  const moves = { personsBelow: true, movesOverPersons: true };
  const nobody = { personsBelow: false, movesOverPersons: false };
  it.each([
    ['nobody below', nobody, {}, 1000, 1000],
    ['held over people', holds, {}, 1000, 500],
    ['moved over people', moves, {}, 1000, 250],
    ['rated for its class, held', holds, { ratedFor: 'class' }, 500, 500],
    ['rated for its class, moved', moves, { ratedFor: 'class' }, 500, 250],
    ['rated for holding, held', holds, { ratedFor: 'use case', ratedForUseCase: 'hold' }, 500, 500],
    ['rated for holding, moved', moves, { ratedFor: 'use case', ratedForUseCase: 'hold' }, 500, 250],
    ['rated for moving, held', holds, { ratedFor: 'use case', ratedForUseCase: 'move' }, 250, 250],
    ['rated for holding, nobody below', nobody, { ratedFor: 'use case', ratedForUseCase: 'hold' }, 500, 500],
    ['rated for a case that nobody knows', holds, { ratedFor: 'use case', ratedForUseCase: 'other' }, 500, 250],
  ] as const)('%s', (_what, show, more, ratedKilograms, limit) => {
    const { factors } = hoistUse(halved, show, { hoistClass: 'X', ...more }, false);
    expect(factors.reduce((left: number, each) => left * each.factor, ratedKilograms)).toBeCloseTo(limit, 9);
  });

  it('one that a hoist is of, but not of the class that the case asks for, is told', () => {
    const said = (show: object, hoist: object, rules = halved) => hoistUse(rules, { ...holds, ...show }, hoist, false).useCase?.code;
    expect(said(moves, { hoistClass: 'Y' })).toBe('use-case-wants-class');
    expect(said(moves, {})).toBe('use-case-class-unknown');
    expect(said(moves, { hoistClass: 'X' })).toBe('use-case-as-asked');
    expect(said({ useCase: 'move' }, { hoistClass: 'X' })).toBe('use-case-other-people');
    expect(said({ useCase: 'UC9' }, { hoistClass: 'X' })).toBe('use-case-not-in-rule');
    expect(said({ useCase: 'hold' }, {}, rule({}))).toBe('use-case-without-rule');
    expect(said({}, {}, rule({}))).toBeUndefined();
    expect(said({}, { ratedFor: 'use case', ratedForUseCase: 'other' })).toBe('rated-for-without-rule');
    const twice = rule({
      useCases: { ...standing, cases: [0.5, 0.4].map((usableShare, n) => ({ useCase: `U${n}`, people: 'held over', usableShare })) },
    });
    expect(said({}, {}, twice)).toBe('use-case-not-said');
    expect(hoistUse(twice, holds, {}, false).factors.map((each) => each.factor)).toEqual([0.4]);
  });
});

describe('what may be used of a rated load', () => {
  const dguv = rule({
    workingCoefficients: {
      ...standing,
      elements: [
        { element: 'steel wire', nobodyBelow: 5, personsBelow: 10 },
        { element: 'textile', nobodyBelow: 7, personsBelow: 14 },
        { element: 'chain', nobodyBelow: 4, personsBelow: 8 },
        { element: 'shackle', nobodyBelow: 5, personsBelow: 10 },
        { element: 'other metal', nobodyBelow: 4, personsBelow: 8 },
      ],
    },
    sideLoad: {
      ...standing,
      bands: [
        { upToDeg: 5, share: 1 },
        { upToDeg: 45, share: 0.7 },
        { upToDeg: 90, share: 0.5 },
      ],
    },
  });

  it.each(['steel wire', 'textile', 'chain', 'shackle', 'other metal'] as const)(
    '%s: half while persons are below, all of it while nobody is (DGUV Information 215-313 sec. 2.1, Table 1)',
    (element) => {
      expect(personsBelowFactors(dguv, { personsBelow: true }, element).map((each) => each.factor)).toEqual([0.5]);
      expect(personsBelowFactors(dguv, { personsBelow: false }, element)).toEqual([]);
    },
  );

  it('a shackle of 3.25 t holds 1.625 t over people, and 1.1375 t of these when it is pulled aside by 45 degrees', () => {
    const [below] = personsBelowFactors(dguv, { personsBelow: true }, 'shackle');
    const rated = ratedKg({ value: 3.25, unit: 't' });
    expect(rated * below!.factor).toBeCloseTo(1625, 9);
    expect(rated * below!.factor * sideLoadFactor(dguv, 45)!.factor).toBeCloseTo(1137.5, 9);
  });

  /** Bands of WAC 296-155-33905, Figure 17; shares 1, 0.7 and 0.5 as three trade tables print them alike. */
  it.each([
    [0, 1],
    [5, 1],
    [6, 0.7],
    [45, 0.7],
    [46, 0.5],
    [90, 0.5],
    [91, 0],
  ])('a shackle at %i degrees from its line: %s', (angle, share) => {
    expect(sideLoadFactor(dguv, angle)!.factor).toBe(share);
  });

  it('says nothing of side load where the regime has no rule', () => {
    expect(sideLoadFactor(rule({}), 10)).toBeUndefined();
  });

  /** igvw SQ P2 as the trade press reports it: D8 needs a secondary suspension, D8 Plus holds without, C1 also moves. */
  it.each([
    ['D8', false, false, 'over'],
    ['D8', true, false, 'within'],
    ['D8 Plus', false, false, 'within'],
    ['D8 Plus', false, true, 'over'],
    ['C1', false, true, 'within'],
    ['C9', false, false, 'no rule on file'],
  ] as const)('hoist of class %s, secondary suspension %s, moved over people %s: %s', (hoistClass, secondary, moves, verdict) => {
    const classes = rule({
      hoistClasses: {
        ...standing,
        classes: [
          { hoistClass: 'D8', holdOverPersons: 'with secondary suspension', moveOverPersons: false, usableShareWithPersonsBelow: 0.5 },
          { hoistClass: 'D8 Plus', holdOverPersons: 'allowed', moveOverPersons: false, usableShareWithPersonsBelow: 1 },
          { hoistClass: 'C1', holdOverPersons: 'allowed', moveOverPersons: true, usableShareWithPersonsBelow: 1 },
        ],
      },
    });
    const { code } = hoistUse(classes, { personsBelow: true, movesOverPersons: moves }, { hoistClass }, secondary);
    expect(verdictOfCause[code!]).toBe(verdict);
  });
});

/** Hoisting classes from memory (EN 1991-3:2006 Table 2.5): tested here, never shown as authority. Speeds 4 m/min, 8 m/min, 0.2 m/s. */
describe('the factor of a class of hoisting', () => {
  it.each([
    ['HC1', 1.05, 0.17, [1.0613, 1.0727, 1.084]],
    ['HC2', 1.1, 0.34, [1.1227, 1.1453, 1.168]],
    ['HC3', 1.15, 0.51, [1.184, 1.218, 1.252]],
    ['HC4', 1.2, 0.68, [1.2453, 1.2907, 1.336]],
  ])('%s', (_name, least, perSpeedSPerM, expected) => {
    expect([4 / 60, 8 / 60, 0.2].map((speed) => hoistingFactor({ least, perSpeedSPerM }, speed))).toEqual(
      expected.map((each) => expect.closeTo(each, 4)),
    );
    expect(() => hoistingFactor({ least, perSpeedSPerM }, -1)).toThrow(RangeError);
  });
});

describe('wear', () => {
  it.each([
    // 10 %: ASME B30.26; 8 %: training guidance on BS EN 13889.
    [0.1, 14.4],
    [0.08, 14.72],
  ])('of %s: a body of 16.0 mm goes out of use at %s mm', (share, least) => {
    expect(leastDimensionMm(16, share)).toBeCloseTo(least, 9);
    expect(isWornOut(16, least, share)).toBe(true);
    expect(isWornOut(16, least + 0.01, share)).toBe(false);
  });
});

describe('bridles against worked examples', () => {
  const hook = { xMm: 0, yMm: 0, zMm: 0 };
  const anchor = (degrees: number, side: 1 | -1) => ({
    xMm: side * Math.cos((degrees * Math.PI) / 180) * 1000,
    yMm: 0,
    zMm: Math.sin((degrees * Math.PI) / 180) * 1000,
  });

  it('two legs at 30 and 45 degrees under 100 carry 73.2 and 89.7 (textbook problem, from memory)', () => {
    const answer = solveBridle(hook, [anchor(30, -1), anchor(45, 1)], 100);
    expect(answer.ok && answer.legs.map((leg) => leg.tensionN)).toEqual([expect.closeTo(73.2, 1), expect.closeTo(89.7, 1)]);
  });

  it('two equal legs hold rated load x height / length x 2 (NAVEDTRA 14080)', () => {
    // Legs of 2 m with 1.5 m height: a leg of 1,000 carries its rated load when 1,500 hang below.
    const across = Math.sqrt(2000 ** 2 - 1500 ** 2);
    const anchors = [-1, 1].map((side) => ({ xMm: side * across, yMm: 0, zMm: 1500 }));
    const answer = solveBridle(hook, anchors, 1000 * (1500 / 2000) * 2);
    expect(answer.ok && answer.legs.map((leg) => leg.tensionN)).toEqual([expect.closeTo(1000, 6), expect.closeTo(1000, 6)]);
    expect(answer.ok && answer.legs[0]!.lengthMm).toBeCloseTo(2000, 9);
  });

  it('three equal legs share alike, each with a third of the load over the sine of its angle (equilibrium)', () => {
    const anchors = [0, 120, 240].map((turn) => ({
      xMm: 1000 * Math.cos((turn * Math.PI) / 180),
      yMm: 1000 * Math.sin((turn * Math.PI) / 180),
      zMm: 1000,
    }));
    const answer = solveBridle(hook, anchors, 3000);
    expect(answer.ok && answer.legs.map((leg) => leg.tensionN)).toEqual([0, 1, 2].map(() => expect.closeTo(1000 * Math.SQRT2, 6)));
  });
});
