import fc from 'fast-check';
import { type IntegerProgramSolver, seededRandom } from '#kernel';
import { loadIntegerProgramSolver } from '#runtime';
import { type Truck, outsideLimitsKg, readTruckCase } from '../case/index.js';
import { floorUse } from './floor-bound.js';
import { LinearProgram } from './linear-program.js';
import { mostPayloadKg } from './most-payload.js';
import { boundOf } from './pack-bound.js';
import { type FloorDemand, widthPrices } from './width-prices.js';

let integerProgram: IntegerProgramSolver;
beforeAll(async () => {
  integerProgram = await loadIntegerProgramSolver();
});

function made(trucks: readonly object[], pieces: readonly object[] = [], minSupport = 1) {
  const read = readTruckCase({
    trucks: trucks.map((each, index) => ({ id: `T${index}`, innerLengthMm: 10_000, innerWidthMm: 2000, innerHeightMm: 2000, ...each })),
    pieces: pieces.map((each, index) => ({ id: `P${index}`, lengthMm: 1000, widthMm: 1000, heightMm: 1000, massKg: 10, ...each })),
    minSupport,
  });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

const times = (count: number, piece: object) => Array.from({ length: count }, () => piece);

describe('the linear program', () => {
  it('comes to the best that HiGHS finds, rows added before and after', () => {
    const coefficient = fc.integer({ min: -3, max: 9 });
    const row = fc.record({ of: fc.array(coefficient, { minLength: 4, maxLength: 4 }), most: fc.integer({ min: 0, max: 20 }) });
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -2, max: 9 }), { minLength: 2, maxLength: 4 }),
        fc.array(row, { minLength: 1, maxLength: 4 }),
        fc.array(row, { maxLength: 3 }),
        (gain, before, after) => {
          const all = { of: [1, 1, 1, 1], most: 30 };
          const program = new LinearProgram(gain);
          const add = ({ of, most }: typeof all) =>
            program.add(new Map(gain.map((_, at) => [at, of[at]!] as const).filter(([, by]) => by !== 0)), most);
          const rows: (typeof all)[] = [];
          const check = (more: readonly (typeof all)[]) => {
            for (const each of more) add(each);
            rows.push(...more);
            expect(program.solve(200)).toBe(true);
            const values = gain.map((_, at) => program.value(at));
            for (const { of, most } of rows)
              expect(values.reduce((sum, each, at) => sum + each * of[at]!, 0)).toBeLessThanOrEqual(most + 1e-6);
            const sum = (by: readonly number[]) => gain.map((_, at) => `${by[at]! < 0 ? '-' : '+'} ${Math.abs(by[at]!)} x${at}`).join(' ');
            const text = `Maximize\nobj: ${sum(gain)}\nSubject To\n${rows.map(({ of, most }, at) => `r${at}: ${sum(of)} <= ${most}`).join('\n')}\nEnd\n`;
            const best = integerProgram.solve(text, { timeLimitSeconds: 1e6, relaxed: true }).objective!;
            expect(values.reduce((total, each, at) => total + each * gain[at]!, 0)).toBeCloseTo(best, 5);
          };
          check([all, ...before]);
          // As cuts are added: they may cut off the solution at hand.
          check(after);
        },
      ),
      { numRuns: 60, seed: 1 },
    );
  });

  it('says so where the steps did not do', () => {
    const program = new LinearProgram([1, 1]);
    program.add(new Map([[0, 1]]), 1);
    program.add(new Map([[1, 1]]), 1);
    expect([program.solve(2), program.solve(1)]).toEqual([false, true]);
    expect([program.value(0), program.value(1)]).toEqual([1, 1]);
  });
});

describe('the greatest payload', () => {
  const of = (truck: object) => mostPayloadKg(made([truck]).trucks[0]!);

  it('is payload or gross where nothing else limits it, and endless where nothing does', () => {
    expect(of({})).toBe(Infinity);
    expect(of({ payloadKg: 9000 })).toBeCloseTo(9000, 3);
    expect(of({ payloadKg: 9000, maxGrossKg: 7000 })).toBeCloseTo(7000, 3);
    expect(of({ rigid: { frontAxleXMm: 0, rearAxleXMm: 5000, tareFrontKg: 3000, tareRearKg: 2000 }, maxGrossKg: 7000 })).toBeCloseTo(
      2000,
      1,
    );
  });

  it('is what both axles take, by hand', () => {
    // Both full: 4,000 kg more in front and 6,000 behind.
    const rigid = { frontAxleXMm: 0, rearAxleXMm: 5000, tareFrontKg: 3000, tareRearKg: 2000, maxFrontKg: 7000, maxRearKg: 8000 };
    expect(of({ rigid })).toBeCloseTo(10_000, 1);
    // A third of the gross mass in front: of 6,000 kg there 18,000 kg at most.
    expect(of({ rigid: { ...rigid, maxFrontKg: 6000, maxRearKg: 30_000, minFrontShareOfGross: 1 / 3 } })).toBeCloseTo(13_000, 1);
    // Overloaded while empty: nothing makes that right.
    expect(of({ rigid: { ...rigid, maxFrontKg: 2999, maxRearKg: 1999 } })).toBe(0);
    // The hold ends ahead of the rear axle: what is all at the door, 4 m back, puts a fifth in front.
    expect(of({ innerLengthMm: 4000, rigid: { ...rigid, maxFrontKg: 4000, maxRearKg: 90_000 } })).toBeCloseTo(5000, 1);
  });

  it('is carried with its centre somewhere, and a little more is nowhere', () => {
    const kg = (min: number, max: number) => fc.integer({ min, max });
    const tractor = fc.record({
      wheelbaseMm: fc.constant(3700),
      kingpinAheadOfDriveMm: kg(0, 900),
      tareSteerKg: kg(4000, 5500),
      tareDriveKg: kg(2000, 3000),
      maxSteerKg: kg(7000, 9000),
      maxDriveKg: kg(9000, 13_000),
      minDriveShareOfGross: fc.constantFrom(0, 0.25),
      minSteerShareOfGross: fc.constantFrom(0, 0.15),
    });
    const semiTrailer = fc.record({
      kingpinXMm: kg(500, 1700),
      axleGroupXMm: kg(7000, 9000),
      tareKingpinKg: kg(1000, 2000),
      tareAxleGroupKg: kg(3000, 5000),
      maxKingpinKg: kg(8000, 14_000),
      maxAxleGroupKg: kg(12_000, 24_000),
      tractor: fc.option(tractor, { nil: undefined }),
    });
    const rigid = fc.record({
      frontAxleXMm: kg(-1500, 0),
      rearAxleXMm: kg(4000, 6000),
      tareFrontKg: kg(3000, 5000),
      tareRearKg: kg(2000, 4000),
      maxFrontKg: kg(6000, 8000),
      maxRearKg: kg(8000, 13_000),
      minFrontShareOfGross: fc.constantFrom(0, 0.3),
    });
    const gears = fc.oneof(
      semiTrailer.map((gear) => ({ semiTrailer: gear })),
      rigid.map((gear) => ({ rigid: gear })),
    );
    /** How far outside the mass is with its centre where it does best: the sum of what lies beyond each limit is convex. */
    const outside = (truck: Truck, massKg: number): number => {
      let [from, to] = [0, truck.innerLengthMm];
      const at = (x: number) => outsideLimitsKg(truck, massKg, massKg * x);
      for (let step = 0; step < 60; step++) {
        const [a, b] = [from + (to - from) / 3, to - (to - from) / 3];
        if (at(a) <= at(b)) to = b;
        else from = a;
      }
      return at(from);
    };
    fc.assert(
      fc.property(gears, fc.constantFrom(6000, 9000), kg(20_000, 42_000), (gear, innerLengthMm, maxGrossKg) => {
        const truck = made([{ ...gear, innerLengthMm, maxGrossKg }]).trucks[0]!;
        const most = mostPayloadKg(truck);
        expect(outside(truck, most + 15)).toBeGreaterThan(0.5);
        if (most > 15) expect(outside(truck, most - 1)).toBeLessThan(0.5);
      }),
      { numRuns: 120, seed: 2 },
    );
  });
});

/** All sets of widths that fit side by side, by how many of each there are. */
function sets(width: number, widths: readonly number[], most: readonly number[], at = 0): number[][] {
  if (at === widths.length) return [[]];
  return Array.from({ length: Math.min(most[at]!, Math.floor(width / widths[at]!)) + 1 }, (_, count) =>
    sets(width - count * widths[at]!, widths, most, at + 1).map((rest) => [count, ...rest]),
  ).flat();
}

describe('prices of widths', () => {
  it('never make a set that fits side by side dearer than the floor, and use up as much as the best prices can', () => {
    const side = fc.integer({ min: 2, max: 12 });
    const demands = fc.array(fc.record({ along: side, across: side, mayTurn: fc.boolean(), count: fc.integer({ min: 1, max: 4 }) }), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 20 }), demands, (width, each) => {
        const demand = each
          .map(({ along, across, mayTurn, count }): FloorDemand => {
            const ways = [{ along, across }, ...(mayTurn && along !== across ? [{ along: across, across: along }] : [])];
            return { ways: ways.filter((way) => way.across <= width), count };
          })
          .filter(({ ways }) => ways.length > 0);
        fc.pre(demand.length > 0);
        const prices = widthPrices(width, demand);
        const most = new Map<number, number>();
        for (const { ways, count } of demand) for (const { across } of ways) most.set(across, (most.get(across) ?? 0) + count);
        const widths = [...most.keys()];
        const fitting = sets(width, widths, [...most.values()]);
        const priceOf = (across: number) => prices.lengthOf([{ along: 1, across }]);
        for (const counts of fitting)
          expect(counts.reduce((sum, count, at) => sum + count * priceOf(widths[at]!), 0)).toBeLessThanOrEqual(1);
        for (const { ways } of demand)
          expect(prices.lengthOf(ways)).toBeCloseTo(Math.min(...ways.map(({ along, across }) => along * priceOf(across))), 9);
        // The best prices, by HiGHS over all sets; v: what a piece uses up in the cheapest of its ways.
        const column = (across: number) => `p${widths.indexOf(across)}`;
        const rows = [
          ...fitting
            .filter((counts) => counts.some((count) => count > 0))
            .map((counts) => `${counts.flatMap((count, at) => (count > 0 ? [`${count} p${at}`] : [])).join(' + ')} <= 1`),
          ...demand.flatMap(({ ways }, at) => ways.map(({ along, across }) => `v${at} - ${along} ${column(across)} <= 0`)),
        ];
        const text = `Maximize\nobj: ${demand.map(({ count }, at) => `${count} v${at}`).join(' + ')}\nSubject To\n${rows.map((own, at) => `r${at}: ${own}`).join('\n')}\nEnd\n`;
        const best = integerProgram.solve(text, { timeLimitSeconds: 1e6, relaxed: true }).objective!;
        const used = demand.reduce((sum, { ways, count }) => sum + count * prices.lengthOf(ways), 0);
        expect(used / best).toBeGreaterThan(1 - 1e-5);
        expect(used / best).toBeLessThan(1 + 1e-6);
      }),
      { numRuns: 100, seed: 3 },
    );
  });

  it('without a search are shares of the widest sum that fits', () => {
    const one = widthPrices(1000, [{ ways: [{ along: 7, across: 400 }], count: 5 }], 0);
    // Two abreast: 800 of 1,000.
    expect(one.lengthOf([{ along: 100, across: 400 }])).toBeCloseTo(50, 6);
    const single = widthPrices(1000, [{ ways: [{ along: 7, across: 400 }], count: 0.5, pieces: 1 }], 0);
    expect(single.lengthOf([{ along: 100, across: 400 }])).toBeCloseTo(100, 6);
    expect(single.lengthOf([{ along: 100, across: 300 }])).toBe(0);
    expect(single.lengthOf([])).toBe(Infinity);
  });

  it('count a width as often as there are pieces of it, parts of pieces whole', () => {
    // Of two narrow ones and many wide ones: three narrow abreast are not there.
    const wide = { ways: [{ along: 1000, across: 600 }], count: 10 };
    const narrow = { ways: [{ along: 1000, across: 400 }], count: 1.2, pieces: 2 };
    const prices = widthPrices(1250, [wide, narrow]);
    expect(prices.lengthOf(wide.ways)).toBeCloseTo(500, 4);
    expect(prices.lengthOf(narrow.ways)).toBeCloseTo(500, 4);
  });

  it('stay valid where widths are too fine to be told apart', () => {
    const random = seededRandom(2);
    const demand = Array.from(
      { length: 60 },
      (): FloorDemand => ({ ways: [{ along: 1000, across: 301 + Math.floor(900 * random()) }], count: 300 }),
    );
    const width = 24_801;
    const prices = widthPrices(width, demand, 6);
    const widths = [...new Set(demand.map(({ ways }) => ways[0]!.across))];
    // The dearest sum by width, each as often as it likes.
    const dearest = new Float64Array(width + 1);
    for (let room = 1; room <= width; room++) {
      dearest[room] = dearest[room - 1]!;
      for (const across of widths)
        if (across <= room) dearest[room] = Math.max(dearest[room]!, dearest[room - across]! + prices.lengthOf([{ along: 1, across }]));
    }
    expect(dearest[width]).toBeLessThanOrEqual(1);
    expect(dearest[width]).toBeGreaterThan(0.97);
  });
});

describe('floor that pieces need', () => {
  // Two abreast in 2,000 mm: each metre of length uses up half a metre of floor.
  it.each<[string, object[], number, number?]>([
    ['all that must stand on it', times(5, { floorOnly: true }), 2500],
    ['nothing, where all could ride', times(5, {}), 0],
    ['all, where nothing may bear anything', times(5, { maxOnTopKg: 0 }), 2500],
    ['all, where nothing bears even the lightest', times(5, { maxOnTopKg: 0, massKg: 1 }), 2500],
    ['nothing of what weighs nothing and may ride', times(5, { maxOnTopKg: 0, massKg: 0 }), 0],
    ['all, where the roof is too low for two', times(5, { heightMm: 1001 }), 2500],
    ['less by what two tops bear', [...times(2, { floorOnly: true, maxOnTopKg: 10 }), ...times(4, { maxOnTopKg: 0 })], 1000 + 1000],
    ['less by the area of two tops', [...times(2, { floorOnly: true }), ...times(4, { maxOnTopKg: 0 })], 1000 + 1000],
    ['less by twice that, where half of a base is enough', [...times(2, { floorOnly: true }), ...times(4, { maxOnTopKg: 0 })], 1000, 0.5],
    ['only what must stand on it, where no support is needed', [...times(2, { floorOnly: true }), ...times(4, { maxOnTopKg: 0 })], 1000, 0],
    [
      'all of those too heavy for what all tops bear',
      [...times(2, { floorOnly: true, maxOnTopKg: 10 }), ...times(4, { maxOnTopKg: 0, massKg: 21 })],
      3000,
    ],
    [
      'with what saves most floor on top: two short ones ride beside the long one that cannot',
      [...times(2, { floorOnly: true }), ...times(2, { maxOnTopKg: 0, lengthMm: 500, heightMm: 1001 }), ...times(2, { maxOnTopKg: 0 })],
      1000 + 500,
    ],
  ])('is %s', (_what, pieces, wanted, ...[minSupport]) => {
    const problem = made([{}], pieces, minSupport ?? 1);
    expect(floorUse(problem, problem.pieces).usedMm).toBeCloseTo(wanted, 3);
  });

  it('across is found the same way', () => {
    // 3 m long, three one behind the other in 10 m: each metre of width uses up a third.
    const problem = made([{}], times(6, { floorOnly: true, lengthMm: 3000, widthMm: 700 }));
    expect(floorUse(problem, problem.pieces, true).usedMm).toBeCloseTo((6 * 700) / 3, 3);
    expect(floorUse(problem, problem.pieces).usedMm).toBeCloseTo((6 * 3000) / 2, 3);
  });

  it('is that of the cheaper turn, in the longest and widest of the trucks', () => {
    const piece = { floorOnly: true, lengthMm: 2000, widthMm: 900 };
    const turned = made([{}], [{ ...piece, mayTurn: true }]);
    // Alone across it uses up 900 mm, along 2,000 mm.
    expect(floorUse(turned, turned.pieces).usedMm).toBeCloseTo(900, 3);
    const fixed = made([{}], [piece]);
    expect(floorUse(fixed, fixed.pieces).usedMm).toBeCloseTo(2000, 3);
    const wide = made([{ innerWidthMm: 1800 }, { innerWidthMm: 2000, innerLengthMm: 5000 }], [{ ...piece, mayTurn: true }]);
    expect(floorUse(wide, wide.pieces).usedMm).toBeCloseTo(900, 3);
  });
});

describe('the least trucks and the least length', () => {
  const boundFor = (trucks: readonly object[], pieces: readonly object[]) => {
    const problem = made(trucks, pieces);
    return boundOf(problem, problem.pieces);
  };
  const three = (truck: object = {}) => times(3, truck);

  it.each<[string, readonly object[], readonly object[], number, number, string, string]>([
    ['mass', three({ payloadKg: 100 }), times(21, { lengthMm: 100 }), 3, 525, 'mass', 'volume'],
    ['mass that just fits', three({ payloadKg: 105 }), times(21, { lengthMm: 100 }), 2, 525, 'mass', 'volume'],
    ['volume', three({ innerLengthMm: 1000, innerHeightMm: 1000 }), times(5, { heightMm: 500 }), 2, 1250, 'volume', 'volume'],
    ['floor along', three({ innerLengthMm: 3000 }), times(4, { floorOnly: true, widthMm: 1100 }), 2, 4000, 'floor-across', 'floor-across'],
    [
      'floor across',
      three({ innerLengthMm: 1900, innerWidthMm: 3000 }),
      times(4, { floorOnly: true, lengthMm: 1000, widthMm: 900 }),
      2,
      1334,
      'floor-along',
      'floor-across',
    ],
    [
      'both at once',
      three({ innerLengthMm: 1000, innerWidthMm: 1000 }),
      times(3, { floorOnly: true, lengthMm: 600, widthMm: 600, heightMm: 10 }),
      3,
      1800,
      'functions',
      'floor-across',
    ],
    ['one at least', three(), [{}], 1, 1000, 'mass', 'longest-piece'],
    ['the longest piece', three(), [{ lengthMm: 5000, widthMm: 100 }, {}], 1, 5000, 'mass', 'longest-piece'],
    [
      'the longest that may be turned',
      three(),
      [
        { lengthMm: 1900, widthMm: 100, mayTurn: true, heightMm: 10 },
        { lengthMm: 200, heightMm: 10 },
      ],
      1,
      200,
      'mass',
      'longest-piece',
    ],
    ['nothing', three(), [], 0, 0, 'nothing', 'nothing'],
  ])('by %s', (_what, trucks, pieces, least, length, byTrucks, byLength) => {
    const bound = boundFor(trucks, pieces);
    expect([bound.trucks, bound.usedLengthMm]).toEqual([least, length]);
    expect(bound.why).toMatchObject({ code: 'proved', trucks: { code: byTrucks }, length: { code: byLength } });
  });

  it('takes the largest trucks first, whatever their order', () => {
    const trucks = [{ payloadKg: 50 }, { payloadKg: 200 }, { payloadKg: 100 }];
    const count = (pieces: number) => boundFor(trucks, times(pieces, { lengthMm: 100 })).trucks;
    expect([count(20), count(21), count(30), count(31), count(35)]).toEqual([1, 2, 2, 3, 3]);
  });

  it('begins behind what is blocked from wall to wall at the nose', () => {
    const wall = { xMm: 0, yMm: 0, zMm: 0, lengthMm: 700, widthMm: 2000, heightMm: 100 };
    const second = { ...wall, xMm: 700, lengthMm: 50 };
    const pieces = times(4, { floorOnly: true });
    const length = (blocked: object[]) => boundFor([{ blocked }], pieces).usedLengthMm;
    expect(length([])).toBe(2000);
    expect(length([wall])).toBe(2700);
    expect(length([second, wall])).toBe(2750);
    // Not where a gap is left: at a wall, under it, or ahead of it.
    expect(length([{ ...wall, widthMm: 1999 }])).toBe(2000);
    expect(length([{ ...wall, yMm: 1, widthMm: 1999 }])).toBe(2000);
    expect(length([{ ...wall, zMm: 1 }])).toBe(2000);
    expect(length([{ ...wall, xMm: 1 }])).toBe(2000);
    expect(length([{ ...wall, zMm: -100 }])).toBe(2000);
    expect(length([{ ...wall, xMm: -700 }])).toBe(2000);
    expect(boundFor([{ blocked: [wall] }], pieces).why).toMatchObject({ length: { code: 'floor-across', blockedMm: 700 } });
    // The truck that has least blocked is taken, and no floor is left in one that is all blocked.
    expect(boundFor([{ blocked: [wall] }, {}], pieces).usedLengthMm).toBe(2000);
    expect(
      boundFor(
        [
          { innerLengthMm: 2500, blocked: [wall] },
          { innerLengthMm: 2500, blocked: [wall] },
        ],
        pieces,
      ),
    ).toMatchObject({ trucks: 2, usedLengthMm: 3400 });
  });
});
