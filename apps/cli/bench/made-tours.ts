import { seededRandom } from '#kernel';
import { type Piece, type Truck, type TruckCase, readTruckCase } from '#truck-pack';

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
const cases: (Shape & { mayRide: boolean })[] = (
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
  mayRide,
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

/** A seeded tour: 40 to 130 pieces for one to four trucks, five places in the unloading order, carts of hangs and cases around them. */
export function madeTour(seed: number): TruckCase {
  const random = seededRandom(seed);
  const pick = <T>(values: readonly T[]): T => values[Math.floor(random() * values.length)]!;
  const truckCount = 1 + Math.floor(random() * 4);
  const kind = pick(kinds);
  const least = 0.55 + 0.4 * random();
  const floorMm2 = (truckCount - 1 + least) * 13_600 * 2480;
  const tourCarts = [pick(carts), pick(carts)];
  const tourCases = Array.from({ length: 5 }, () => pick(cases));
  const pieces: object[] = [];
  let used = 0;
  for (let number = 0; used < 0.86 * floorMm2 || pieces.length < 40; number++) {
    const isCart = random() < 0.55;
    const shape = isCart ? pick(tourCarts) : pick(tourCases);
    const { lengthMm, widthMm, heightMm, mayTurn, floorOnly, maxOnTopKg } = shape;
    const firstOff = isCart ? 2 + Math.floor(random() * 3) : pick([1, 1, 5, 5, 2 + Math.floor(random() * 3)]);
    pieces.push({
      id: `P${String(number).padStart(3, '0')}`,
      lengthMm,
      widthMm,
      heightMm,
      mayTurn,
      floorOnly,
      maxOnTopKg,
      massKg: Math.round((isCart ? 260 : 60) + 120 * random()),
      firstOff,
      ...(isCart ? { group: `Hang ${1 + Math.floor(random() * 6)}` } : {}),
    });
    used += floorOnly ? lengthMm * widthMm : 0.55 * lengthMm * widthMm;
    if (pieces.length >= 130) break;
  }
  const trucks = Array.from({ length: Math.min(4, truckCount + 1) }, (_, index) => ({ ...kind, id: `T${index + 1}` }));
  const read = readTruckCase({ trucks, pieces, minSupport: 0.8, checkAfterStops: random() < 0.5 });
  if (!read.ok) throw new Error(`seed ${seed}: ${JSON.stringify(read.error[0])}`);
  return read.value;
}
