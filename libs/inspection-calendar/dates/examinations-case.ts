import { z } from 'zod';
import { type BadInput, type Result, daysBetween, isInterval, isPlainDate, ok, readInput, refuse } from '#kernel';
import { otherChecks } from '#trade';

const latestYear = '2799-12-31';
const day = z.string().refine((text) => isPlainDate(text) && text <= latestYear, 'a day that exists, written YYYY-MM-DD');
const interval = z.string().refine(isInterval, 'a period of ISO 8601 of at least a day and at most 100 years, such as P6M, P1Y or P14D');
const id = z.string().min(1).max(200);

/** One examination of one item; its fields are explained in the README under "Case files". */
export const examinationSchema = z.strictObject({
  on: day,
  outcome: z.enum(['pass', 'fail']),
  /** Left out: the examination of lifting equipment. */
  check: z.enum(otherChecks).optional(),
  satisfies: z.array(interval).max(20).optional(),
  nextLatestOn: day.optional(),
  underScheme: z.boolean().optional(),
  defectBy: day.optional(),
  /** Days of the events that this examination answers: they block no longer. */
  answers: z.array(day).max(200).optional(),
});

export const eventSchema = z.strictObject({ on: day, what: z.string().max(400).default('event') });

export const examinedItemSchema = z.strictObject({
  id,
  /** Empty: no rule says how often; failures, events and defects alone decide. */
  intervals: z.array(interval).max(20),
  examinations: z.array(examinationSchema).max(2000).default([]),
  events: z.array(eventSchema).max(2000).default([]),
  declaredOn: day.optional(),
  /** The visit days on which the item is where the examiner is; left out: all. */
  seenOn: z.array(day).max(5000).optional(),
});

export const windowSchema = z.strictObject({ from: day, to: day });

export const examinationsCaseSchema = z.strictObject({
  window: windowSchema,
  items: z.array(examinedItemSchema).max(500_000),
  visitDays: z.array(day).max(5000).default([]),
});

export type CaseExamination = z.output<typeof examinationSchema>;
declare const wasRead: unique symbol;

/** A case whose dates agree with one another: only `readExaminationsCase` and `makeExaminationsCase` give one. */
export type ExaminationsCase = z.output<typeof examinationsCaseSchema> & { readonly [wasRead]: true };
/** The part of an item's record that decides its dates; more fields may stand beside these. */
export type ExaminedItem = z.output<typeof examinedItemSchema>;
export type JudgedWindow = z.output<typeof windowSchema>;

const mostWindowDays = 7320;

/** Reads an examinations case; every fault is named with field, value and what would be right. */
export function readExaminationsCase(input: unknown): Result<ExaminationsCase, readonly BadInput[]> {
  const read = readInput(examinationsCaseSchema, input);
  if (!read.ok) return read;
  const faults = [...windowFaults(read.value.window), ...idFaults(read.value.items), ...read.value.items.flatMap(dateFaults)];
  return faults.length > 0 ? refuse(faults) : ok(read.value as ExaminationsCase);
}

/** The same reader for callers whose data have a type. */
export const makeExaminationsCase = (input: z.input<typeof examinationsCaseSchema>): Result<ExaminationsCase, readonly BadInput[]> =>
  readExaminationsCase(input);

function windowFaults({ from, to }: JudgedWindow): BadInput[] {
  if (to < from) return [{ field: 'window.to', value: to, wanted: `a day on or after window.from (${from})` }];
  if (daysBetween(from, to) > mostWindowDays) return [{ field: 'window.to', value: to, wanted: 'a window of at most 20 years' }];
  return [];
}

function idFaults(items: readonly ExaminedItem[]): BadInput[] {
  const seen = new Set<string>();
  return items.flatMap((item, index) => {
    if (!seen.has(item.id)) {
      seen.add(item.id);
      return [];
    }
    return [{ field: `items[${index}].id`, value: item.id, wanted: 'an id that no other item has' }];
  });
}

/** A report cannot set a date that lies before its own examination. */
function dateFaults(item: ExaminedItem, index: number): BadInput[] {
  return item.examinations.flatMap((each, number) =>
    (['nextLatestOn', 'defectBy'] as const).flatMap((key) => {
      const value = each[key];
      if (value === undefined || value >= each.on) return [];
      return [{ field: `items[${index}].examinations[${number}].${key}`, value, wanted: `a day on or after the examination (${each.on})` }];
    }),
  );
}
