import { z } from 'zod';
import { type BadInput, type Result, ok, quantity, readInput, refuse } from '#kernel';

const name = z.string().min(1).max(80);
const mm = quantity('offsetMm');
const kg = quantity('caseMassKg');
const kgOrNone = quantity('massOrNoneKg');
const steelKg = quantity('steelKg');

/** Rated values are optional: what has none is reported as "no rated value on file". */
export const hangCaseSchema = z.strictObject({
  gravityMps2: quantity('gravityMps2'),
  dynamicFactor: quantity('factor'),
  tiltDownDeg: quantity('tiltDeg').optional(),
  grid: z.strictObject({
    massKg: kgOrNone,
    cgBehindMm: mm,
    cgAboveMm: mm,
    holes: z
      .array(z.strictObject({ hole: name, behindMm: mm, aboveMm: mm }))
      .min(1)
      .max(200),
  }),
  boxes: z
    .array(
      z.strictObject({
        massKg: kg,
        frontHeightMm: quantity('caseBodyMm'),
        cgBehindMm: mm,
        cgBelowMm: mm,
        rearLeverMm: quantity('leverMm'),
        splayDeg: quantity('angleDeg'),
        ratedRearLinkN: quantity('forceN').optional(),
        ratedFrontPinN: quantity('forceN').optional(),
      }),
    )
    .min(1)
    .max(120),
  extras: z
    .array(z.strictObject({ position: z.int().min(0).max(200), massKg: kgOrNone }))
    .max(1000)
    .default([]),
  picks: z
    .array(z.strictObject({ hole: name, belowHookKg: steelKg, hoistKg: steelKg, chainKg: steelKg, ratedHoistKg: kg.optional() }))
    .min(1)
    .max(2),
});

declare const wasRead: unique symbol;

/** A hang whose every part agrees with the others: only `readHangCase` and `makeHangCase` give one. */
export type HangCase = Unread & { readonly [wasRead]: true };

type Unread = z.output<typeof hangCaseSchema>;

/** Reads a case; holes must exist on the grid, two picks need two holes at different distances and a tilt, one pick none. */
export function readHangCase(input: unknown): Result<HangCase, readonly BadInput[]> {
  const read = readInput(hangCaseSchema, input);
  if (!read.ok) return read;
  const faults = faultsIn(read.value);
  return faults.length === 0 ? ok(read.value as HangCase) : refuse(faults);
}

/** The same reader for callers whose data have a type. */
export const makeHangCase = (input: z.input<typeof hangCaseSchema>): Result<HangCase, readonly BadInput[]> => readHangCase(input);

function faultsIn({ grid, picks, tiltDownDeg, extras, boxes }: Unread): BadInput[] {
  const faults: BadInput[] = [];
  const add = (field: string, value: unknown, wanted: string) => faults.push({ field, value: value ?? null, wanted });
  const names = grid.holes.map((each) => each.hole);
  names.forEach((hole, index) => {
    if (names.indexOf(hole) !== index) add(`grid.holes[${index}].hole`, hole, 'each hole only once');
  });
  picks.forEach((pick, index) => {
    if (!names.includes(pick.hole)) add(`picks[${index}].hole`, pick.hole, `a hole of this grid: ${names.join(', ')}`);
  });
  if (picks.length === 2 && tiltDownDeg === undefined)
    add('tiltDownDeg', null, 'the tilt in degrees, positive nose down: with two picks it is given');
  if (picks.length === 1 && tiltDownDeg !== undefined) add('tiltDownDeg', tiltDownDeg, 'left out: with one pick the tilt is solved');
  const [first, second] = picks.map((pick) => grid.holes.find((each) => each.hole === pick.hole));
  if (first && second && picks.length === 2) {
    if (first.behindMm === second.behindMm) add('picks[1].hole', picks[1]!.hole, 'a hole in front of or behind that of the first pick');
    else if (tiltDownDeg !== undefined && Math.abs(spanMm(first, second, tiltDownDeg)) < leastSpanMm)
      add('tiltDownDeg', tiltDownDeg, 'a tilt at which the two picks are not above one another');
  }
  extras.forEach((extra, index) => {
    if (extra.position > boxes.length)
      add(`extras[${index}].position`, extra.position, `0 for the grid or a position from 1 to ${boxes.length}`);
  });
  return faults;
}

/** Picks nearer to one vertical than this cannot share a load that could be told (geometry, no published source). */
const leastSpanMm = 1;

/** How far two holes are apart along the horizontal at a tilt. */
export function spanMm(a: { behindMm: number; aboveMm: number }, b: { behindMm: number; aboveMm: number }, tiltDownDeg: number): number {
  const tilt = (tiltDownDeg * Math.PI) / 180;
  return (b.behindMm - a.behindMm) * Math.cos(tilt) - (b.aboveMm - a.aboveMm) * Math.sin(tilt);
}
