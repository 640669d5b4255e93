import { z } from 'zod';
import { quantity } from '#kernel';
import { bodyMm, count, degrees, kg, kgOrNone, leverMm, mm, name, ratedLoad, sentence, signedMm, wholeMm } from '../forms/index.js';

/** Which pins a joint takes and where each travels. Common practice: two front link pins, one rear link, one lock pin. */
const pinUse = z.strictObject({
  role: z.enum(['front link', 'rear link', 'lock']),
  pin: name,
  count: z.int().min(1).max(20),
  stowed: z.enum(['box', 'cart', 'trunk']),
});

/** It waits for the safety officer: no plan with it is released before it is accepted. */
const unaccepted = z.literal(true).optional();

const boxModel = z.strictObject({
  model: name,
  unaccepted,
  maker: name.optional(),
  system: name,
  massKg: kg,
  frontHeightMm: bodyMm,
  rearHeightMm: mm,
  depthMm: mm,
  widthMm: mm,
  cgBehindMm: signedMm,
  cgBelowMm: signedMm,
  rearLeverMm: leverMm,
  splaysDeg: z.array(degrees).min(1).max(100),
  pins: z.array(pinUse).max(10),
  mayShareCartWith: z.array(name).max(50).optional(),
  ratedRearLinkN: quantity('forceN').optional(),
  ratedFrontPinN: quantity('forceN').optional(),
  ratedSource: sentence.optional(),
});

const gridModel = z.strictObject({
  model: name,
  unaccepted,
  maker: name.optional(),
  system: name,
  massKg: kg,
  cgBehindMm: signedMm,
  cgAboveMm: signedMm,
  holes: z
    .array(z.strictObject({ hole: name, behindMm: signedMm, aboveMm: signedMm }))
    .min(1)
    .max(100),
  splaysDeg: z.array(degrees).min(1).max(100),
  pins: z.array(pinUse).max(10),
  ratedPick: ratedLoad.optional(),
  lengthMm: wholeMm,
  widthMm: wholeMm,
  heightMm: wholeMm,
});

/** What one costs to put into the trunk, in the currency of the house. */
const costEach = quantity('cost').optional();

const hoistModel = z.strictObject({
  model: name,
  unaccepted,
  maker: name.optional(),
  massKg: kg,
  ratedLoad,
  hoistClass: name.optional(),
  /** What the rated load stands for: the maker's rating where nothing is said, or one that is reduced already, for its class or for a use case. */
  ratedFor: z.enum(['maker', 'class', 'use case']).optional(),
  ratedForUseCase: name.optional(),
  chainKgPerM: quantity('chainKgPerM'),
  chainLengthM: quantity('chainM'),
  /** What it takes of the height with its chain run in: the body, and both hooks together. */
  bodyMm: mm.optional(),
  hooksMm: mm.optional(),
  /** What goes with each hoist of this model: its motor cable and chain bag, the cell that reads its load, and the controller that it is run from. */
  motorCable: name.optional(),
  chainBag: name.optional(),
  cell: name.optional(),
  controller: name.optional(),
  costEach,
});

const shackleModel = z.strictObject({
  model: name,
  unaccepted,
  maker: name.optional(),
  size: name,
  massKg: kgOrNone,
  ratedLoad,
  /** From the pin to the bow, inside: what it adds to a line. */
  insideMm: mm.optional(),
  costEach,
});
const slingModel = z.strictObject({
  model: name,
  unaccepted,
  maker: name.optional(),
  lengthMm: mm,
  /** With its adjuster drawn in; left out: it has none. */
  shortestMm: mm.optional(),
  massKg: kgOrNone,
  ratedLoad,
  material: z.enum(['steel wire', 'round sling with steel core', 'textile', 'chain']),
  costEach,
});
const pinModel = z.strictObject({ model: name, unaccepted, maker: name.optional(), size: name.optional(), massKg: kgOrNone, costEach });

/**
 * A frame between two boxes, a tilt plate, an adapter between grids. Its pins are those of its joint to what is above it; the box or grid below brings
 * its own. `onCartMm`: it rides on the cart of the box below it, and makes that load so much higher; left out: it rides in a case.
 */
const frameModel = z.strictObject({
  model: name,
  unaccepted,
  maker: name.optional(),
  system: name,
  massKg: kg,
  pins: z.array(pinUse).max(10),
  ratedLoad: ratedLoad.optional(),
  onCartMm: count.optional(),
  costEach,
});
const cellModel = z.strictObject({
  model: name,
  unaccepted,
  maker: name.optional(),
  massKg: kgOrNone,
  ratedLoad,
  insideMm: mm.optional(),
  costEach,
});

const controlParts = ['controller', 'motor cable', 'control cable', 'handset', 'emergency stop'] as const;
/** What moves hoists and stops them. A controller says how many hoists it runs, and what goes with each: control cables, handset, emergency stop. */
const controlModel = z.strictObject({
  model: name,
  unaccepted,
  maker: name.optional(),
  part: z.enum(controlParts),
  massKg: kgOrNone,
  lengthMm: mm.optional(),
  hoists: z.int().min(1).max(100).optional(),
  with: z
    .array(z.strictObject({ model: name, count: z.int().min(1).max(100) }))
    .max(20)
    .optional(),
  costEach,
});

const aidParts = ['chain bag', 'tag line'] as const;
/** What goes up or is pulled with a hang and lifts nothing. */
const aidModel = z.strictObject({
  model: name,
  unaccepted,
  maker: name.optional(),
  part: z.enum(aidParts),
  massKg: kgOrNone,
  lengthMm: mm.optional(),
  costEach,
});
const loomModel = z.strictObject({ model: name, unaccepted, lengthMm: mm, massKg: kgOrNone, costEach });

const packing = {
  lengthMm: wholeMm,
  widthMm: wholeMm,
  mayTurn: z.boolean().default(true),
  floorOnly: z.boolean().default(false),
  maxOnTopKg: kgOrNone.default(0),
};

/** `heightsMm[n]` is the loaded height with n boxes on the cart, lid included. */
const cartModel = z.strictObject({
  model: name,
  unaccepted,
  capacity: z.int().min(1).max(12),
  carries: z.array(name).max(50).optional(),
  massKg: kg,
  /** The base alone, without poles and lid: what still hangs below the boxes until it is taken off. */
  baseMassKg: kg.optional(),
  ...packing,
  heightsMm: z.array(wholeMm).min(2).max(13),
  poles: count,
  lids: count,
  basePins: z.strictObject({ pin: name, count }).optional(),
});

const caseModel = z.strictObject({
  model: name,
  massKg: kg,
  ...packing,
  heightMm: wholeMm,
  purpose: z.enum(['hoists', 'grids', 'hardware', 'cable', 'amplifiers', 'other']),
});

const axlePosition = quantity('axleMm');
/** One axle: where it stands from the nose, and with which of the loads worked out here it shares equally. */
const axlePlace = z.strictObject({ group: z.enum(['steer', 'drive', 'trailer', 'front', 'rear']), xMm: axlePosition });
const truckModel = z.strictObject({
  model: name,
  /** Left out: a truck, loaded in rows. The others are stowed without rows and emptied at once; their measures are those of the plate or of the carrier's sheet. */
  kind: z.enum(['truck', 'sea container', 'air pallet']).optional(),
  innerLengthMm: wholeMm,
  innerWidthMm: wholeMm,
  innerHeightMm: wholeMm,
  doorHeightMm: wholeMm.optional(),
  payloadKg: kg,
  maxGrossKg: kg.optional(),
  maxSideOffsetMm: mm.optional(),
  /** Of what is stowed without rows: how far the load's centre may be from the middle of the length, and the most on any metre of it. */
  maxEndOffsetMm: mm.optional(),
  maxKgPerMetre: kg.optional(),
  blocked: z
    .array(z.strictObject({ xMm: count, yMm: count, zMm: count, lengthMm: wholeMm, widthMm: wholeMm, heightMm: wholeMm }))
    .max(50)
    .default([]),
  semiTrailer: z
    .strictObject({
      kingpinXMm: axlePosition,
      axleGroupXMm: axlePosition,
      tareKingpinKg: kgOrNone,
      tareAxleGroupKg: kgOrNone,
      maxKingpinKg: kg.optional(),
      maxAxleGroupKg: kg.optional(),
      tractor: z
        .strictObject({
          wheelbaseMm: quantity('wheelbaseMm'),
          kingpinAheadOfDriveMm: signedMm,
          tareSteerKg: kgOrNone,
          tareDriveKg: kgOrNone,
          maxSteerKg: kg.optional(),
          maxDriveKg: kg.optional(),
          minDriveShareOfGross: quantity('share').optional(),
        })
        .optional(),
    })
    .optional(),
  rigid: z
    .strictObject({
      frontAxleXMm: axlePosition,
      rearAxleXMm: axlePosition,
      tareFrontKg: kgOrNone,
      tareRearKg: kgOrNone,
      maxFrontKg: kg.optional(),
      maxRearKg: kg.optional(),
      minFrontShareOfGross: quantity('share').optional(),
    })
    .optional(),
  /** Every axle on its own, front first; wanted where a rule asks for the spans between axles. */
  axles: z.array(axlePlace).min(2).max(20).optional(),
});

/** Model kinds as they are named in files, on screens and in the register. */
export const catalogue = z.strictObject({
  boxes: z.array(boxModel).max(500).default([]),
  grids: z.array(gridModel).max(500).default([]),
  hoists: z.array(hoistModel).max(500).default([]),
  shackles: z.array(shackleModel).max(500).default([]),
  slings: z.array(slingModel).max(500).default([]),
  pins: z.array(pinModel).max(500).default([]),
  looms: z.array(loomModel).max(500).default([]),
  carts: z.array(cartModel).max(500).default([]),
  cases: z.array(caseModel).max(500).default([]),
  trucks: z.array(truckModel).max(500).default([]),
  frames: z.array(frameModel).max(500).default([]),
  cells: z.array(cellModel).max(500).default([]),
  controls: z.array(controlModel).max(500).default([]),
  aids: z.array(aidModel).max(500).default([]),
});

export type BoxModel = z.output<typeof boxModel>;
export type GridModel = z.output<typeof gridModel>;
export type HoistModel = z.output<typeof hoistModel>;
export type ShackleModel = z.output<typeof shackleModel>;
export type SlingModel = z.output<typeof slingModel>;
export type PinModel = z.output<typeof pinModel>;
export type FrameModel = z.output<typeof frameModel>;
export type LoomModel = z.output<typeof loomModel>;
export type CartModel = z.output<typeof cartModel>;
export type CaseModel = z.output<typeof caseModel>;
export type AxlePlace = z.output<typeof axlePlace>;
export type TruckModel = z.output<typeof truckModel>;
export type Catalogue = z.output<typeof catalogue>;
export type RatedLoad = z.output<typeof ratedLoad>;
export type PinUse = z.output<typeof pinUse>;
