import { demoTour } from '../../../tests/support/demo-tour.js';
import { type PlanInputs, gatherInputs } from '../inputs/index.js';
import { compareForce } from './comparison.js';
import {
  belowPublished,
  compareJoint,
  compareLegs,
  comparePick,
  compareRated,
  compareSteel,
  comparisonFact,
  dynamicFactorOf,
  enoughSteel,
  hoistUse,
  metalFactors,
  unseenRules,
} from './index.js';

/** The demo show, with something changed in its file; persons are below, so that half of every rated load counts. */
const inputs = (change: (file: any) => unknown = () => undefined): PlanInputs => gatherInputs(demoTour(change), 'quayside');
const ruled = (change: (rule: any) => unknown) => inputs((file) => change(file.loadRules.find((each: any) => each.id === 'house')));
const said = ({ fact, verdict }: { readonly fact: { readonly code: string } | null; readonly verdict: string }) => [fact?.code, verdict];
const part = { code: 'structure' } as const;
const half = { what: '', factor: 0.5 } as unknown as Parameters<typeof compareRated>[4][number];

describe('a load against its rated load', () => {
  it('is within at the limit, over above it, over below 0, and not compared without one', () => {
    const of = (kg: number, rated: Parameters<typeof compareRated>[3], factors: Parameters<typeof compareRated>[4] = []) =>
      said(compareRated(inputs(), part, kg, rated, factors));
    const tonne = { value: 1, unit: 't' } as const;
    expect(of(1000, tonne)).toEqual(['within', 'within']);
    expect(of(0, tonne)).toEqual(['within', 'within']);
    expect(of(1000.001, tonne)).toEqual(['over', 'over']);
    expect(of(500, tonne, [half])).toEqual(['within', 'within']);
    expect(of(500.001, tonne, [half])).toEqual(['over', 'over']);
    expect(of(250, tonne, [half, half])).toEqual(['within', 'within']);
    expect(of(250.001, tonne, [half, half])).toEqual(['over', 'over']);
    expect(of(-0.001, tonne)).toEqual(['would-be-pushed', 'over']);
    expect(of(-1, null)).toEqual(['no-rated-value', 'no rated value on file']);
  });

  it('carries its figures: the limit that is left, and the rated load in its own unit', () => {
    expect(compareRated(inputs(), part, 400, { value: 1, unit: 't' }, [half])).toMatchObject({
      value: 400,
      unit: 'kg',
      limit: 500,
      rated: { value: 1, unit: 't' },
      factors: [{ factor: 0.5 }],
    });
    expect(compareRated(inputs(), part, 400, null, [half])).toMatchObject({ limit: null, rated: null, unit: 'kg' });
    expect(compareForce(inputs(), part, 400, 900, [half])).toMatchObject({ limit: 450, rated: { value: 900, unit: 'N' }, unit: 'N' });
    expect(compareForce(inputs(), part, 400, undefined, [half])).toMatchObject({ limit: null, rated: null, factors: [], unit: 'N' });
    expect(said(compareForce(inputs(), part, 450, 900, [half]))).toEqual(['within', 'within']);
    expect(said(compareForce(inputs(), part, 450.1, 900, [half]))).toEqual(['over', 'over']);
  });

  it('of a joint counts a pushed link like a pulled one, pin and link each against its own', () => {
    const box = { model: 'A', ratedRearLinkN: 1000, ratedFrontPinN: 2000 };
    const of = (rearLinkN: number, frontPinN: number) =>
      compareJoint(inputs(), box, { rearLinkN, frontPinN }).map(({ verdict, fact }) => `${fact!.part.code} ${verdict}`);
    expect(of(-1000, -2000)).toEqual(['rear-link within', 'front-pin within']);
    expect(of(-1001, 2000)).toEqual(['rear-link over', 'front-pin within']);
    expect(of(1000, -2001)).toEqual(['rear-link within', 'front-pin over']);
  });
});

describe('the steel of a line', () => {
  const steel = { shackles: ['Bow shackle 3.25', 'Bow shackle 3.25'], slings: ['Round sling 1 m', 'Round sling 1 m'] };
  const of = (kg: number, sideDeg = 0, with_ = inputs()) =>
    compareSteel(with_, steel, kg, sideDeg).map((each) => `${each.fact!.part.code} ${each.fact!.code} ${each.limit}`);

  it('is compared each model once, at half its rated load while persons are below', () => {
    expect(of(1500)).toEqual(['sling within 1500', 'shackle within 1625']);
    expect(of(1626)).toEqual(['sling over 1500', 'shackle over 1625']);
    const nobody = inputs((file) => (file.tour.shows[0].personsBelow = false));
    expect(of(3000, 0, nobody)).toEqual(['sling within 3000', 'shackle within 3250']);
  });

  it('holds less where its shackles are pulled aside, nothing where that is not permitted, and says where no rule is', () => {
    expect(of(1100, 45)).toEqual(['sling within 1500', 'shackle within 1137.5']);
    expect(of(1100, 5)).toEqual(['sling within 1500', 'shackle within 1625']);
    expect(of(1100, 1e-7)).toEqual(['sling within 1500', 'shackle within 1625']);
    const narrow = ruled((rule) => (rule.sideLoad.bands = [{ upToDeg: 10, share: 1 }]));
    expect(of(1, 11, narrow)).toEqual(['sling within 1500', 'shackle side-load-forbidden null']);
    expect(of(1, 10, narrow)).toEqual(['sling within 1500', 'shackle within 1625']);
    const without = ruled((rule) => delete rule.sideLoad);
    expect(of(1100, 20, without)).toEqual(['sling within 1500', 'shackle within 1625', 'shackle-side-load side-load-without-rule null']);
    expect(of(1100, 0, without)).toEqual(['sling within 1500', 'shackle within 1625']);
    expect(compareSteel(without, { shackles: [], slings: [] }, 1, 20)).toEqual([]);
  });

  it('of bridle legs is compared with the leg that pulls most, and the flattest with the rule', () => {
    const g = 9.80665;
    const leg = (tensionKg: number, fromHorizontalDeg: number) =>
      ({ tensionN: tensionKg * g, fromHorizontalDeg }) as Parameters<typeof compareLegs>[2][number];
    const bridle = (count: number) => ({ ...steel, legs: Array.from({ length: count }, () => ({ xMm: 0, yMm: 0, aboveMm: 1000 })) });
    const legs = (least: number, with_ = inputs()) =>
      compareLegs(with_, bridle(3), [leg(1000, 80), leg(1501, least), leg(900, 70)]).map((each) => each.fact!.code);
    expect(legs(45)).toEqual(['over', 'within', 'legs-steep-enough']);
    expect(legs(44.99)).toEqual(['over', 'within', 'legs-too-flat']);
    expect(
      legs(
        44.99,
        ruled((rule) => delete rule.legAngle),
      ),
    ).toEqual(['over', 'within', 'legs-without-rule']);
    // A leg with steel of its own is held against its own tension, the others against theirs.
    const ofOne = { ...bridle(2), legs: [{ ...bridle(1).legs[0]!, shackles: [], slings: ['Round sling 1 m'] }, ...bridle(1).legs] };
    expect(
      compareLegs(inputs(), ofOne, [leg(1000, 80), leg(700, 80)]).map((each) => [each.fact!.part.code, Math.round(each.value)]),
    ).toEqual([
      ['sling', 1000],
      ['shackle', 700],
      ['leg-angle', 0],
    ]);
    const [, , angle] = compareLegs(inputs(), bridle(2), [leg(1, 30), leg(1, 60)]);
    expect(angle!.fact).toMatchObject({ ruled: { field: 'legAngle.leastFromHorizontalDeg', value: 30, limit: 45 } });
  });
});

describe('what stands between a hang and its point', () => {
  const loads = { reactionN: 9806.65, hookLoadKg: 1010, sideDeg: 0, at: null };
  const compared = (with_: PlanInputs, change: (pick: any, hang: any) => unknown = () => undefined) => {
    const hang = structuredClone(with_.hangs[0]!);
    const pick = hang.picks[0]!;
    change(pick, hang);
    const grid = with_.file.catalogue.grids.find((each) => each.model === hang.grid)!;
    return comparePick(with_, grid, hang, pick, loads, loads);
  };
  const of = (code: string, all: ReturnType<typeof compared>) => all.filter((each) => each.fact!.part.code === code);

  it('is the hoist at its share, and the grid in kilograms of its reaction', () => {
    const all = compared(inputs());
    expect(of('hoist', all)).toMatchObject([{ value: 1010, limit: 1250 }]);
    expect(of('hoist-class', all)).toMatchObject([{ fact: { code: 'class-may-hold' } }]);
    expect(of('grid', all)[0]!.value).toBeCloseTo(1000, 9);
  });

  it('says nothing of the class of a hoist while nobody is below', () => {
    const nobody = inputs((file) => Object.assign(file.tour.shows[0], { personsBelow: false, movesOverPersons: false }));
    expect(of('hoist-class', compared(nobody))).toEqual([]);
    expect(of('hoist', compared(nobody))).toMatchObject([{ limit: 2500 }]);
  });

  it('wants a secondary suspension of a class that needs one', () => {
    const d8 = inputs((file) => file.catalogue.hoists.forEach((each: any) => (each.hoistClass = 'D8')));
    const without = compared(d8, (_, hang) => delete hang.secondary);
    expect(of('hoist-class', without)).toMatchObject([{ fact: { code: 'class-wants-secondary' }, verdict: 'over' }]);
    const withIt = compared(d8, (_, hang) => (hang.secondary = { shackles: [], slings: [] }));
    expect(of('hoist-class', withIt)).toMatchObject([{ fact: { code: 'class-may-hold' }, verdict: 'within' }]);
  });

  it('counts links and grids as metal where the regime lists it, and not where it does not', () => {
    expect(metalFactors(inputs()).map((each) => each.factor)).toEqual([0.5]);
    const unlisted = ruled(
      (rule) =>
        (rule.workingCoefficients.elements = rule.workingCoefficients.elements.filter((each: any) => each.element !== 'other metal')),
    );
    expect(metalFactors(unlisted)).toEqual([]);
    expect(metalFactors(ruled((rule) => delete rule.workingCoefficients))).toEqual([]);
  });
});

describe('the use of a hoist', () => {
  const { loadRule } = inputs();
  const use = (personsBelow: boolean, movesOverPersons: boolean, hoistClass?: string, rule = loadRule, hasSecondary = false) => {
    const { code, factors } = hoistUse(rule, { personsBelow, movesOverPersons }, { hoistClass }, hasSecondary);
    return [code, ...factors.map((each) => each.factor)];
  };
  const holding = (holdOverPersons: string) =>
    ruled(
      (rule) =>
        (rule.hoistClasses.classes = [{ hoistClass: 'X', holdOverPersons, moveOverPersons: true, usableShareWithPersonsBelow: 0.4 }]),
    ).loadRule;

  it('is free while nobody is below and nothing moves over people, else by its class', () => {
    expect(use(false, false, 'D8')).toEqual([null]);
    expect(use(false, true, 'D8')).toEqual(['class-must-not-move', 0.5]);
    expect(use(true, false, 'D8')).toEqual(['class-wants-secondary', 0.5]);
    expect(use(true, false, 'D8', loadRule, true)).toEqual(['class-may-hold', 0.5]);
    expect(use(true, false)).toEqual(['class-not-on-file', 0.5]);
    expect(use(true, false, 'none')).toEqual(['class-not-in-rule', 0.5]);
    expect(use(true, true, 'X', holding('allowed'))).toEqual(['class-may-hold', 0.4]);
    expect(use(true, false, 'X', holding('not allowed'))).toEqual(['class-must-not-hold', 0.4]);
    expect(use(true, false, 'X', ruled((rule) => delete rule.hoistClasses).loadRule)).toEqual(['class-without-rule', 0.5]);
  });

  it('has the factor of its class of hoisting at its speed, else that of the regime', () => {
    expect(dynamicFactorOf(loadRule)).toBe(1.25);
    const hoisting = { source: 'x', status: 'house rule', least: 1.05, perSpeedSPerM: 0.17, speedMps: 0.2 };
    expect(dynamicFactorOf({ ...loadRule, hoisting } as typeof loadRule)).toBeCloseTo(1.084, 9);
  });
});

describe('steel that is enough', () => {
  const models = (rated: readonly number[], more: object = {}) =>
    rated.map((value, index) => ({
      maker: 'x',
      model: `M${value}-${index}`,
      massKg: 9 - index,
      ratedLoad: { value, unit: 'kg' },
      ...more,
    }));
  const shop = (change: (catalogue: any) => void) =>
    inputs((file) => {
      const { hoists, shackles, slings } = file.catalogue;
      file.catalogue.hoists = [...hoists, ...models([500, 1000, 1000, 4000], { hoistClass: 'D8 Plus', chainKgPerM: 1, chainLengthM: 24 })];
      file.catalogue.shackles = [...shackles, ...models([500, 1000, 1000, 9000], { size: '-' })];
      file.catalogue.slings = [...slings, ...models([500, 1000, 1000, 9000], { lengthMm: 1000, material: 'textile' })];
      change(file.catalogue);
    });
  const at = (kg: number, hasSecondary = false, change: (catalogue: any) => void = () => undefined) =>
    Object.values(enoughSteel(shop(change), kg, hasSecondary) ?? {});

  it('is the smallest of each kind at half its rated load, the lighter of equals, and none where none is', () => {
    expect(at(250)).toEqual(['M500-0', 'M500-0', 'M500-0']);
    expect(at(250.1)).toEqual(['M1000-2', 'M1000-2', 'M1000-2']);
    expect(at(500.1)).toEqual(['Chain hoist 2.5 t', 'Bow shackle 3.25', 'Round sling 1 m']);
    expect(at(4500)).toEqual([null, 'M9000-3', 'M9000-3']);
    expect(at(4500.1)).toEqual([null, null, null]);
  });

  it('of equal mass is the first by its model', () => {
    const even = (catalogue: any) => {
      for (const kind of ['hoists', 'shackles', 'slings']) catalogue[kind].reverse().forEach((each: any) => (each.massKg = 5));
    };
    expect(at(300, false, even)).toEqual(['M1000-1', 'M1000-1', 'M1000-1']);
  });

  it('is no hoist whose class may not hold over people', () => {
    const d8 = (catalogue: any) => catalogue.hoists.forEach((each: any) => (each.hoistClass = 'D8'));
    expect(at(250, false, d8)[0]).toBeNull();
    expect(at(250, true, d8)[0]).toBe('M500-0');
    const unknown = (catalogue: any) => catalogue.hoists.forEach((each: any) => delete each.hoistClass);
    expect(at(250, false, unknown)[0]).toBe('M500-0');
  });
});

describe('a rule beside a comparison', () => {
  it('is named by the field that had a say, the comparison whole', () => {
    const { loadRule } = inputs();
    const steel = { shackles: ['Bow shackle 3.25'], slings: [] };
    const [within] = compareSteel(inputs(), steel, 1100, 45);
    expect(comparisonFact(loadRule, within!)).toMatchObject({ code: 'within', value: 1100, unit: 'kg', limit: 1137.5, rule: null });
    expect(comparisonFact(loadRule, within!)!.factors.map((each) => [each.cause.code, each.factor, each.rule.field])).toEqual([
      ['coefficient', 0.5, 'workingCoefficients.elements[shackle]'],
      ['side-load', 0.7, 'sideLoad.bands'],
    ]);
    const narrow = ruled((rule) => (rule.sideLoad.bands = [{ upToDeg: 10, share: 1 }]));
    const [forbidden] = compareSteel(narrow, steel, 1100, 45);
    expect(comparisonFact(narrow.loadRule, forbidden!)).toMatchObject({
      code: 'side-load-forbidden',
      value: 45,
      unit: 'deg',
      limit: null,
      rated: null,
      rule: { field: 'sideLoad.bands', source: expect.stringContaining('WAC 296-155-33905'), status: 'house rule' },
    });
    expect(comparisonFact(loadRule, { ...within!, fact: null })).toBeNull();
  });

  it('is told where it was written down from memory: the whole, or a field of it', () => {
    const remembered = ruled((rule) => {
      rule.status = 'from memory';
      rule.wear.status = 'from memory';
    });
    expect(unseenRules(remembered.loadRule).map((each) => each.field)).toEqual([null, 'wear']);
    expect(unseenRules(inputs().loadRule)).toEqual([]);
  });
});

describe('a regime that lets more pass than published figures', () => {
  const told = (change: (rule: any) => unknown) =>
    belowPublished(ruled(change).loadRule).map(({ fact, rule }) => [fact.code, fact.figure, rule.field]);

  it('is told by each figure, none at the published one', () => {
    expect(belowPublished(inputs().loadRule)).toEqual([]);
    expect(told((rule) => (rule.usableShareWithPersonsBelow = 0.51))).toEqual([['share', 0.51, 'usableShareWithPersonsBelow']]);
    expect(told((rule) => (rule.workingCoefficients.elements[4].personsBelow = 8))).toEqual([
      ['element', 0.625, 'workingCoefficients.elements[shackle]'],
    ]);
    expect(told((rule) => (rule.legAngle.leastFromHorizontalDeg = 30))).toEqual([]);
    expect(told((rule) => (rule.legAngle.leastFromHorizontalDeg = 29.9))).toEqual([['legs', 29.9, 'legAngle']]);
    expect(told((rule) => (delete rule.legAngle, delete rule.workingCoefficients))).toEqual([]);
  });
});
