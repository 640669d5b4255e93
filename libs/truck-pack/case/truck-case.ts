import { z } from 'zod';
import { type BadInput, type Result, ok, quantities, quantity, readInput, refuse, wholeQuantity } from '#kernel';

const name = z.string().min(1).max(120);
const size = wholeQuantity('lengthMm');
const corner = wholeQuantity('offsetMm');
const kg = quantity('vehicleMassKg');
const limitKg = quantity('vehicleLimitKg');
const position = quantity('offsetMm');
const share = quantity('share');

/** What is loaded: a truck in rows; a sea container and an air pallet without rows and without an order of unloading. */
export const loadSpaceKinds = ['truck', 'sea container', 'air pallet'] as const;

export const truckSchema = z.strictObject({
  id: name,
  kind: z.enum(loadSpaceKinds).optional(),
  innerLengthMm: size,
  innerWidthMm: size,
  innerHeightMm: size,
  doorHeightMm: size.optional(),
  payloadKg: limitKg.optional(),
  maxGrossKg: limitKg.optional(),
  maxSideOffsetMm: quantity('clearMm').optional(),
  /** Of the load's centre from the middle of the length, and the most on any metre of it; of what is loaded without rows. */
  maxEndOffsetMm: quantity('clearMm').optional(),
  maxKgPerMetre: limitKg.optional(),
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
          wheelbaseMm: quantity('caseApartMm'),
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
  firstOff: wholeQuantity('count').default(0),
  group: name.optional(),
  maxOnTopKg: kg.optional(),
  floorOnly: z.boolean().default(false),
});

export const truckCaseSchema = z.strictObject({
  trucks: z.array(truckSchema).min(1).max(200),
  pieces: z.array(pieceSchema).max(5_000),
  minSupport: share.default(1),
  checkAfterStops: z.boolean().default(false),
});

export type Truck = z.output<typeof truckSchema>;
export type Piece = z.output<typeof pieceSchema>;

/** A case as data: what bounds and checkers judge by. */
export interface TruckCaseData {
  readonly trucks: readonly Truck[];
  readonly pieces: readonly Piece[];
  readonly minSupport: number;
  readonly checkAfterStops: boolean;
}

declare class Read {
  private readonly isRead: true;
}

/** Made by `readTruckCase` alone, so it has passed every check there; a changed copy is none until it is read again. */
export type TruckCase = TruckCaseData & Read;

/** Reads a case: ids once, kingpin ahead of the axle group, front axle ahead of the rear one, one kind of running gear. */
export function readTruckCase(input: unknown): Result<TruckCase, readonly BadInput[]> {
  const read = readInput(truckCaseSchema, input);
  if (!read.ok) return read;
  const { trucks, pieces } = read.value;
  const faults = [
    ...twice('trucks', trucks),
    ...twice('pieces', pieces),
    ...trucks.flatMap(runningGearFaults),
    ...trucks.flatMap(kindFaults),
  ];
  return faults.length === 0 ? ok(read.value as unknown as TruckCase) : refuse(faults.slice(0, 100));
}

function twice(field: string, of: readonly { readonly id: string }[]): BadInput[] {
  const seen = new Set<string>();
  return of.flatMap(({ id }, index) => {
    const isTwice = seen.has(id);
    seen.add(id);
    return isTwice ? [{ field: `${field}[${index}].id`, value: id, wanted: 'each id only once' }] : [];
  });
}

/** Loaded without rows: whoever unloads it empties it. */
export const isRowless = ({ kind = 'truck' }: Pick<Truck, 'kind'>): boolean => kind !== 'truck';

function kindFaults(truck: Truck, index: number): BadInput[] {
  const field = `trucks[${index}]`;
  if (isRowless(truck))
    return (['semiTrailer', 'rigid'] as const)
      .filter((gear) => truck[gear])
      .map((gear) => ({ field: `${field}.${gear}`, value: 'an object', wanted: `none: a load space of kind ${truck.kind} has no axles` }));
  return (['maxEndOffsetMm', 'maxKgPerMetre'] as const).flatMap((limit) => {
    const value = truck[limit];
    return value === undefined ? [] : [{ field: `${field}.${limit}`, value, wanted: 'only with kind sea container or air pallet' }];
  });
}

/** Axles that share a load by their levers. */
const leastApartMm = quantities.caseApartMm.least;

function runningGearFaults({ semiTrailer, rigid }: Truck, index: number): BadInput[] {
  const field = `trucks[${index}]`;
  return [
    ...(semiTrailer && rigid ? [{ field: `${field}.rigid`, value: 'an object', wanted: 'semiTrailer or rigid, not both' }] : []),
    ...(semiTrailer && semiTrailer.axleGroupXMm - semiTrailer.kingpinXMm < leastApartMm
      ? [
          {
            field: `${field}.semiTrailer.axleGroupXMm`,
            value: semiTrailer.axleGroupXMm,
            wanted: `at least ${leastApartMm} mm behind the kingpin at ${semiTrailer.kingpinXMm}`,
          },
        ]
      : []),
    ...(rigid && rigid.rearAxleXMm - rigid.frontAxleXMm < leastApartMm
      ? [
          {
            field: `${field}.rigid.rearAxleXMm`,
            value: rigid.rearAxleXMm,
            wanted: `at least ${leastApartMm} mm behind the front axle at ${rigid.frontAxleXMm}`,
          },
        ]
      : []),
  ];
}
