import { z } from 'zod';
import { bodyMm, degrees, kg, leverMm, mm, name, sentence, signedMm } from './words.js';

/** A step of the running order: a sentence, with where in the work it stands and whether everything waits until it is signed. */
const step = z.union([
  sentence,
  z.strictObject({ step: sentence, at: z.enum(['start', 'first cart', 'each cart', 'end']), hold: z.boolean().default(false) }),
]);

/** A frame between two boxes that do not link to one another by themselves. */
const adapterFrame = z.strictObject({
  id: name,
  /** Model above, model below. */
  joins: z.tuple([name, name]),
  massKg: kg,
  frontHeightMm: bodyMm,
  rearHeightMm: mm,
  depthMm: mm,
  cgBehindMm: signedMm,
  cgBelowMm: signedMm,
  rearLeverMm: leverMm,
});

/** A rigging system: data from the maker's manual, for use only when the safety officer has approved that revision. */
export const riggingSystem = z.strictObject({
  id: name,
  manual: z.strictObject({ title: sentence, revision: name }),
  approved: z.strictObject({ by: name, on: z.string() }).optional(),
  splaySetAt: z.enum(['upper box', 'lower box']),
  jointBetweenCarts: z.enum(['set at the point', 'set in the cart']),
  /** Splay between the boxes of a cart while they stand on it; 0 where nothing is said. */
  closedSplayDeg: degrees.optional(),
  mostBoxes: z.int().min(1).max(60).optional(),
  mostMassKg: kg.optional(),
  windLimitMps: z.number().positive().max(100).optional(),
  adapters: z.array(adapterFrame).max(50).optional(),
  goingUp: z.array(step).max(100),
  comingDown: z.array(step).max(100),
});

export type RiggingSystem = z.output<typeof riggingSystem>;
export type AdapterFrame = z.output<typeof adapterFrame>;
export type RunningStep = z.output<typeof step>;
