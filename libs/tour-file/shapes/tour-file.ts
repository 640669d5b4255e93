import { z } from 'zod';
import { catalogue } from './catalogue.js';
import { examinationRule, item } from './item.js';
import { loadRule } from './load-rule.js';
import { riggingSystem } from './rigging-system.js';
import { type Tour, booking, tour } from './tour.js';
import { sentence } from '../forms/index.js';

/** One tour with the kit it may draw on: what `npm run plan` reads and the app imports and exports. */
export const tourFileSchema = z.strictObject({
  format: z.literal('cartwright tour 1'),
  note: sentence.optional(),
  catalogue,
  systems: z.array(riggingSystem).max(100).default([]),
  examinationRules: z.array(examinationRule).max(200).default([]),
  loadRules: z.array(loadRule).max(100).default([]),
  items: z.array(item).max(50_000),
  bookings: z.array(booking).max(100_000).default([]),
  tour,
});

export type Kit = Pick<z.output<typeof tourFileSchema>, 'catalogue' | 'systems' | 'examinationRules' | 'loadRules' | 'items'>;
export type TourFile = z.output<typeof tourFileSchema> & { readonly tour: Tour };
/** As it is written: fields with a default may be left out. */
export type WrittenTourFile = z.input<typeof tourFileSchema>;
