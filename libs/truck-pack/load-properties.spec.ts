import fc from 'fast-check';
import {
  boundOf,
  mostPayloadKg,
  outsideLimitsKg,
  readTruckCase,
  solveRows,
  solveTruckPack,
  type Truck,
  type TruckAnswer,
  type TruckCase,
  type TruckPackAnswer,
  verifyTruckPack,
} from '#truck-pack';

function read(input: unknown): TruckCase {
  const result = readTruckCase(input);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const trailer = {
  id: 'T1',
  innerLengthMm: 13_600,
  innerWidthMm: 2480,
  innerHeightMm: 2700,
  doorHeightMm: 2600,
  payloadKg: 24_000,
  maxGrossKg: 40_000,
  maxSideOffsetMm: 150,
  semiTrailer: {
    kingpinXMm: 1600,
    axleGroupXMm: 9300,
    tareKingpinKg: 2100,
    tareAxleGroupKg: 4900,
    maxAxleGroupKg: 24_000,
    tractor: {
      wheelbaseMm: 3700,
      kingpinAheadOfDriveMm: 600,
      tareSteerKg: 5400,
      tareDriveKg: 2100,
      maxSteerKg: 8000,
      maxDriveKg: 11_500,
      minDriveShareOfGross: 0.25,
    },
  },
};
const rigid = {
  id: 'T2',
  innerLengthMm: 7200,
  innerWidthMm: 2440,
  innerHeightMm: 2400,
  blocked: [{ xMm: 4200, yMm: 0, zMm: 0, lengthMm: 1100, widthMm: 200, heightMm: 300 }],
  rigid: { frontAxleXMm: -900, rearAxleXMm: 4900, tareFrontKg: 5000, tareRearKg: 3400, maxFrontKg: 7500, maxRearKg: 11_500 },
};

const freight = (most: number) =>
  fc
    .array(
      fc.record({
        lengthMm: fc.integer({ min: 50, max: 130 }).map((n) => n * 10),
        widthMm: fc.integer({ min: 40, max: 90 }).map((n) => n * 10),
        heightMm: fc.integer({ min: 40, max: 180 }).map((n) => n * 10),
        massKg: fc.integer({ min: 20, max: 400 }),
        mayTurn: fc.boolean(),
        firstOff: fc.integer({ min: 1, max: 5 }),
        floorOnly: fc.boolean(),
        maxOnTopKg: fc.constantFrom(0, 150, 500),
      }),
      { minLength: 1, maxLength: most },
    )
    .map((pieces) => pieces.map((piece, index) => ({ ...piece, id: `P${index}` })));

const cases = (most: number) =>
  fc
    .record({ pieces: freight(most), checkAfterStops: fc.boolean(), minSupport: fc.constantFrom(0.7, 1) })
    .map((each) => read({ ...each, trucks: [trailer, rigid] }));

type Solver = (problem: TruckCase) => TruckPackAnswer | undefined;
const solvers: [string, Solver][] = [
  ['rows', (problem) => solveRows(problem, { seed: 1, rounds: 1 })],
  ['a free load', (problem) => solveTruckPack(problem, { seed: 1, rounds: 2 })],
];

describe.each(solvers)('%s', (_name, solve) => {
  it('keep every rule under the checker, place each piece once, and stay above the bound', () => {
    let whole = 0;
    fc.assert(
      fc.property(cases(22), (problem) => {
        const answer = solve(problem);
        fc.pre(answer !== undefined);
        expect(verifyTruckPack(problem, answer)).toEqual([]);
        const named = [...answer.trucks.flatMap((each) => each.placements), ...answer.leftOver].map((each) => each.id);
        expect([...named].sort()).toEqual(problem.pieces.map((each) => each.id).sort());
        if (answer.leftOver.length > 0) return;
        whole++;
        const bound = boundOf(problem, problem.pieces);
        expect(bound.trucks).toBeLessThanOrEqual(answer.trucks.length);
        expect(bound.usedLengthMm).toBeLessThanOrEqual(answer.trucks.reduce((sum, each) => sum + each.usedLengthMm, 0));
      }),
      { numRuns: 30 },
    );
    // Loads that are whole are what the bound is compared with: many of the 30 must be.
    expect(whole).toBeGreaterThanOrEqual(15);
  });

  it('are equal for equal seed and work limit', () => {
    fc.assert(
      fc.property(cases(14), (problem) => {
        const answer = solve(problem);
        fc.pre(answer !== undefined);
        expect(solve(problem)).toEqual(answer);
      }),
      { numRuns: 8 },
    );
  });

  it('stay valid under the checker mirrored left to right, with the same axle loads, and in a larger truck', () => {
    let trucks = 0;
    fc.assert(
      fc.property(cases(16), (problem) => {
        const answer = solve(problem);
        fc.pre(answer !== undefined);
        trucks += answer.trucks.length;
        const mirrored = answer.trucks.map((load) => ({
          ...load,
          placements: mirrorLoad(problem, load),
          sideOffsetMm: -load.sideOffsetMm,
        }));
        expect(verifyTruckPack(mirror(problem), { ...answer, trucks: mirrored })).toEqual([]);
        expect(verifyTruckPack(larger(problem), answer)).toEqual([]);
      }),
      { numRuns: 20 },
    );
    expect(trucks).toBeGreaterThanOrEqual(15);
  });
});

const widthOf = (problem: TruckCase, id: string): number => problem.trucks.find((each) => each.id === id)!.innerWidthMm;

function mirrorLoad(problem: TruckCase, load: TruckAnswer) {
  return load.placements.map((each) => {
    const piece = problem.pieces.find(({ id }) => id === each.id)!;
    return { ...each, yMm: widthOf(problem, load.id) - each.yMm - (each.turned ? piece.lengthMm : piece.widthMm) };
  });
}

const mirror = (problem: TruckCase): TruckCase =>
  read({
    ...problem,
    trucks: problem.trucks.map((truck) => ({
      ...truck,
      blocked: truck.blocked.map((each) => ({ ...each, yMm: truck.innerWidthMm - each.yMm - each.widthMm })),
    })),
  });

/** Longer behind and higher, with more payload; the width stays, since the middle would move with it. */
const larger = (problem: TruckCase): TruckCase =>
  read({
    ...problem,
    trucks: problem.trucks.map((truck) => ({
      ...truck,
      innerLengthMm: truck.innerLengthMm + 500,
      innerHeightMm: truck.innerHeightMm + 200,
      payloadKg: (truck.payloadKg ?? 20_000) + 1000,
    })),
  });

describe('the bound', () => {
  it('is no higher where a piece is taken away', () => {
    fc.assert(
      fc.property(cases(20), (problem) => {
        const whole = boundOf(problem, problem.pieces);
        const less = boundOf(problem, problem.pieces.slice(1));
        expect(less.trucks).toBeLessThanOrEqual(whole.trucks);
      }),
      { numRuns: 30 },
    );
  });

  it('knows the widths that pieces can really fill: two of 1,300 mm are never abreast in 2,480', () => {
    const pieces = Array.from({ length: 6 }, (_, index) => ({
      id: `P${index}`,
      lengthMm: 1300,
      widthMm: 1300,
      heightMm: 1000,
      massKg: 50,
      floorOnly: true,
    }));
    const problem = read({ trucks: [{ id: 'T', innerLengthMm: 13_600, innerWidthMm: 2480, innerHeightMm: 2600 }], pieces });
    expect(boundOf(problem, problem.pieces).usedLengthMm).toBe(6 * 1300);
    expect(solveRows(problem)).toMatchObject({ status: 'optimal', trucks: [{ usedLengthMm: 7800 }] });
  });

  it('counts trucks by the mass that the axles leave, not by the payload alone', () => {
    const truck = { ...trailer, maxGrossKg: 26_000 };
    const pieces = Array.from({ length: 20 }, (_, index) => ({
      id: `P${index}`,
      lengthMm: 600,
      widthMm: 600,
      heightMm: 600,
      massKg: 700,
      floorOnly: true,
    }));
    const problem = read({ trucks: [truck, { ...truck, id: 'T2' }], pieces });
    expect(boundOf(problem, problem.pieces)).toMatchObject({ trucks: 2, why: { trucks: { code: 'mass', massKg: 14_000 } } });
  });

  it('on payload is a mass that some place of its centre carries, and a little more is not', () => {
    const truck = read({ trucks: [trailer], pieces: [] }).trucks[0] as Truck;
    const most = mostPayloadKg(truck);
    const carries = (kg: number) =>
      Array.from({ length: 1361 }, (_, at) => outsideLimitsKg(truck, kg, kg * at * 10)).some((outside) => outside < 1);
    expect(carries(most)).toBe(true);
    expect(carries(most + 20)).toBe(false);
  });
});

describe('freight that cannot ride', () => {
  const piece = { lengthMm: 500, widthMm: 500, heightMm: 500, massKg: 10 };

  it('stays behind with its reason, in rows too', () => {
    const problem = read({
      trucks: [trailer],
      pieces: [
        { ...piece, id: 'A', lengthMm: 20_000 },
        { ...piece, id: 'B' },
        { ...piece, id: 'C', massKg: 30_000 },
      ],
    });
    for (const answer of [solveRows(problem)!, solvers[1]![1](problem)!]) {
      expect(answer.leftOver.map((each) => each.id)).toEqual(['A', 'C']);
      expect(answer.leftOver[0]).toEqual({ id: 'A', code: 'too-large', ...piece, lengthMm: 20_000 });
      expect(verifyTruckPack(problem, answer)).toEqual([]);
    }
  });

  it('is the lightest for its floor where the trucks do not hold all', () => {
    const pieces = Array.from({ length: 40 }, (_, index) => ({
      id: `P${index}`,
      lengthMm: 1200,
      widthMm: 1200,
      heightMm: 1500,
      massKg: 100 + 10 * index,
      floorOnly: true,
      maxOnTopKg: 0,
    }));
    const problem = read({ trucks: [{ id: 'T', innerLengthMm: 12_000, innerWidthMm: 2480, innerHeightMm: 2600 }], pieces });
    const answer = solveTruckPack(problem, { seed: 1, rounds: 6 });
    expect(verifyTruckPack(problem, answer)).toEqual([]);
    expect(answer.leftOver.map((each) => each.id)).toEqual(pieces.slice(0, 20).map((each) => each.id));
  });
});
