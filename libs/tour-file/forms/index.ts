/** Forms of single values: names, sentences, days, periods, figures with their units. */
import { z } from 'zod';
import { isInterval, isPlainDate, quantity, unseenIn, wantedSeen, wholeQuantity } from '#kernel';
import { isPlaceCode, nearestPlace, placeCodeOf, placeName } from '#trade';

/** Refuses what nobody sees: two names that look the same are the same. */
function mustBeSeen(text: string, context: z.RefinementCtx<string>): void {
  const found = unseenIn(text);
  if (found !== undefined) context.addIssue({ code: 'custom', message: wantedSeen(found) });
}

const trimmed = (text: string): string => text.trim();

/** A serial, a model name, the name of a hang: one line, every character seen; blanks at either end are no part of it, whichever way it comes in. */
export const name = z.string().overwrite(trimmed).min(1).max(80).superRefine(mustBeSeen);

/** As it is stuck or written on a thing. */
export const label = z.string().overwrite(trimmed).max(50).superRefine(mustBeSeen);

export const sentence = z
  .string()
  .max(400)
  .refine((text) => !/[\p{Cc}\p{Zl}\p{Zp}]/u.test(text), 'one line of text');
export const plainDate = z
  .string()
  .refine((text) => isPlainDate(text) && text <= '2799-12-31', 'a day from 1900 to 2799 that exists, written YYYY-MM-DD');
export const period = z.string().refine(isInterval, 'a period of ISO 8601 of at least a day and at most 100 years, such as P6M or P1Y');

export const kg = quantity('massKg');
export const kgOrNone = quantity('massOrNoneKg');
export const mm = quantity('lengthMm');
/** A height of a body that hangs. */
export const bodyMm = quantity('bodyMm');
/** From the front pins to the rear link. */
export const leverMm = quantity('leverMm');
export const signedMm = quantity('offsetMm');
export const wholeMm = wholeQuantity('lengthMm');
export const degrees = quantity('angleDeg');
/** Of a grid: on its edge its holes stand above one another. */
export const tiltDeg = quantity('tiltDeg');
export const count = wholeQuantity('count');

/** A rated load in the unit it is stated in; short ton (2,000 lb) and tonne are kept apart. */
export const ratedLoad = z.strictObject({
  value: quantity('ratedLoad'),
  unit: z.enum(['kg', 't', 'short ton', 'lb', 'kN']),
  source: sentence.optional(),
});

/** A country or a part of one, by its code of ISO 3166; what was written before there was a list is read as its code. */
export const place = z
  .string()
  .min(1)
  .max(80)
  .overwrite(placeCodeOf)
  .superRefine((text, context) => {
    if (isPlaceCode(text)) return;
    context.addIssue({
      code: 'custom',
      message: `a code of ISO 3166 such as GB, DE or US-CA; the nearest is ${placeName(nearestPlace(text))}`,
    });
  });

/** Of the time zone database. */
export const timeZone = name.refine(isTimeZone, 'a zone of the time zone database, such as Europe/London');

function isTimeZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }) !== undefined;
  } catch {
    return false;
  }
}
