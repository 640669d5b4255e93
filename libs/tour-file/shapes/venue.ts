import { z } from 'zod';
import { mm, name, ratedLoad, sentence, signedMm } from './words.js';

const isTimeZone = (zone: string): boolean => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }) !== undefined;
  } catch {
    return false;
  }
};

/** Where shows are: what the house says of itself. Places in millimetres from the datum, x to the audience, y to the left seen from it. */
export const venue = z.strictObject({
  name,
  city: name.optional(),
  /** Whose law holds there: a code of ISO 3166-1 alpha-2, or of ISO 3166-2 with its part. */
  country: z
    .string()
    .regex(/^[A-Z]{2}(-[A-Z0-9]{1,3})?$/, 'a code such as GB, DE or US-CA')
    .optional(),
  timeZone: name.refine(isTimeZone, 'a zone of the time zone database, such as Europe/London'),
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
