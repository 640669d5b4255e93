import { z } from 'zod';
import { type PlainDate, quantities, quantity } from '#kernel';
import { loading } from './loading.js';
import { count, degrees, kgOrNone, mm, name, place, plainDate, ratedLoad, sentence, signedMm, tiltDeg, timeZone } from '../forms/index.js';

const hangBox = z.strictObject({ model: name, splayDeg: degrees, serial: name.optional() });

const steel = { shackles: z.array(name).max(10).default([]), slings: z.array(name).max(10).default([]) };

/**
 * A pick whose point is not above it: legs from the hook of the hoist to their anchors, across the stage and up (mm from that hook). Every leg has the
 * steel of the bridle for itself, or its own where it names any. The highest anchor is at the height of the points.
 */
const bridle = z.strictObject({
  legs: z
    .array(
      z.strictObject({
        xMm: signedMm,
        yMm: signedMm,
        aboveMm: mm,
        /** What the structure may carry at the anchor of this leg, and who said so. */
        structure: ratedLoad.optional(),
        structureBy: sentence.optional(),
        shackles: z.array(name).max(10).optional(),
        slings: z.array(name).max(10).optional(),
      }),
    )
    .min(2)
    .max(3),
  ...steel,
});

/** A pick: the hole, what hangs in it and what lifts it; a serial only where one is wanted. `point` names a point that several picks share. */
const pick = z.strictObject({
  hole: name,
  hoist: name,
  hoistSerial: name.optional(),
  ...steel,
  point: name.optional(),
  /** What the structure may carry at this point, and who said so. */
  structure: ratedLoad.optional(),
  structureBy: sentence.optional(),
  /** The truss or beam of the show that the point is on. */
  beam: name.optional(),
  /** Where the body of the hoist is: at the point, the hook going up and down, or at the grid, climbing its chain. */
  hoistBody: z.enum(['at the point', 'at the grid']).optional(),
  /** Who brings hoist and steel where they are not of this kit: they are then neither booked nor counted. */
  kitBy: z.enum(['rigging contractor', 'venue']).optional(),
  bridle: bridle.optional(),
});

/**
 * A line from a box (or 0, the grid) to an anchor; places in the side plane of the hang. With one pick the wanted tilt is given and the tension solved,
 * with two the tension is given.
 */
const pullBack = z.strictObject({
  position: count,
  behindMm: signedMm,
  belowMm: signedMm,
  /** The anchor from the grid's front pivot: forward (negative: behind) and below. */
  anchorForwardMm: signedMm,
  anchorBelowMm: signedMm,
  /** Chain between grid and point at trim: how far the hang can be drawn aside. */
  chainMm: mm.optional(),
  tiltDownDeg: degrees.optional(),
  tensionN: quantity('tensionN').optional(),
  /** What its anchor may be pulled with, and who said so. */
  structure: ratedLoad.optional(),
  structureBy: sentence.optional(),
  ...steel,
});

/**
 * One flown array. `boxes` from the top; `splayDeg` is the joint above each box. `goesUp` 1 = among the first to go up.
 * With `mirrorOf` the boxes, picks, grid and tilt are those of that hang and are left out here. More than two picks in a line share no load that can
 * be computed.
 */
export const hang = z.strictObject({
  /** Never changes; what people call it is `name`, or the id where nothing is said. */
  id: name,
  name: name.optional(),
  mirrorOf: name.optional(),
  grid: name.optional(),
  gridSerial: name.optional(),
  goesUp: z.int().min(1).max(50).default(1),
  tiltDownDeg: tiltDeg.optional(),
  trimHeightMm: quantity('heightMm'),
  /** What the trim height is measured to: the lowest edge of the hang, the grid (its front pivot, on the top box), the top of the grid. The grid where nothing is said. */
  trimTo: z.enum(['bottom edge', 'grid', 'top']).optional(),
  /** Height of the deck below the hang above the floor that the carts roll on; the floor itself where nothing is said. */
  deckHeightMm: quantity('clearMm').max(quantities.heightMm.most).optional(),
  /** Height of the points above the floor that the carts roll on; what chain is needed follows from it. */
  pointHeightMm: mm.optional(),
  stage: z.strictObject({ xMm: signedMm, yMm: signedMm, azimuthDeg: quantity('turnDeg').default(0) }).optional(),
  /** Tilt of the grid while boxes are added; level where nothing is said. */
  liftTiltDownDeg: tiltDeg.optional(),
  /** Tilts that the aim may ask for on the day. */
  tiltNeeds: z.strictObject({ fromDeg: degrees, toDeg: degrees }).optional(),
  picks: z.array(pick).max(8).default([]),
  pullBack: pullBack.optional(),
  /** Tilt plates and adapters at the grid, one model of frame for each piece; their mass hangs at the grid. */
  frames: z.array(name).max(10).optional(),
  /** What holds the whole hang if a hoist lets go. */
  secondary: z.strictObject(steel).optional(),
  boxes: z.array(hangBox).max(60).default([]),
  extras: z
    .array(z.strictObject({ position: count, massKg: kgOrNone, what: sentence }))
    .max(50)
    .default([]),
  loom: name.optional(),
  partLoad: z.enum(['bottom', 'top']).default('bottom'),
});

const show = z.strictObject({
  id: name,
  name,
  venue: name,
  timeZone,
  from: plainDate,
  to: plainDate,
  loadRule: name,
  personsBelow: z.boolean().default(true),
  /** Loads are moved while people are below. */
  movesOverPersons: z.boolean().optional(),
  /** A use case of the load rule, by its name; left out: the one for the people that are below or moved over. */
  useCase: name.optional(),
  outdoor: z.boolean().optional(),
  /** Where x and y of the stage start, in words that somebody with a tape understands. */
  datum: sentence.optional(),
  /** What is done when the wind goes beyond the limit of the rigging system. */
  windAction: sentence.optional(),
  /** How far any two hangs are to stay from one another; where nothing is said they only may not stand in one another. */
  hangsApartMm: quantity('clearMm').optional(),
  /** Trusses and beams that points are on: heights of their steel, and what each may carry in all, by whom. */
  beams: z
    .array(
      z.strictObject({
        name,
        highSteelMm: mm.optional(),
        lowSteelMm: mm.optional(),
        allowed: ratedLoad.optional(),
        allowedBy: sentence.optional(),
      }),
    )
    .max(50)
    .optional(),
  /** The design of the tour that the hangs follow, by its id; what differs stands in the hangs. */
  design: name.optional(),
  hangs: z.array(hang).max(24),
  loading: loading.optional(),
});

/** Hangs kept by a name and flown at many shows of a tour. */
const design = z.strictObject({ id: name, name, hangs: z.array(hang).max(24) });

/**
 * Losses per use of one line of loose hardware (a model), or what was believed and counted so far (the shapes of a spares case). `counted.through`:
 * the instant up to which counts at return are already in the sum. `level` left out: the level of the trunk alone counts.
 */
const spareSetting = z.strictObject({
  item: name,
  lossPerUse: quantity('share').optional(),
  prior: z.strictObject({ losses: quantity('believedLosses'), uses: quantity('believedUses') }).optional(),
  counted: z.strictObject({ losses: count, uses: quantity('pieceUses'), through: z.iso.datetime({ precision: 3 }).optional() }).optional(),
  level: z.number().gt(0).lt(1).optional(),
  stopsAShow: z.boolean().default(true),
});

export const tour = z.strictObject({
  id: name,
  name,
  depot: name,
  prepFrom: plainDate,
  returnTo: plainDate,
  /** Whose examination rules hold on the way. */
  jurisdictions: z
    .array(place)
    .min(1)
    .max(20)
    .overwrite((places) => [...new Set(places)]),
  visitDays: z.array(plainDate).max(400).default([]),
  trucks: z.array(name).max(40).default([]),
  /** Cases that travel, with their place in the unloading order where it is not that of their kind. */
  freight: z
    .array(z.strictObject({ case: name, firstOff: count.optional() }))
    .max(2000)
    .default([]),
  /** Rules of the road, beside the limits filed with each truck, that the loads are held against. */
  roadRules: z
    .array(z.enum(['US bridge formula']))
    .max(10)
    .optional(),
  spares: z.array(spareSetting).max(100).default([]),
  /** The chance wanted that no line of the hardware trunk runs short on the tour, and what is kept least; left out: each line by its own level. */
  spareTrunk: z.strictObject({ level: z.number().gt(0).lt(1), least: z.enum(['mass', 'cost']).default('mass') }).optional(),
  /** How much wishes weigh where two plans need equally many box moves; the usual weights where nothing is said. */
  wishes: z.strictObject({ dueSoon: quantity('weight').optional(), wear: quantity('weight').optional() }).optional(),
  designs: z.array(design).max(50).optional(),
  shows: z.array(show).min(1).max(400),
});

/** A promise of an item (or of some of a batch) to another tour, first to last day: who holds it by name, and by id where one is known. */
export const booking = z.strictObject({
  item: name,
  count: count.optional(),
  from: plainDate,
  to: plainDate,
  tour: name,
  tourId: name.optional(),
});

export type HangBox = z.output<typeof hangBox>;
export type Pick = z.output<typeof pick>;
export type PullBackSetting = z.output<typeof pullBack>;
export type BridleSetting = z.output<typeof bridle>;
export type TrimTo = NonNullable<Hang['trimTo']>;
export type Hang = z.output<typeof hang>;
export type Show = z.output<typeof show>;
export type Design = z.output<typeof design>;
export type SpareSetting = z.output<typeof spareSetting>;
/**
 * The safety officer's answer for one place that a tour visits and that has no rules on file: whose rules hold there instead. It is on file with the tour
 * and never in a file that comes in: nobody brings one along.
 */
export interface PlaceAnswer {
  readonly place: string;
  /** The place whose rules are taken; they are on file. */
  readonly rulesOf: string;
  readonly because: string;
  readonly decidedBy: string;
  readonly decidedOn: PlainDate;
}

/** `placeAnswers` are of the house, not of the file: the shape that is read knows none. */
export type Tour = z.output<typeof tour> & { readonly placeAnswers?: readonly PlaceAnswer[] };
export type Booking = z.output<typeof booking>;
