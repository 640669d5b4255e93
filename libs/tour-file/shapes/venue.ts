import { z } from 'zod';
import { mm, name, place, ratedLoad, sentence, signedMm, timeZone } from '../forms/index.js';

/** Where shows are, and depots: what the house says of itself. Places in millimetres from the datum, x to the audience, y to the left seen from it. */
export const venue = z.strictObject({
  name,
  city: name.optional(),
  /** Whose law holds there. */
  country: place,
  timeZone,
  /** Where x and y start, in words: "middle of the stage edge". */
  datum: sentence.optional(),
  /** Points of the structure, with what each may carry by whoever answers for it. */
  points: z
    .array(z.strictObject({ name, xMm: signedMm, yMm: signedMm, heightMm: mm.optional(), allowed: ratedLoad.optional() }))
    .max(500)
    .default([]),
  roof: z.strictObject({ clearHeightMm: mm.optional(), remark: sentence.optional() }).optional(),
  doors: z
    .array(z.strictObject({ name, widthMm: mm, heightMm: mm }))
    .max(50)
    .default([]),
  dock: z.strictObject({ heightMm: mm.optional(), remark: sentence.optional() }).optional(),
});

export type Venue = z.output<typeof venue>;
