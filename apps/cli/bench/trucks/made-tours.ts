import { seededRandom } from '#kernel';
import { type Piece, type Truck, type TruckCase, boundOf, readTruckCase } from '#truck-pack';

type Shape = Pick<Piece, 'lengthMm' | 'widthMm' | 'heightMm' | 'mayTurn' | 'floorOnly' | 'maxOnTopKg'>;

/** Invented shapes of carts and cases; sizes of the kinds that tour, no maker's. */
const carts: Shape[] = [
  [1150, 720, 1540],
  [1210, 760, 1690],
  [1060, 620, 1380],
  [1320, 810, 1750],
].map(([lengthMm, widthMm, heightMm]) => ({
  lengthMm: lengthMm!,
  widthMm: widthMm!,
  heightMm: heightMm!,
  mayTurn: true,
  floorOnly: true,
  maxOnTopKg: 0,
}));
const cases: Shape[] = (
  [
    [1200, 600, 750, 300, true],
    [1200, 800, 900, 400, true],
    [800, 600, 700, 150, true],
    [600, 600, 650, 150, true],
    [1600, 600, 800, 300, false],
    [750, 550, 1250, 0, false],
    [1100, 760, 1150, 250, false],
  ] as const
).map(([lengthMm, widthMm, heightMm, maxOnTopKg, mayRide]) => ({
  lengthMm,
  widthMm,
  heightMm,
  mayTurn: true,
  floorOnly: !mayRide,
  maxOnTopKg,
}));

const semiTrailer: Partial<Truck> = {
  innerLengthMm: 13_600,
  innerWidthMm: 2480,
  innerHeightMm: 2700,
  doorHeightMm: 2600,
  payloadKg: 24_000,
  maxGrossKg: 40_000,
  maxSideOffsetMm: 120,
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
const wheelBoxes = [0, 2280].map((yMm) => ({ xMm: 8300, yMm, zMm: 0, lengthMm: 1400, widthMm: 200, heightMm: 250 }));
const kinds: Partial<Truck>[] = [
  semiTrailer,
  { ...semiTrailer, blocked: [{ xMm: 0, yMm: 0, zMm: 0, lengthMm: 300, widthMm: 2480, heightMm: 400 }] },
  { ...semiTrailer, blocked: wheelBoxes },
  { ...semiTrailer, blocked: [{ xMm: 0, yMm: 0, zMm: 2000, lengthMm: 1200, widthMm: 2480, heightMm: 700 }] },
];

/**
 * A seeded tour: 40 to 130 pieces for one to four trucks, five places in the unloading order, carts of hangs and cases around them. Pieces are added
 * until the bound on length proves that every truck is needed, and fills the last by 2 % to `mostOfLast` (one truck alone: 40 to 70 %).
 */
export function madeTour(seed: number, mostOfLast = 0.25): TruckCase {
  const random = seededRandom(seed);
  const truckCount = 1 + Math.floor(random() * 4);
  const kind = pick(kinds, random);
  const last = truckCount === 1 ? 0.4 + 0.3 * random() : 0.02 + (mostOfLast - 0.02) * random();
  const wantedMm = (truckCount - 1 + last) * 13_600;
  const checkAfterStops = random() < 0.5;
  for (;;) {
    // Other shapes, where 40 pieces of these are too much already or 130 not enough.
    const make = pieceMaker(random, [0.25, 0.5, 0.6, 0.85][truckCount - 1]);
    const pieces: Made[] = [];
    while (pieces.length < 130) {
      pieces.push(make(pieces.length));
      if (pieces.length < 40) continue;
      const made = caseOf(pieces, kind, Math.min(4, truckCount + 1), checkAfterStops);
      const { usedLengthMm } = boundOf(made, made.pieces);
      if (usedLengthMm >= wantedMm && usedLengthMm < wantedMm + 1000) return made;
      if (usedLengthMm >= wantedMm) break;
    }
  }
}

/** Seeded freight of so many pieces, with trucks to spare. */
export function madeFreight(count: number, seed: number): TruckCase {
  const random = seededRandom(seed);
  const make = pieceMaker(random);
  const pieces = Array.from({ length: count }, (_, number) => make(number));
  const used = pieces.reduce((sum, piece) => sum + floorMm2Of(piece), 0);
  return caseOf(pieces, kinds[0]!, Math.min(200, 1 + Math.ceil((1.3 * used) / (13_600 * 2480))), false);
}

type Made = Shape & Pick<Piece, 'id' | 'massKg' | 'firstOff' | 'group'>;

const pick = <T>(values: readonly T[], random: () => number): T => values[Math.floor(random() * values.length)]!;

/** Two kinds of carts and five of cases; carts stand in the middle of the unloading order, cases mostly first or last. */
function pieceMaker(random: () => number, cartShare = 0.55): (number: number) => Made {
  const tourCarts = [pick(carts, random), pick(carts, random)];
  const tourCases = Array.from({ length: 5 }, () => pick(cases, random));
  return (number) => {
    const isCart = random() < cartShare;
    const shape = pick(isCart ? tourCarts : tourCases, random);
    const middle = () => 2 + Math.floor(random() * 3);
    return {
      ...shape,
      id: `P${String(number).padStart(4, '0')}`,
      massKg: Math.round((isCart ? 260 : 60) + 120 * random()),
      firstOff: isCart ? middle() : pick([1, 1, 5, 5, middle()], random),
      ...(isCart ? { group: `Hang ${1 + Math.floor(random() * 6)}` } : {}),
    };
  };
}

/** Floor that a piece takes about: of what may ride on top, a part. */
const floorMm2Of = ({ floorOnly, lengthMm, widthMm }: Made): number => (floorOnly ? 1 : 0.55) * lengthMm * widthMm;

function caseOf(pieces: readonly Made[], kind: Partial<Truck>, truckCount: number, checkAfterStops: boolean): TruckCase {
  const trucks = Array.from({ length: truckCount }, (_, index) => ({ ...kind, id: `T${index + 1}` }));
  const read = readTruckCase({ trucks, pieces, minSupport: 0.8, checkAfterStops });
  if (!read.ok) throw new Error(JSON.stringify(read.error[0]));
  return read.value;
}
