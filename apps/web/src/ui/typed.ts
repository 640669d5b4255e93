import { z } from 'zod';

/** Readers of what is typed. Each message ends the sentence "wanted ...". */

export const filled = (wanted: string) => z.string().trim().min(1, wanted);

export const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'a day, YYYY-MM-DD');

export const password = z.string().min(10, 'at least 10 characters').max(200, 'at most 200 characters');

interface Limits {
  readonly min?: number;
  /** More than this. */
  readonly over?: number;
  readonly max?: number;
  /** Less than this. */
  readonly under?: number;
  readonly whole?: boolean;
}

/** A number, with a point or a comma; empty is not nought. */
export function figure(wanted: string, limits: Limits = {}) {
  return z.string().transform((typed, context) => read(typed, wanted, limits, context));
}

/** A number, or nothing where it is left empty. */
export function figureOrNothing(wanted: string, limits: Limits = {}) {
  return z.string().transform((typed, context) => (typed.trim() === '' ? undefined : read(typed, wanted, limits, context)));
}

function read(typed: string, wanted: string, limits: Limits, context: z.RefinementCtx): number {
  const text = typed.trim().replace(',', '.');
  const value = Number(text);
  if (text !== '' && Number.isFinite(value) && isInside(value, limits)) return value;
  context.addIssue({ code: 'custom', message: wanted });
  return z.NEVER;
}

const isInside = (value: number, { min, over, max, under, whole }: Limits): boolean =>
  (min === undefined || value >= min) &&
  (over === undefined || value > over) &&
  (max === undefined || value <= max) &&
  (under === undefined || value < under) &&
  (!whole || Number.isInteger(value));

/** Names or serials with blanks or commas between them. */
export const manyNames = (wanted: string) =>
  z
    .string()
    .transform((typed) => typed.split(/[\s,]+/).filter((each) => each !== ''))
    .pipe(z.array(z.string()).min(1, wanted));

/** Words of any kind with commas between them. */
export const manyWords = (wanted: string) =>
  z
    .string()
    .transform((typed) =>
      typed
        .split(',')
        .map((each) => each.trim())
        .filter((each) => each !== ''),
    )
    .pipe(z.array(z.string()).min(1, wanted));

/** Days with commas or blanks between them; none where it is left empty. */
export const days = z
  .string()
  .transform((typed) => typed.split(/[\s,;]+/).filter((each) => each !== ''))
  .pipe(z.array(z.string()).refine((all) => all.every((each) => day.safeParse(each).success), 'days, YYYY-MM-DD, with commas between'));
