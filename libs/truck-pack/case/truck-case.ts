import { z } from 'zod';
import { type BadInput, type Result, readInput, refuse } from '#kernel';

const name = z.string().min(1).max(120);
const size = z.int().positive().max(100_000);
const corner = z.int().min(-100_000).max(100_000);
const kg = z.number().min(0).max(1_000_000);
const limitKg = z.number().positive().max(1_000_000);
const position = z.number().min(-100_000).max(100_000);
const share = z.number().min(0).max(1);

export const truckSchema = z.strictObject({
  id: name,
  innerLengthMm: size,
  innerWidthMm: size,
  innerHeightMm: size,
  doorHeightMm: size.optional(),
  payloadKg: limitKg.optional(),
  maxGrossKg: limitKg.optional(),
  maxSideOffsetMm: z.number().min(0).max(100_000).optional(),
  blocked: z
    .array(z.strictObject({ xMm: corner, yMm: corner, zMm: corner, lengthMm: size, widthMm: size, heightMm: size }))
    .max(200)
    .default([]),
  semiTrailer: z
    .strictObject({
      kingpinXMm: position,
      axleGroupXMm: position,
      tareKingpinKg: kg.default(0),
      tareAxleGroupKg: kg.default(0),
      maxKingpinKg: limitKg.optional(),
      maxAxleGroupKg: limitKg.optional(),
      tractor: z
        .strictObject({
          wheelbaseMm: z.number().positive().max(100_000),
          kingpinAheadOfDriveMm: position,
          tareSteerKg: kg.default(0),
          tareDriveKg: kg.default(0),
          maxSteerKg: limitKg.optional(),
          maxDriveKg: limitKg.optional(),
          minDriveShareOfGross: share.optional(),
          minSteerShareOfGross: share.optional(),
        })
        .optional(),
    })
    .optional(),
  rigid: z
    .strictObject({
      frontAxleXMm: position,
      rearAxleXMm: position,
      tareFrontKg: kg.default(0),
      tareRearKg: kg.default(0),
      maxFrontKg: limitKg.optional(),
      maxRearKg: limitKg.optional(),
      minFrontShareOfGross: share.optional(),
    })
    .optional(),
});

export const pieceSchema = z.strictObject({
  id: name,
  lengthMm: size,
  widthMm: size,
  heightMm: size,
  massKg: kg.default(0),
  mayTurn: z.boolean().default(false),
  firstOff: z.int().min(0).max(1_000_000).default(0),
  group: name.optional(),
  maxOnTopKg: kg.optional(),
  floorOnly: z.boolean().default(false),
});

export const truckCaseSchema = z.strictObject({
  trucks: z.array(truckSchema).min(1).max(200),
  pieces: z.array(pieceSchema).max(5_000),
  minSupport: z.number().min(0).max(1).default(1),
  checkAfterStops: z.boolean().default(false),
});

export type Truck = z.output<typeof truckSchema>;
export type Piece = z.output<typeof pieceSchema>;
export interface TruckCase {
  readonly trucks: readonly Truck[];
  readonly pieces: readonly Piece[];
  readonly minSupport: number;
  readonly checkAfterStops: boolean;
}

/** Reads a case: ids once, kingpin ahead of the axle group, front axle ahead of the rear one, one kind of running gear. */
export function readTruckCase(input: unknown): Result<TruckCase, readonly BadInput[]> {
  const read = readInput(truckCaseSchema, input);
  if (!read.ok) return read;
  const faults: BadInput[] = [];
  const once = (field: string, ids: readonly string[]) =>
    ids.forEach((id, index) => {
      if (faults.length < 100 && ids.indexOf(id) !== index)
        faults.push({ field: `${field}[${index}].id`, value: id, wanted: 'each id only once' });
    });
  once(
    'trucks',
    read.value.trucks.map((each) => each.id),
  );
  const seen = new Set<string>();
  read.value.pieces.forEach(({ id }, index) => {
    if (seen.has(id) && faults.length < 100) faults.push({ field: `pieces[${index}].id`, value: id, wanted: 'each id only once' });
    seen.add(id);
  });
  read.value.trucks.forEach(({ semiTrailer, rigid }, index) => {
    const field = `trucks[${index}]`;
    if (semiTrailer && rigid) faults.push({ field: `${field}.rigid`, value: 'an object', wanted: 'semiTrailer or rigid, not both' });
    if (semiTrailer && semiTrailer.axleGroupXMm <= semiTrailer.kingpinXMm)
      faults.push({
        field: `${field}.semiTrailer.axleGroupXMm`,
        value: semiTrailer.axleGroupXMm,
        wanted: `behind the kingpin at ${semiTrailer.kingpinXMm}`,
      });
    if (rigid && rigid.rearAxleXMm <= rigid.frontAxleXMm)
      faults.push({
        field: `${field}.rigid.rearAxleXMm`,
        value: rigid.rearAxleXMm,
        wanted: `behind the front axle at ${rigid.frontAxleXMm}`,
      });
  });
  return faults.length === 0 ? read : refuse(faults);
}
