import { seededRandom } from '#kernel';
import { type TruckCase, readTruckCase } from '#truck-pack';

/** Seeded cases that are valid and that nobody would send: sizes from a millimetre to a hundred metres, nothing that weighs, doors lower than anything, trucks that are too heavy empty. */
export function oddFreight(seed: number): TruckCase {
  const random = seededRandom(seed);
  const one = <T>(...values: readonly T[]): T => values[Math.floor(random() * values.length)]!;
  const maybe = (part: number, fields: () => object): object => (random() < part ? fields() : {});
  const size = () => one(1, 7, 300, 600, 1200, 2480, 2700, 13_600, 99_999, 1 + Math.floor(random() * 3000));
  const kg = () => one(0, 1e-9, 0.1, 50, 300, 24_000, 999_999);
  const share = () => one(0, 1e-9, 0.25, 0.5, 1);
  const semiTrailer = () => ({
    semiTrailer: {
      kingpinXMm: one(-100_000, 0, 1600),
      axleGroupXMm: one(1601, 9300, 100_000),
      tareKingpinKg: kg(),
      tareAxleGroupKg: kg(),
      ...maybe(0.5, () => ({ maxAxleGroupKg: one(1, 8000, 24_000) })),
      ...maybe(0.5, () => ({
        tractor: {
          wheelbaseMm: one(1e-6, 3700),
          kingpinAheadOfDriveMm: one(-600, 0, 600, 99_999),
          maxDriveKg: one(1, 11_500),
          minDriveShareOfGross: share(),
          minSteerShareOfGross: share(),
        },
      })),
    },
  });
  const rigid = () => ({
    rigid: { frontAxleXMm: one(-99_999, -900), rearAxleXMm: one(-899, 4900), maxFrontKg: one(1, 7500), minFrontShareOfGross: share() },
  });
  const place = () => ({ xMm: one(-500, 0, 300, 12_000), yMm: one(-100, 0, 1000), zMm: one(0, 500, 2000) });
  const trucks = Array.from({ length: one(1, 1, 2, 5) }, (_, index) => ({
    id: `T${index}`,
    innerLengthMm: size(),
    innerWidthMm: size(),
    innerHeightMm: size(),
    ...maybe(0.4, () => ({ doorHeightMm: size() })),
    ...maybe(0.4, () => ({ payloadKg: Math.max(1e-9, kg()) })),
    ...maybe(0.3, () => ({ maxGrossKg: Math.max(1e-9, kg()) })),
    ...maybe(0.4, () => ({ maxSideOffsetMm: one(0, 1, 120) })),
    blocked: Array.from({ length: one(0, 0, 1, 3) }, () => ({ ...place(), lengthMm: size(), widthMm: size(), heightMm: size() })),
    ...one(() => ({}), semiTrailer, rigid)(),
  }));
  const kinds = Array.from({ length: 1 + Math.floor(4 * random()) }, () => ({
    lengthMm: size(),
    widthMm: size(),
    heightMm: size(),
    massKg: kg(),
    mayTurn: one(true, false),
    floorOnly: one(true, false),
    ...maybe(0.6, () => ({ maxOnTopKg: kg() })),
  }));
  const pieces = Array.from({ length: Math.floor(one(0, 1, 12, 30) * random() + random()) }, (_, index) => ({
    ...one(...kinds),
    id: `P${index}`,
    firstOff: one(0, 1, 2, 1_000_000),
  }));
  const read = readTruckCase({ trucks, pieces, minSupport: one(0, 1e-9, 0.8, 1), checkAfterStops: one(true, false) });
  if (!read.ok) throw new Error(JSON.stringify(read.error[0]));
  return read.value;
}
