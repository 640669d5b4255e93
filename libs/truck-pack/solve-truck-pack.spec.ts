import { type Judged, type TruckCase, type TruckPackAnswer, axleLoads, readTruckCase, solveTruckPack, verifyTruckPack } from '#truck-pack';

function read(input: unknown): TruckCase {
  const result = readTruckCase(input);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const solve = (problem: TruckCase, rounds = 12): TruckPackAnswer => solveTruckPack(problem, { seed: 1, rounds });

const semiTrailer = {
  kingpinXMm: 1600,
  axleGroupXMm: 9300,
  tareKingpinKg: 2100,
  tareAxleGroupKg: 4900,
  maxAxleGroupKg: 24000,
  tractor: {
    wheelbaseMm: 3700,
    kingpinAheadOfDriveMm: 600,
    tareSteerKg: 5400,
    tareDriveKg: 2100,
    maxSteerKg: 8000,
    maxDriveKg: 11500,
    minDriveShareOfGross: 0.25,
  },
};
const trailer = {
  id: 'T1',
  innerLengthMm: 13600,
  innerWidthMm: 2480,
  innerHeightMm: 2700,
  doorHeightMm: 2600,
  payloadKg: 24000,
  maxGrossKg: 40000,
  maxSideOffsetMm: 120,
  semiTrailer,
};

const withIds = (pieces: readonly object[]) => pieces.map((piece, index) => ({ ...piece, id: `P${index}` }));

describe('truck pack', () => {
  it('refuses nothing that fits: three carts abreast in rows to the nose', () => {
    const pieces = Array.from({ length: 12 }, (_, index) => ({
      id: `K${index}`,
      lengthMm: 1150,
      widthMm: 720,
      heightMm: 1540,
      massKg: 300,
      mayTurn: true,
      firstOff: 1,
      floorOnly: true,
      maxOnTopKg: 0,
    }));
    const problem = read({ trucks: [{ ...trailer, semiTrailer: undefined }], pieces });
    const answer = solve(problem, 40);
    expect(answer.leftOver).toEqual([]);
    expect(answer.trucks[0]!.usedLengthMm).toBeLessThanOrEqual(4600);
  });

  it('leaves over with a reason what is larger than any truck', () => {
    const problem = read({
      trucks: [trailer],
      pieces: [
        { id: 'A', lengthMm: 20000, widthMm: 500, heightMm: 500, massKg: 10 },
        { id: 'B', lengthMm: 500, widthMm: 500, heightMm: 500, massKg: 10 },
      ],
    });
    const answer = solve(problem);
    expect(answer.leftOver).toEqual([{ id: 'A', code: 'too-large', lengthMm: 20000, widthMm: 500, heightMm: 500, massKg: 10 }]);
    expect(answer.trucks[0]!.placements.map((each) => each.id)).toEqual(['B']);
  });

  it('still answers with no time at all', () => {
    const problem = read({ trucks: [trailer], pieces: withIds([{ lengthMm: 500, widthMm: 500, heightMm: 500, massKg: 10 }]) });
    let clock = 0;
    const answer = solveTruckPack(problem, { seed: 1, rounds: 100, timeLimitSeconds: 0, now: () => clock++ });
    expect(answer.leftOver).toEqual([]);
    expect(verifyTruckPack(problem, answer)).toEqual([]);
  });

  it('moves the load back until the drive axle is inside its limit', () => {
    const pieces = Array.from({ length: 20 }, (_, index) => ({
      id: `R${index}`,
      lengthMm: 1000,
      widthMm: 1200,
      heightMm: 1000,
      massKg: 1000,
      firstOff: 1,
      floorOnly: true,
      maxOnTopKg: 0,
    }));
    const problem = read({ trucks: [trailer], pieces });
    const answer = solve(problem, 30);
    expect(verifyTruckPack(problem, answer)).toEqual([]);
    expect(answer.leftOver).toEqual([]);
    expect(answer.trucks[0]!.axles.driveKg).toBeLessThanOrEqual(11500);
  });
});

describe('the checker of loads', () => {
  const problem = read({
    trucks: [{ ...trailer, semiTrailer: undefined }],
    pieces: [
      { id: 'A', lengthMm: 1000, widthMm: 800, heightMm: 900, massKg: 100, firstOff: 2, maxOnTopKg: 60 },
      { id: 'B', lengthMm: 1000, widthMm: 800, heightMm: 900, massKg: 50, firstOff: 1 },
    ],
  });
  const truckOf = (placements: { id: string; xMm: number; yMm: number; zMm: number; turned: boolean }[], more: object = {}): Judged => {
    const sideMoment = placements.reduce((sum, each) => sum + (each.id === 'A' ? 100 : 50) * (each.yMm + 400 - 1240), 0);
    return {
      status: 'feasible',
      trucks: [
        {
          id: 'T1',
          placements,
          loadingOrder: placements.map((each) => each.id),
          usedLengthMm: Math.max(...placements.map((each) => each.xMm + 1000)),
          massKg: 150,
          sideOffsetMm: sideMoment / 150,
          axles: {},
          ...more,
        },
      ],
      leftOver: [],
      bound: { trucks: 1, usedLengthMm: 1000 },
    };
  };
  const at = (id: string, xMm: number, yMm: number, zMm: number) => ({ id, xMm, yMm, zMm, turned: false });

  it.each([
    ['accepts a stack in the middle', [at('A', 0, 840, 0), at('B', 0, 840, 900)], []],
    ['refuses an overlap', [at('A', 0, 840, 0), at('B', 500, 840, 0)], ['overlap']],
    ['refuses what stands outside', [at('A', 0, 840, 0), at('B', 13000, 840, 0)], ['outside']],
    ['refuses what floats', [at('A', 0, 840, 0), at('B', 1000, 840, 5)], ['support']],
    ['refuses what hangs over too far', [at('A', 0, 840, 0), at('B', 600, 840, 900)], ['support']],
    ['refuses a piece in the way of an earlier one', [at('B', 0, 840, 0), at('A', 1000, 840, 0)], ['order']],
    ['refuses too much on top, and a later piece on an earlier one', [at('B', 0, 840, 0), at('A', 0, 840, 900)], ['order']],
    ['refuses a load too far to one side', [at('A', 0, 0, 0), at('B', 0, 0, 900)], ['limit']],
  ])('%s', (_what, placements, codes) => {
    expect([...new Set(verifyTruckPack(problem, truckOf(placements)).map((each) => each.code))]).toEqual(codes);
  });

  it('refuses a claim that is not true, a piece twice and a piece forgotten', () => {
    const good = truckOf([at('A', 0, 840, 0), at('B', 0, 840, 900)]);
    const codes = (answer: Judged) => verifyTruckPack(problem, answer).map((each) => each.code);
    expect(codes({ ...good, trucks: [{ ...good.trucks[0]!, massKg: 140 }] })).toContain('claim');
    expect(codes({ ...good, leftOver: [{ id: 'A', code: 'no-place' }] })).toContain('count');
    expect(codes({ ...good, trucks: [] })).toContain('count');
    expect(codes({ ...good, status: 'optimal' })).toEqual([]);
    expect(codes({ ...good, bound: { trucks: 2, usedLengthMm: 0 } })).toContain('bound');
  });
});

describe('axle loads', () => {
  it('are those of the worked levers', () => {
    // Levers of a semi-trailer, worked by hand: 24,500 kg at 9000 @ 2.0 m, 8000 @ 6.0 m, 7500 @ 10.5 m.
    const moment = 9000 * 2000 + 8000 * 6000 + 7500 * 10500;
    expect(axleLoads({ semiTrailer: trailer.semiTrailer }, 24500, moment)).toEqual({
      kingpinKg: expect.closeTo(12892.2, 1),
      axleGroupKg: expect.closeTo(18607.8, 1),
      driveKg: expect.closeTo(12901.6, 1),
      steerKg: expect.closeTo(7490.6, 1),
      grossKg: expect.closeTo(39000, 6),
    });
    expect(
      axleLoads(
        { rigid: { frontAxleXMm: -900, rearAxleXMm: 4900, tareFrontKg: 5000, tareRearKg: 3400 } },
        7300,
        3000 * 1500 + 2500 * 3900 + 1800 * 6300,
      ),
    ).toEqual({
      frontKg: expect.closeTo(6755.2, 1),
      rearKg: expect.closeTo(8944.8, 1),
      grossKg: 15700,
    });
  });
});

describe('a malformed load', () => {
  const piece = { id: 'A', lengthMm: 500, widthMm: 500, heightMm: 500, massKg: 10 };
  it.each([
    ['a size of zero', { trucks: [trailer], pieces: [{ ...piece, lengthMm: 0 }] }, 'pieces[0].lengthMm'],
    ['a negative stack limit', { trucks: [trailer], pieces: [{ ...piece, maxOnTopKg: -1 }] }, 'pieces[0].maxOnTopKg'],
    [
      'kingpin and axle group at one place',
      { trucks: [{ ...trailer, semiTrailer: { ...semiTrailer, axleGroupXMm: 1600 } }], pieces: [] },
      'trucks[0].semiTrailer.axleGroupXMm',
    ],
    ['a piece twice', { trucks: [trailer], pieces: [piece, piece] }, 'pieces[1].id'],
    ['5,001 pieces', { trucks: [trailer], pieces: Array.from({ length: 5001 }, (_, index) => ({ ...piece, id: `P${index}` })) }, 'pieces'],
    ['no truck', { trucks: [], pieces: [] }, 'trucks'],
  ])('is refused: %s', (_what, input, field) => {
    const result = readTruckCase(input);
    expect(result.ok ? [] : result.error.map((fault) => fault.field)).toContain(field);
  });
});
