import {
  type KeepOptions,
  type TruckAnswer,
  type TruckCase,
  type TruckPackAnswer,
  readTruckCase,
  verifyKept,
  verifyTruckPack,
} from '#truck-pack';
import { changedNumbers } from '../../../tests/support/changed-numbers.js';

function read(input: unknown): TruckCase {
  const result = readTruckCase(input);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const tractor = {
  wheelbaseMm: 3700,
  kingpinAheadOfDriveMm: 600,
  tareSteerKg: 5400,
  tareDriveKg: 2100,
  maxSteerKg: 8000,
  maxDriveKg: 11_500,
  minDriveShareOfGross: 0.25,
};
const semiTrailer = { kingpinXMm: 1600, axleGroupXMm: 9300, tareKingpinKg: 2100, tareAxleGroupKg: 4900, maxAxleGroupKg: 24_000, tractor };
const trailer = { id: 'T1', innerLengthMm: 13_600, innerWidthMm: 2480, innerHeightMm: 2700, doorHeightMm: 2600, semiTrailer };
const rigid = {
  id: 'T2',
  innerLengthMm: 7200,
  innerWidthMm: 2480,
  innerHeightMm: 2400,
  blocked: [{ xMm: 0, yMm: 0, zMm: 0, lengthMm: 500, widthMm: 300, heightMm: 300 }],
  rigid: { frontAxleXMm: -900, rearAxleXMm: 4900, tareFrontKg: 5000, tareRearKg: 3400, maxFrontKg: 7500, maxRearKg: 11_500 },
};
const piece = { lengthMm: 1000, widthMm: 1200, heightMm: 1000, massKg: 400 };
const pieces = [
  { ...piece, id: 'A', firstOff: 2, maxOnTopKg: 400 },
  { ...piece, id: 'B', firstOff: 2, widthMm: 1000, lengthMm: 1200, mayTurn: true },
  { ...piece, id: 'C', firstOff: 2, mayTurn: true, widthMm: 1000 },
  { ...piece, id: 'D', firstOff: 1, floorOnly: true },
  { ...piece, id: 'E', firstOff: 1 },
];
const input = { trucks: [trailer, rigid], pieces };
const problem = read(input);

/** A and B in the nose, C on A, D behind A; E in the rigid. */
const first: TruckAnswer = {
  id: 'T1',
  placements: [
    { id: 'A', xMm: 0, yMm: 0, zMm: 0, turned: false },
    { id: 'B', xMm: 0, yMm: 1200, zMm: 0, turned: true },
    { id: 'C', xMm: 0, yMm: 0, zMm: 1000, turned: false },
    { id: 'D', xMm: 1000, yMm: 0, zMm: 0, turned: false },
  ],
  loadingOrder: ['A', 'B', 'C', 'D'],
  usedLengthMm: 2000,
  massKg: 1600,
  // Centres across at 600, 1800, 500 and 600 of 2480.
  sideOffsetMm: (600 + 1800 + 500 + 600) / 4 - 1240,
  // Moments about the kingpin at 1600: three at 500, one at 1500, over 7700 mm.
  axles: (() => {
    const group = 4900 + (400 * (3 * (500 - 1600) + (1500 - 1600))) / 7700;
    const kingpin = 2100 + 1600 - (group - 4900);
    const [drive, steer] = [2100 + (kingpin * 3100) / 3700, 5400 + (kingpin * 600) / 3700];
    return { kingpinKg: kingpin, axleGroupKg: group, driveKg: drive, steerKg: steer, grossKg: 7500 + 7000 + 1600 };
  })(),
};
const second: TruckAnswer = {
  id: 'T2',
  placements: [{ id: 'E', xMm: 500, yMm: 0, zMm: 0, turned: false }],
  loadingOrder: ['E'],
  usedLengthMm: 1500,
  massKg: 400,
  sideOffsetMm: -640,
  // The centre at 1000: 1900 of 5800 behind the front axle.
  axles: { rearKg: 3400 + (400 * 1900) / 5800, frontKg: 5000 + (400 * 3900) / 5800, grossKg: 8800 },
};
const good: TruckPackAnswer = {
  status: 'feasible',
  trucks: [first, second],
  leftOver: [],
  stoppedBy: 'work',
  work: 1,
  bound: { trucks: 2, usedLengthMm: 3400, why: { code: 'nothing-planned' } },
};

const named = (of: TruckCase, answer: TruckPackAnswer, options: KeepOptions = {}) =>
  verifyTruckPack(of, answer, options).map(({ code, kind, subject, names }) => [code, kind, subject, ...names].join(' '));
const withFirst = (change: Partial<TruckAnswer>): TruckPackAnswer => ({ ...good, trucks: [{ ...first, ...change }, second] });
const moved = (id: string, to: Partial<TruckAnswer['placements'][number]>): TruckPackAnswer =>
  withFirst({ placements: first.placements.map((each) => (each.id === id ? { ...each, ...to } : each)) });
/** The case with something changed; the answer stays. */
const caseWith = (change: { trucks?: readonly object[]; pieces?: readonly object[]; [field: string]: unknown }) =>
  read({ ...input, ...change });
const pieceWith = (id: string, change: object) =>
  caseWith({ pieces: pieces.map((each) => (each.id === id ? { ...each, ...change } : each)) });
const trailerWith = (change: object) => caseWith({ trucks: [{ ...trailer, ...change }, rigid] });
const gearWith = (change: object, ofTractor: object = {}) =>
  trailerWith({ semiTrailer: { ...semiTrailer, ...change, tractor: { ...tractor, ...ofTractor } } });

describe('the checker of loads', () => {
  it('has nothing to say of a load added up by hand', () => {
    expect(named(problem, good)).toEqual([]);
    expect(named(problem, { ...good, status: 'optimal', bound: { ...good.bound, usedLengthMm: 3500 } })).toEqual([]);
  });

  const claims: readonly (readonly [RegExp, string])[] = [
    [/usedLengthMm$/, 'claim length'],
    [/massKg$/, 'claim mass'],
    [/sideOffsetMm$/, 'claim side'],
    [/axles\./, 'claim axle'],
  ];
  it.each([...changedNumbers(good.trucks, ['placements'])])('names the figure that is wrong: %s', (path, trucks) => {
    const claim = claims.find(([field]) => field.test(path))?.[1];
    const truck = path.startsWith('0') ? 'T1' : 'T2';
    const axle = /axles\.(.*)/.exec(path)?.[1];
    expect(named(problem, { ...good, trucks: trucks as TruckAnswer[] })).toEqual([[claim, truck, axle].filter(Boolean).join(' ')]);
  });

  it('names an axle that is left out, and one that the truck has not', () => {
    const { driveKg, ...without } = first.axles;
    expect(driveKg).toBeGreaterThan(0);
    expect(named(problem, withFirst({ axles: without }))).toEqual(['claim axle T1 driveKg']);
    expect(named(problem, withFirst({ axles: { ...first.axles, frontKg: 0 } }))).toEqual(['claim no-such-axle T1 frontKg']);
  });

  it.each<[string, TruckPackAnswer, string]>([
    ['beyond the nose', moved('A', { xMm: -1 }), 'outside truck A'],
    ['through the left wall', moved('A', { yMm: -1 }), 'outside truck A'],
    ['through the floor', moved('A', { zMm: -1 }), 'outside truck A'],
    ['beyond the door', moved('D', { xMm: 12_601 }), 'outside truck D'],
    ['through the right wall', moved('B', { yMm: 1281 }), 'outside truck B'],
    ['through the roof', moved('C', { zMm: 1701 }), 'outside truck C'],
    ['turned though it may not be', moved('A', { turned: true }), 'turned turned A'],
    ['off whole millimetres', moved('D', { xMm: 1000.5 }), 'not-whole place D'],
    ['in another', moved('D', { xMm: 999 }), 'overlap piece A D'],
    ['on nothing', moved('C', { zMm: 1001 }), 'support base C'],
    ['on an edge', moved('C', { xMm: -1 }), 'support base C'],
    ['on another though it must be on the floor', moved('D', { xMm: 0, zMm: 2000 }), 'floor-only stacked D'],
    ['no piece of the case', moved('D', { id: 'Z' }), 'unknown-piece placed Z'],
    ['lost', withFirst({ placements: first.placements.slice(0, 3) }), 'count not-once D'],
    [
      'in two trucks',
      { ...good, trucks: [first, { ...second, placements: [...second.placements, first.placements[3]!] }] },
      'count not-once D',
    ],
    ['placed and left over', { ...good, leftOver: [{ id: 'D', code: 'no-place' }] }, 'count not-once D'],
    [
      'left over as too high, under a roof that is high enough',
      { ...good, leftOver: [{ id: 'D', code: 'too-high', heightMm: 1, mostMm: 0 }] },
      'left-over too-high D T1',
    ],
    [
      'left over as too large for a truck that takes it',
      { ...good, leftOver: [{ id: 'D', code: 'too-large', lengthMm: 1, widthMm: 1, heightMm: 1, massKg: 1 }] },
      'left-over too-large D T1',
    ],
    ['in no truck of the case', { ...good, trucks: [first, { ...second, id: 'T9' }] }, 'unknown-truck answered T9'],
    ['in a truck that stands twice', { ...good, trucks: [first, first, second] }, 'unknown-truck answered T1'],
    [
      'in a blocked place',
      { ...good, trucks: [first, { ...second, placements: [{ ...second.placements[0]!, xMm: 499 }] }] },
      'blocked place E',
    ],
    ['in before what carries it', withFirst({ loadingOrder: ['C', 'A', 'B', 'D'] }), 'loading-order before-support C A'],
    ['in when its lane is taken', withFirst({ loadingOrder: ['D', 'A', 'B', 'C'] }), 'loading-order lane-taken A D'],
    ['in no loading order', withFirst({ loadingOrder: ['A', 'B', 'C'] }), 'loading-order incomplete loadingOrder'],
    ['twice in the loading order', withFirst({ loadingOrder: ['A', 'B', 'C', 'C'] }), 'loading-order incomplete loadingOrder'],
    ['another in the loading order', withFirst({ loadingOrder: ['A', 'B', 'C', 'Z'] }), 'loading-order incomplete loadingOrder'],
    ['fewer trucks than the bound', { ...good, bound: { ...good.bound, trucks: 3 } }, 'bound trucks trucks'],
    ['shorter than the bound', { ...good, bound: { ...good.bound, usedLengthMm: 3501 } }, 'bound length usedLengthMm'],
    ['optimal above the bound in length', { ...good, status: 'optimal' }, 'status not-optimal status'],
    [
      'optimal above the bound in trucks',
      { ...good, status: 'optimal', bound: { ...good.bound, trucks: 1, usedLengthMm: 3500 } },
      'status not-optimal status',
    ],
  ])('names a piece or claim that is %s', (_what, answer, violation) => {
    expect(named(problem, answer)).toContain(violation);
  });

  it.each<[string, TruckCase, string]>([
    ['bears less', pieceWith('A', { maxOnTopKg: 399 }), 'bears too-much A'],
    ['comes off before what rests on it', pieceWith('A', { firstOff: 1 }), 'order rests-on A C'],
    ['comes off before what stands behind it', pieceWith('A', { firstOff: 0 }), 'order in-the-way A D'],
    ['is too high for the door as it lies', trailerWith({ doorHeightMm: 1999 }), 'door high C'],
    ['rides in a truck of less payload', trailerWith({ payloadKg: 1599 }), 'limit above T1 mass'],
    ['rides in a truck of less gross mass', trailerWith({ maxGrossKg: 16_099 }), 'limit above T1 gross mass'],
    ['stands too far to one side', trailerWith({ maxSideOffsetMm: 364 }), 'limit above T1 side offset'],
    ['weighs on the kingpin', gearWith({ maxKingpinKg: 3876 }), 'limit above T1 kingpin'],
    ['weighs on the axle group', gearWith({ maxAxleGroupKg: 4723 }), 'limit above T1 axle group'],
    ['weighs on the drive axle', gearWith({}, { maxDriveKg: 5347 }), 'limit above T1 drive axle'],
    ['weighs on the steer axle', gearWith({}, { maxSteerKg: 6028 }), 'limit above T1 steer axle'],
    ['lifts the drive axle', gearWith({}, { minDriveShareOfGross: 0.34 }), 'limit below T1 drive axle'],
    ['lifts the steer axle', gearWith({}, { minSteerShareOfGross: 0.38 }), 'limit below T1 steer axle'],
    ['lifts the kingpin', gearWith({ kingpinXMm: -9000, axleGroupXMm: -8000, tareKingpinKg: 0 }), 'limit below T1 kingpin'],
  ])('names the limit when the same load %s', (_what, other, violation) => {
    expect(named(other, good)).toContain(violation);
  });

  it('is content at the limit itself', () => {
    const { axles } = first;
    const at = gearWith(
      { maxKingpinKg: axles.kingpinKg, maxAxleGroupKg: axles.axleGroupKg },
      {
        maxDriveKg: axles.driveKg,
        maxSteerKg: axles.steerKg,
        minDriveShareOfGross: axles.driveKg! / axles.grossKg!,
        minSteerShareOfGross: axles.steerKg! / axles.grossKg!,
      },
    );
    expect(named(at, good)).toEqual([]);
    expect(named(trailerWith({ payloadKg: 1600, maxGrossKg: 16_100, maxSideOffsetMm: 365, doorHeightMm: 2000 }), good)).toEqual([]);
  });

  it('names the limits of a rigid truck', () => {
    const gear = (change: object) => caseWith({ trucks: [trailer, { ...rigid, rigid: { ...rigid.rigid, ...change } }] });
    expect(named(gear({ maxFrontKg: 5268 }), good)).toEqual(['limit above T2 front axle']);
    expect(named(gear({ maxRearKg: 3531 }), good)).toEqual(['limit above T2 rear axle']);
    expect(named(gear({ minFrontShareOfGross: 0.6 }), good)).toEqual(['limit below T2 front axle']);
    expect(named(caseWith({ trucks: [trailer, { ...rigid, maxGrossKg: 8799 }] }), good)).toEqual(['limit above T2 gross mass']);
  });

  it('judges a trailer without its tractor, and a truck without running gear', () => {
    const { tractor: none, ...alone } = semiTrailer;
    expect(none.wheelbaseMm).toBe(3700);
    const { kingpinKg, axleGroupKg } = first.axles as Record<'kingpinKg' | 'axleGroupKg', number>;
    const axles = { kingpinKg, axleGroupKg, grossKg: kingpinKg + axleGroupKg };
    expect(named(trailerWith({ semiTrailer: alone }), withFirst({ axles }))).toEqual([]);
    const { semiTrailer: gear, ...box } = trailer;
    expect(gear.kingpinXMm).toBe(1600);
    const bare = (maxGrossKg: number) => caseWith({ trucks: [{ ...box, maxGrossKg }, rigid] });
    expect(named(bare(1600), withFirst({ axles: {} }))).toEqual([]);
    expect(named(bare(1599), withFirst({ axles: {} }))).toEqual(['limit above T1 gross mass']);
  });

  it('looks at what is left after each stop, where that is asked', () => {
    // Two of equal mass balance one another; when the left one is off, the other stands 500 mm aside.
    const cube = { lengthMm: 1000, widthMm: 1000, heightMm: 1000, massKg: 300 };
    const asked = (checkAfterStops: boolean) =>
      read({
        trucks: [{ id: 'T', innerLengthMm: 3000, innerWidthMm: 2000, innerHeightMm: 2000, maxSideOffsetMm: 100 }],
        pieces: [
          { ...cube, id: 'L', firstOff: 4 },
          { ...cube, id: 'R', firstOff: 7 },
        ],
        checkAfterStops,
      });
    const load: TruckAnswer = {
      id: 'T',
      placements: [
        { id: 'L', xMm: 0, yMm: 0, zMm: 0, turned: false },
        { id: 'R', xMm: 0, yMm: 1000, zMm: 0, turned: false },
      ],
      loadingOrder: ['L', 'R'],
      usedLengthMm: 1000,
      massKg: 600,
      sideOffsetMm: 0,
      axles: {},
    };
    const answer = { ...good, trucks: [load], bound: { ...good.bound, trucks: 1, usedLengthMm: 0 } };
    expect(named(asked(false), answer)).toEqual([]);
    expect(verifyTruckPack(asked(true), answer)).toMatchObject([
      { code: 'limit', kind: 'above', subject: 'T', names: ['side offset'], numbers: { value: 500, most: 100, stop: 4 } },
    ]);
  });

  it('passes a load down through every layer by the area that carries it', () => {
    // C1 lies on A1 and A2 in halves, D1 on C1: each of the two below bears (50 + 30) / 2.
    const flat = { lengthMm: 1000, widthMm: 1000, heightMm: 100 };
    const stack = (bears: number) =>
      read({
        trucks: [{ id: 'T', innerLengthMm: 3000, innerWidthMm: 1000, innerHeightMm: 1000 }],
        pieces: [
          { ...flat, id: 'A1', massKg: 10, maxOnTopKg: bears },
          { ...flat, id: 'A2', massKg: 10 },
          { ...flat, id: 'C1', massKg: 50, maxOnTopKg: 30 },
          { ...flat, id: 'D1', massKg: 30 },
        ],
      });
    const at = (id: string, xMm: number, zMm: number) => ({ id, xMm, yMm: 0, zMm, turned: false });
    const answer: TruckPackAnswer = {
      ...good,
      trucks: [
        {
          id: 'T',
          placements: [at('A1', 0, 0), at('A2', 1000, 0), at('C1', 500, 100), at('D1', 500, 200)],
          loadingOrder: ['A1', 'A2', 'C1', 'D1'],
          usedLengthMm: 2000,
          massKg: 100,
          sideOffsetMm: 0,
          axles: {},
        },
      ],
      bound: { trucks: 1, usedLengthMm: 0, why: { code: 'nothing-planned' } },
    };
    expect(named(stack(40), answer)).toEqual([]);
    expect(named(stack(39.9), answer)).toEqual(['bears too-much A1']);
  });

  it('counts what supports a base: at the share that is wanted, and below', () => {
    const shared = (minSupport: number) => caseWith({ minSupport });
    expect(named(shared(0.9), moved('C', { xMm: -100 }))).not.toContain('support base C');
    expect(named(shared(0.91), moved('C', { xMm: -100 }))).toContain('support base C');
    expect(named(shared(0), moved('C', { xMm: 5000 }))).toContain('support base C');
  });

  it('wants kept pieces where they are kept, and loaded ones in first', () => {
    const kept = first.placements.map((each) => ({ ...each, truck: 'T1' }));
    expect(named(problem, good, { kept })).toEqual([]);
    for (const change of [{ xMm: 1 }, { yMm: 1 }, { zMm: 1 }, { turned: true }, { truck: 'T2' }])
      expect(named(problem, good, { kept: [{ ...kept[0]!, ...change }] })).toEqual([`kept elsewhere A ${change.truck ?? 'T1'}`]);
    const loaded = (id: string) => kept.filter((each) => each.id === id).map((each) => ({ ...each, loaded: true }));
    expect(named(problem, good, { kept: loaded('A') })).toEqual([]);
    expect(named(problem, good, { kept: loaded('B') })).toEqual(['loading-order after-loaded B']);
  });

  it('lets waived pieces stand in the way, once the answer names them', () => {
    const early = pieceWith('A', { firstOff: 0 });
    expect(named(early, good, { waived: ['A'] })).toEqual(['waived unnamed A']);
    expect(named(early, { ...good, waived: ['A'] }, { waived: ['A'] })).toEqual([]);
    expect(named(early, { ...good, waived: ['A'] }, {})).toEqual(['order rests-on A C', 'order in-the-way A D']);
  });
});

describe('the checker of kept placements', () => {
  const kept = first.placements.map((each) => ({ ...each, truck: 'T1' }));
  const wrong = (of: TruckCase, options: KeepOptions) =>
    verifyKept(of, options).map(({ code, kind, subject }) => `${code} ${kind} ${subject}`);

  it('has nothing to say of good ones, and names unknown ids and twins', () => {
    expect(wrong(problem, { kept })).toEqual([]);
    expect(wrong(problem, { kept: [{ ...kept[0]!, id: 'Z' }] })).toEqual(['unknown-piece kept Z']);
    expect(wrong(problem, { kept: [{ ...kept[0]!, truck: 'T9' }] })).toEqual(['unknown-truck kept T9']);
    expect(wrong(problem, { kept: [kept[0]!, kept[0]!] })).toEqual(['count kept-twice A']);
    expect(wrong(problem, { waived: ['Z'] })).toEqual(['unknown-piece waived Z']);
  });

  it('names places, support, the order among them and the payload', () => {
    expect(wrong(problem, { kept: [{ ...kept[0]!, xMm: -1 }] })).toEqual(['outside truck A']);
    expect(wrong(problem, { kept: [kept[2]!] })).toEqual(['support base C']);
    const early = pieceWith('A', { firstOff: 1 });
    expect(wrong(early, { kept })).toEqual(['order rests-on A']);
    expect(wrong(early, { kept, waived: ['A'] })).toEqual([]);
    expect(wrong(trailerWith({ payloadKg: 1600 }), { kept })).toEqual([]);
    expect(verifyKept(trailerWith({ payloadKg: 1599 }), { kept })).toMatchObject([
      { code: 'limit', kind: 'kept-mass', subject: 'T1', names: ['A', 'B', 'C', 'D'], numbers: { value: 1600, most: 1599 } },
    ]);
  });
});
