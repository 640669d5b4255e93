import fc from 'fast-check';
import { type Piece, type Truck, outsideLimitsKg, readTruckCase } from '../case/index.js';
import { outsideLoad } from './check-load.js';
import { LoadSpace, type Placed, type PlacingStyle } from './load-space.js';
import { truckAnswer } from './truck-answer.js';

const plain: PlacingStyle = { nearNose: 0, balance: 0, centred: false, startMm: 0 };

function caseOf(truck: object, pieces: readonly object[]): { truck: Truck; pieces: readonly Piece[] } {
  const read = readTruckCase({
    trucks: [{ id: 'T', innerLengthMm: 30, innerWidthMm: 10, innerHeightMm: 10, ...truck }],
    pieces: pieces.map((each, index) => ({ id: `P${index}`, lengthMm: 4, widthMm: 4, heightMm: 4, massKg: 10, ...each })),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return { truck: read.value.trucks[0]!, pieces: read.value.pieces };
}

/** Loads pieces one after the other; `at` of each, `-` where it found no place. */
function load(truck: object, pieces: readonly object[], style: Partial<PlacingStyle> = {}, minSupport = 1): string[] {
  const made = caseOf(truck, pieces);
  const space = new LoadSpace(made.truck, minSupport, { ...plain, ...style });
  return made.pieces.map((piece) => {
    if (!space.load(piece)) return '-';
    const { x, y, z, turned } = space.placed.at(-1)!;
    return `${x} ${y} ${z}${turned ? ' turned' : ''}`;
  });
}

const meets = (a: number, lengthA: number, b: number, lengthB: number) => a < b + lengthB && b < a + lengthA;
const touching = (a: Placed, b: Placed) => {
  const along = Math.min(a.x + a.along, b.x + b.along) - Math.max(a.x, b.x);
  const across = Math.min(a.y + a.across, b.y + b.across) - Math.max(a.y, b.y);
  return Math.max(0, along) * Math.max(0, across);
};

/** Whether nothing bears more than it may: from the highest down, each passes on its own mass and what it bears by area of contact. */
function bears(placed: readonly Placed[]): boolean {
  const onTop = new Map(placed.map((each) => [each, 0]));
  for (const each of [...placed].sort((a, b) => b.z - a.z)) {
    const under = placed.filter((other) => other.z + other.high === each.z && touching(other, each) > 0);
    const area = under.reduce((sum, other) => sum + touching(other, each), 0);
    for (const other of under)
      onTop.set(other, onTop.get(other)! + ((each.piece.massKg + onTop.get(each)!) * touching(other, each)) / area);
  }
  return placed.every((each) => onTop.get(each)! <= (each.piece.maxOnTopKg ?? Infinity) + 1e-6);
}

/** What the best place costs, by trying every whole millimetre; undefined where there is none. */
function bestByTrying(
  truck: Truck,
  placed: readonly Placed[],
  piece: Piece,
  { nearNose, startMm, grounded }: PlacingStyle,
): number | undefined {
  const high = piece.heightMm;
  const roof = Math.min(truck.innerHeightMm, truck.doorHeightMm ?? Infinity);
  let best: number | undefined;
  for (const turned of piece.mayTurn ? [false, true] : [false]) {
    const [along, across] = turned ? [piece.widthMm, piece.lengthMm] : [piece.lengthMm, piece.widthMm];
    const levels = piece.floorOnly || grounded?.has(piece) ? 0 : roof - high;
    for (let z = 0; z <= levels && z + high <= roof; z++)
      for (let y = 0; y + across <= truck.innerWidthMm; y++)
        for (let x = startMm; x + along <= truck.innerLengthMm; x++) {
          const own: Placed = { piece, x, y, z, along, across, high, turned };
          const cost = x + along + nearNose * x + 1e-3 * Math.min(y, truck.innerWidthMm - y - across) - 1e-4 * z;
          if (best !== undefined && cost >= best) continue;
          // In from the door along its lane, past nothing.
          if (placed.some((each) => meets(each.y, each.across, y, across) && meets(each.z, each.high, z, high) && each.x + each.along > x))
            continue;
          const inTheWay = truck.blocked.some(
            (each) =>
              meets(each.xMm, each.lengthMm, x, along) &&
              meets(each.yMm, each.widthMm, y, across) &&
              meets(each.zMm, each.heightMm, z, high),
          );
          if (inTheWay) continue;
          const area = placed.reduce((sum, each) => sum + (each.z + each.high === z ? touching(each, own) : 0), 0);
          if (z > 0 && area < along * across) continue;
          if (placed.some((each) => each.z === z + high && touching(each, own) > 0)) continue;
          if (bears([...placed, own])) best = cost;
        }
  }
  return best;
}

const size = fc.integer({ min: 2, max: 4 });
const freight = fc.array(
  fc.record({
    lengthMm: size,
    widthMm: size,
    heightMm: size,
    massKg: fc.integer({ min: 0, max: 9 }),
    mayTurn: fc.boolean(),
    floorOnly: fc.boolean(),
    firstOff: fc.integer({ min: 0, max: 2 }),
    maxOnTopKg: fc.constantFrom(0, 5, 9, 14, 50),
  }),
  { minLength: 3, maxLength: 6 },
);
const trucks = fc.record({
  doorHeightMm: fc.constantFrom(8, 6),
  blocked: fc.constantFrom(
    [],
    [{ xMm: 3, yMm: 0, zMm: 0, lengthMm: 2, widthMm: 1, heightMm: 3 }],
    [{ xMm: 0, yMm: 4, zMm: 4, lengthMm: 8, widthMm: 3, heightMm: 4 }],
  ),
});

describe('a place in a truck', () => {
  it('is the best of all that trying every millimetre finds', () => {
    let riding = 0;
    fc.assert(
      fc.property(
        trucks,
        freight,
        fc.constantFrom(0, 0.7),
        fc.constantFrom(0, 3),
        fc.boolean(),
        (given, pieces, nearNose, startMm, isGrounded) => {
          const { truck, pieces: read } = caseOf({ innerLengthMm: 12, innerWidthMm: 7, innerHeightMm: 7, ...given }, pieces);
          const style = { ...plain, nearNose, startMm, ...(isGrounded ? { grounded: new Set([read[1]!]) } : {}) };
          const space = new LoadSpace(truck, 1, style);
          for (const piece of read) {
            const before = [...space.placed];
            const least = bestByTrying(truck, before, piece, style);
            expect(space.load(piece)).toBe(least !== undefined);
            if (least === undefined) continue;
            const own = space.placed.at(-1)!;
            if (own.z > 0) riding++;
            const cost = own.x + own.along + nearNose * own.x + 1e-3 * Math.min(own.y, 7 - own.y - own.across) - 1e-4 * own.z;
            expect(cost).toBeCloseTo(least, 9);
            const [along, across] = own.turned ? [piece.widthMm, piece.lengthMm] : [piece.lengthMm, piece.widthMm];
            expect([own.piece, own.along, own.across, own.high]).toEqual([piece, along, across, piece.heightMm]);
          }
          const moment = (of: (each: Placed) => number) => space.placed.reduce((sum, each) => sum + each.piece.massKg * of(each), 0);
          expect(space.massKg).toBe(moment(() => 1));
          expect(space.momentKgMm).toBeCloseTo(
            moment(({ x, along }) => x + along / 2),
            6,
          );
          expect(space.sideMomentKgMm).toBeCloseTo(
            moment(({ y, across }) => y + across / 2 - 3.5),
            6,
          );
        },
      ),
      { numRuns: 40, seed: 11, endOnFailure: true },
    );
    expect(riding).toBeGreaterThan(20);
  });

  it.each<[string, object, object[], string[], ...[Partial<PlacingStyle>?, number?]]>([
    ['the second beside the first, at the other wall', { innerHeightMm: 7 }, [{}, {}], ['0 0 0', '0 6 0']],
    ['behind, where what is beside or on top is too much', { innerHeightMm: 7 }, [{}, {}, {}], ['0 0 0', '0 6 0', '4 0 0']],
    ['on top before beside, and beside before behind', {}, [{}, {}, {}, {}, {}], ['0 0 0', '0 0 4', '0 6 0', '0 6 4', '4 0 0']],
    ['not on top of what may bear less', {}, [{ maxOnTopKg: 9 }, { maxOnTopKg: 10 }, {}], ['0 0 0', '0 6 0', '0 6 4']],
    [
      'not where what is below the one below may not bear it',
      { innerHeightMm: 12 },
      [{ maxOnTopKg: 19, widthMm: 8 }, { widthMm: 8 }, { widthMm: 8 }],
      ['0 0 0', '0 0 4', '4 0 0'],
    ],
    ['turned, where that is shorter', {}, [{ lengthMm: 8, widthMm: 6, mayTurn: true }], ['0 0 0 turned']],
    ['not turned, where it may not', {}, [{ lengthMm: 8, widthMm: 6 }], ['0 0 0']],
    ['not turned, where the truck is too narrow', {}, [{ lengthMm: 12, widthMm: 6, mayTurn: true }], ['0 0 0']],
    ['up to the payload, and no more', { payloadKg: 25 }, [{}, {}, {}, { massKg: 5 }], ['0 0 0', '0 0 4', '-', '0 6 0']],
    ['under the door as well as the roof', { doorHeightMm: 7 }, [{ heightMm: 8 }, {}, {}, {}], ['-', '0 0 0', '0 6 0', '4 0 0']],
    [
      'no further than the end',
      { innerLengthMm: 7 },
      [{ lengthMm: 8 }, { widthMm: 8, floorOnly: true }, { widthMm: 8, floorOnly: true }],
      ['-', '0 0 0', '-'],
    ],
    ['no wider than the walls', {}, [{ widthMm: 11 }], ['-']],
    [
      'on the lighter side, where balance counts',
      {},
      [
        { massKg: 50, floorOnly: true, widthMm: 3 },
        { floorOnly: true, widthMm: 3 },
        { floorOnly: true, widthMm: 3 },
      ],
      ['0 0 0', '0 7 0', '4 7 0'],
      { balance: 12 },
    ],
    [
      'near the nose at the price of balance, where balance counts little',
      {},
      [
        { massKg: 50, floorOnly: true, widthMm: 3 },
        { floorOnly: true, widthMm: 3 },
        { floorOnly: true, widthMm: 3 },
      ],
      ['0 0 0', '0 7 0', '0 4 0'],
      { balance: 0.5 },
    ],
    ['in the middle, where it is to be level', {}, [{ floorOnly: true }], ['0 3 0'], { balance: 6, centred: true }],
    [
      'where it levels what stands',
      {},
      [
        { floorOnly: true, massKg: 10, widthMm: 2 },
        { floorOnly: true, massKg: 20, widthMm: 2 },
      ],
      ['0 4 0', '4 4 0'],
      { balance: 6, centred: true },
    ],
    ['behind the free space at the nose', {}, [{}], ['3 0 0'], { startMm: 3 }],
    [
      'on the floor, where it is to stay there, and what rides on it',
      { innerHeightMm: 8 },
      [{ widthMm: 8 }, { widthMm: 8 }],
      ['0 0 0', '0 0 4'],
    ],
    [
      'with a fifth of its base in the air, where four fifths are enough',
      {},
      [{ widthMm: 10 }, { lengthMm: 5, widthMm: 10 }],
      ['0 0 0', '0 0 4'],
      {},
      0.8,
    ],
    ['not with more of it in the air', {}, [{ widthMm: 10 }, { lengthMm: 5, widthMm: 10 }], ['0 0 0', '4 0 0'], {}, 0.81],
    [
      'on something, however little of it',
      {},
      [
        { lengthMm: 2, widthMm: 2, floorOnly: true },
        { lengthMm: 8, widthMm: 10 },
      ],
      ['0 0 0', '0 0 4'],
      {},
      0,
    ],
    [
      'nowhere, rather than under what hangs over, as if to carry it',
      {},
      [
        { lengthMm: 2, widthMm: 10 },
        { lengthMm: 4, widthMm: 10 },
        { lengthMm: 2, widthMm: 10 },
      ],
      ['0 0 0', '0 0 4', '-'],
      {},
      0.5,
    ],
    [
      'behind what is blocked on the floor',
      { blocked: [{ xMm: 0, yMm: 0, zMm: 0, lengthMm: 2, widthMm: 10, heightMm: 1 }] },
      [{}],
      ['2 0 0'],
    ],
    [
      'ahead of what is blocked',
      { blocked: [{ xMm: 4, yMm: 0, zMm: 0, lengthMm: 2, widthMm: 10, heightMm: 1 }] },
      [{}, {}, {}],
      ['0 0 0', '0 0 4', '0 6 0'],
    ],
  ])('goes %s', (...[, truck, pieces, wanted, style, minSupport]) => {
    expect(load(truck, pieces, style, minSupport)).toEqual(wanted);
  });

  it('on the floor where it is to stay there although it may ride', () => {
    const { truck, pieces } = caseOf({}, [{ widthMm: 10 }, { widthMm: 10 }]);
    const space = new LoadSpace(truck, 1, { ...plain, grounded: new Set(pieces) });
    expect(pieces.map((piece) => space.load(piece))).toEqual([true, true]);
    expect(space.placed.map(({ x, z }) => [x, z])).toEqual([
      [0, 0],
      [4, 0],
    ]);
  });

  it('chosen by the caller has to be free of what is blocked, and below roof and door', () => {
    const { truck, pieces } = caseOf({ doorHeightMm: 9, blocked: [{ xMm: 10, yMm: 0, zMm: 0, lengthMm: 2, widthMm: 5, heightMm: 3 }] }, [
      {},
    ]);
    const at = (x: number, y: number, z: number) =>
      new LoadSpace(truck, 1, plain).putAt({ piece: pieces[0]!, x, y, z, along: 4, across: 4, high: 4, turned: false });
    expect([at(0, 0, 5), at(0, 0, 6), at(6, 0, 0), at(7, 0, 0), at(12, 0, 0), at(11, 0, 0), at(7, 5, 0), at(7, 0, 3), at(7, 0, 2)]).toEqual(
      [true, false, true, false, true, false, true, true, false],
    );
  });

  it('looks at places beside what stands, a step for each, and more the more there is to look past', () => {
    const { truck, pieces } = caseOf(
      { innerLengthMm: 100 },
      Array.from({ length: 12 }, () => ({ floorOnly: true })),
    );
    const space = new LoadSpace(truck, 1, plain);
    const looked = pieces.map((piece) => (space.load(piece), space.looked));
    // Both walls at first; then, with one piece standing, the same two and the place beside it.
    expect(looked[0]).toBeCloseTo(2 * 0.05, 9);
    expect(looked[1]! - looked[0]!).toBeCloseTo(3 * 0.07, 9);
    expect(looked[11]).toBeLessThan(10);
  });
});

describe('a whole load', () => {
  it('is outside by what its axles and its balance are, also after each stop', () => {
    const rigid = { frontAxleXMm: -5, rearAxleXMm: 20, tareFrontKg: 5, tareRearKg: 5, maxFrontKg: 18, maxRearKg: 22 };
    fc.assert(
      fc.property(freight, fc.boolean(), fc.constantFrom(undefined, 0, 1), (pieces, afterStops, maxSideOffsetMm) => {
        const { truck, pieces: read } = caseOf(
          { rigid, payloadKg: 40, ...(maxSideOffsetMm === undefined ? {} : { maxSideOffsetMm }) },
          pieces,
        );
        const space = new LoadSpace(truck, 1, plain);
        for (const piece of read) space.load(piece);
        const stops = [...new Set(space.placed.map((each) => each.piece.firstOff))].sort((a, b) => a - b);
        const stages = [-1, ...(afterStops ? stops.slice(0, -1) : [])];
        const outside = stages.reduce((total, stage) => {
          const on = space.placed.filter((each) => each.piece.firstOff > stage);
          const sum = (of: (each: Placed) => number) => on.reduce((kg, each) => kg + each.piece.massKg * of(each), 0);
          const massKg = sum(() => 1);
          const offMm = massKg === 0 ? 0 : Math.abs(sum(({ y, across }) => y + across / 2 - 5)) / massKg;
          const excess = maxSideOffsetMm === undefined ? 0 : Math.max(0, offMm - maxSideOffsetMm);
          return (
            total +
            outsideLimitsKg(
              truck,
              massKg,
              sum(({ x, along }) => x + along / 2),
            ) +
            (excess * massKg) / 1000
          );
        }, 0);
        expect(outsideLoad(space, afterStops)).toBeCloseTo(outside, 9);
      }),
      { numRuns: 100, seed: 12 },
    );
  });

  it('is answered with its figures', () => {
    const { truck, pieces } = caseOf({ rigid: { frontAxleXMm: 0, rearAxleXMm: 20 } }, [{ massKg: 30 }, { massKg: 10, floorOnly: true }]);
    const space = new LoadSpace(truck, 1, plain);
    for (const piece of pieces) space.load(piece);
    // 30 kg 3 mm left of the middle and 10 kg 3 mm right of it; both 2 mm behind the front axle, of 20.
    expect(truckAnswer(space, [...space.placed].reverse())).toEqual({
      id: 'T',
      placements: [
        { id: 'P0', xMm: 0, yMm: 0, zMm: 0, turned: false },
        { id: 'P1', xMm: 0, yMm: 6, zMm: 0, turned: false },
      ],
      loadingOrder: ['P1', 'P0'],
      usedLengthMm: 4,
      massKg: 40,
      sideOffsetMm: -1.5,
      axles: { frontKg: 36, rearKg: 4, grossKg: 40 },
    });
    expect(truckAnswer(new LoadSpace(truck, 1, plain))).toMatchObject({ sideOffsetMm: 0, usedLengthMm: 0, massKg: 0 });
  });
});
