import { z } from 'zod';
import { type BadInput, type Result, isPlainDate, readInput, readPeriod, refuse } from '#kernel';

const day = z.string().refine(isPlainDate, 'a day that exists, written YYYY-MM-DD');
const interval = z.string().refine((text) => {
  const period = readPeriod(text);
  return period !== undefined && period.months + period.days > 0;
}, 'a period of ISO 8601 longer than nothing, such as P6M or P1Y');

export const examinedItem = z.strictObject({
  id: z.string().min(1).max(80),
  intervals: z.array(interval).min(1).max(20),
  examinations: z
    .array(
      z.object({
        on: day,
        outcome: z.enum(['pass', 'fail']),
        satisfies: z.array(interval).max(20).optional(),
        nextLatestOn: day.optional(),
        underScheme: z.boolean().optional(),
        defectBy: day.optional(),
      }),
    )
    .max(1000)
    .default([]),
  events: z.array(z.object({ on: day, what: z.string().max(400) })).max(1000).default([]),
  declaredOn: day.optional(),
});

export const examinationsCaseSchema = z.strictObject({
  window: z.strictObject({ from: day, to: day }),
  items: z.array(examinedItem).max(100_000),
  visitDays: z.array(day).max(10_000).default([]),
});

export type ExaminedItem = z.output<typeof examinedItem>;
export type ExaminationsCase = z.output<typeof examinationsCaseSchema>;

/** Reads a case; the window must not be reversed, ids stand once, an examination satisfies only intervals that its item has. */
export function readExaminationsCase(input: unknown): Result<ExaminationsCase, readonly BadInput[]> {
  const read = readInput(examinationsCaseSchema, input);
  if (!read.ok) return read;
  const faults: BadInput[] = [];
  const { window, items } = read.value;
  if (window.from > window.to) faults.push({ field: 'window.from', value: window.from, wanted: `no later than window.to, ${window.to}` });
  const seen = new Set<string>();
  items.forEach((item, index) => {
    if (seen.has(item.id)) faults.push({ field: `items[${index}].id`, value: item.id, wanted: 'each id only once' });
    seen.add(item.id);
    item.examinations.forEach((examination, at) => {
      const foreign = examination.satisfies?.find((each) => !item.intervals.includes(each));
      if (foreign !== undefined) faults.push({ field: `items[${index}].examinations[${at}].satisfies`, value: foreign, wanted: `intervals of this item: ${item.intervals.join(', ')}` });
    });
  });
  return faults.length === 0 ? read : refuse(faults);
}
