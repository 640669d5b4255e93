import { z } from 'zod';
import { kg, plainDate, sentence } from '../forms/index.js';

/** Whose kit it is that is not the company's own. */
export const lenderKinds = ['lender', 'rigging contractor', 'venue'] as const;

/** A note of delivery or return: the day, the state in which it was handed over, who wrote it. */
const handover = z.strictObject({ on: plainDate, condition: sentence.min(1), by: sentence });

/**
 * Kit of others while it is here. Until its paper was seen, or the safety officer cleared that it is missing, nothing of it is used; after its return never.
 * `ratedLoad` and `massKg` are what its plate says, in words and kilograms.
 */
export const lent = z.strictObject({
  by: z.enum(lenderKinds),
  delivered: handover,
  ratedLoad: sentence.optional(),
  massKg: kg.optional(),
  /** The paper as it was photographed: id and hash of the file, who saw it and when. */
  paper: z.strictObject({ file: z.uuid(), name: sentence, sha256: z.string().length(64), seenBy: sentence, seenOn: plainDate }).optional(),
  cleared: z.strictObject({ by: sentence, on: plainDate, reason: sentence.min(1) }).optional(),
  /** What was out of service as it went is so when it comes again. */
  givenBack: handover.extend({ wasInService: z.boolean() }).optional(),
});

export type Lent = z.output<typeof lent>;
