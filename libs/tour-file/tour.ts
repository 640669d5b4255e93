import { z } from 'zod';
import { loading } from './loading.js';
import { count, degrees, kgOrNone, mm, name, plainDate, sentence, signedMm } from './words.js';

export const hangBox = z.strictObject({ model: name, splayDeg: degrees, serial: name.optional() });

/** A pick: the hole, what hangs in it and what lifts it; a serial only where one is wanted. */
export const pick = z.strictObject({
  hole: name,
  hoist: name,
  hoistSerial: name.optional(),
  shackles: z.array(name).max(10).default([]),
  slings: z.array(name).max(10).default([]),
});

/**
 * One flown array. `boxes` from the top; `splayDeg` is the joint above each box. `goesUp` 1 = among the first to go up.
 * With `mirrorOf` the boxes, picks, grid and tilt are those of that hang and are left out here.
 */
export const hang = z.strictObject({
  id: name,
  mirrorOf: name.optional(),
  grid: name.optional(),
  gridSerial: name.optional(),
  goesUp: z.int().min(1).max(50).default(1),
  tiltDownDeg: degrees.optional(),
  trimHeightMm: mm.max(60_000),
  stage: z.strictObject({ xMm: signedMm, yMm: signedMm, azimuthDeg: z.number().min(-180).max(180).default(0) }).optional(),
  picks: z.array(pick).max(2).default([]),
  boxes: z.array(hangBox).max(60).default([]),
  extras: z
    .array(z.strictObject({ position: count, massKg: kgOrNone, what: sentence }))
    .max(50)
    .default([]),
  loom: name.optional(),
  partLoad: z.enum(['bottom', 'top']).default('bottom'),
});

/** The rule that says what a point load is multiplied by and what share of a rated load may be used. */
export const loadRule = z.strictObject({
  id: name,
  jurisdiction: name,
  title: sentence,
  source: sentence,
  status: z.enum(['found', 'from memory', 'house rule']),
  dynamicFactor: z.number().min(1).max(5),
  usableShareWithPersonsBelow: z.number().positive().max(1),
});

export const show = z.strictObject({
  id: name,
  name,
  venue: name,
  timeZone: name,
  from: plainDate,
  to: plainDate,
  loadRule: name,
  personsBelow: z.boolean().default(true),
  hangs: z.array(hang).max(24),
  loading: loading.optional(),
});

/** Losses per use of one line of loose hardware, or what was counted so far (the shapes of a spares case). */
export const spareSetting = z.strictObject({
  item: name,
  lossPerUse: z.number().min(0).max(1).optional(),
  prior: z.strictObject({ losses: z.number().positive().max(1e6), uses: z.number().positive().max(1e9) }).optional(),
  counted: z.strictObject({ losses: count, uses: z.number().min(0).max(1e9) }).optional(),
  level: z.number().gt(0).lt(1),
  stopsAShow: z.boolean().default(true),
});

export const tour = z.strictObject({
  id: name,
  name,
  depot: name,
  prepFrom: plainDate,
  returnTo: plainDate,
  jurisdictions: z.array(name).min(1).max(20),
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
  /** How much wishes weigh where two plans need equally many box moves; the usual weights where nothing is said. */
  wishes: z.strictObject({ dueSoon: z.number().min(0).max(1e6).optional(), wear: z.number().min(0).max(1e6).optional() }).optional(),
  shows: z.array(show).min(1).max(400),
});

/** A promise of an item (or of some of a batch) to another tour, first to last day. */
export const booking = z.strictObject({ item: name, count: count.optional(), from: plainDate, to: plainDate, tour: name });

export type HangBox = z.output<typeof hangBox>;
export type Pick = z.output<typeof pick>;
export type Hang = z.output<typeof hang>;
export type LoadRule = z.output<typeof loadRule>;
export type Show = z.output<typeof show>;
export type SpareSetting = z.output<typeof spareSetting>;
export type Tour = z.output<typeof tour>;
export type Booking = z.output<typeof booking>;
