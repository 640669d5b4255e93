import { z } from 'zod';
import { quantity } from '#kernel';
import { bodyMm, degrees, kg, leverMm, mm, name, sentence, signedMm } from '../forms/index.js';

/** Moments of a lift that a step may end in: what cells should read then, and what pulls, is said beside it. */
export const stepMoments = [
  'front pins only',
  'opened on front pins',
  'swung back',
  'driven down',
  'linked and closed',
  'opened and locked',
  'base off',
  'box joined',
  'lock pins drawn',
  'rear link drawn',
  'at trim',
] as const;

/**
 * A step of the lift sequence: a sentence, with where in the work it stands, whether everything waits until it is signed and why, and the moments of the
 * lift that it passes through.
 */
const step = z.union([
  sentence,
  z.strictObject({
    step: sentence,
    at: z.enum(['start', 'first cart', 'further carts', 'each cart', 'end']),
    hold: z.boolean().default(false),
    why: sentence.optional(),
    moments: z.array(z.enum(stepMoments)).max(4).optional(),
  }),
]);

/** A frame between two boxes that do not link to one another by themselves. */
const adapterFrame = z.strictObject({
  id: name,
  /** The model of frame that it is; left out: none is on file, and it is counted by hand. */
  model: name.optional(),
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

/** Where joints close, front and rear: between grid and top box, and between two carts. */
const closing = z.strictObject({
  gridJoint: z.enum(['on the ground', 'in the air']),
  cartJoints: z.enum(['swung back and driven down', 'on the floor at matched tilt', 'box by box']),
});

/** A rigging system: data from the maker's manual, for use only when the safety officer has approved that revision. */
export const riggingSystem = z.strictObject({
  id: name,
  manual: z.strictObject({ title: sentence, revision: name }),
  approved: z.strictObject({ by: name, on: z.string() }).optional(),
  splaySetAt: z.enum(['upper box', 'lower box']),
  jointBetweenCarts: z.enum(['set at the point', 'set in the cart']),
  /** Where nothing is said: to the grid on the ground, between carts swung back and driven down. */
  closing: closing.optional(),
  /** Splay between the boxes of a cart while they stand on it; 0 where nothing is said. */
  closedSplayDeg: degrees.optional(),
  mostBoxes: z.int().min(1).max(60).optional(),
  mostMassKg: kg.optional(),
  /** How far the grid may stand from level while boxes are added, by the maker. */
  mostNoseUpDeg: quantity('legDeg').optional(),
  mostNoseDownDeg: quantity('legDeg').optional(),
  windLimitMps: quantity('speedMps').optional(),
  adapters: z.array(adapterFrame).max(50).optional(),
  /** Tag lines that each hang takes, one model for each line. */
  tagLines: z.array(name).max(10).optional(),
  goingUp: z.array(step).max(100),
  comingDown: z.array(step).max(100),
});

export type RiggingSystem = z.output<typeof riggingSystem>;
export type AdapterFrame = z.output<typeof adapterFrame>;
export type RunningStep = z.output<typeof step>;

/** Where the joints of a system close; of one that does not say, and of none, what is usual (common practice, no published source). */
export const closingOf = (system: RiggingSystem | undefined): z.output<typeof closing> =>
  system?.closing ?? { gridJoint: 'on the ground', cartJoints: 'swung back and driven down' };

/** The position of the body at which the splay of the joint above `position` is set, 0 for the grid; null where no system says. */
export const splaySetAtPosition = (system: RiggingSystem | undefined, position: number): number | null =>
  system === undefined ? null : system.splaySetAt === 'upper box' ? position - 1 : position;
