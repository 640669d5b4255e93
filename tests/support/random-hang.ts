import fc from 'fast-check';
import { type HangCase, readHangCase } from '#hang-statics';

/** A case that must be readable. */
export function caseOf(input: unknown): HangCase {
  const read = readHangCase(input);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

/** Hangs of 1 to 24 boxes for property tests. */
export const arbitraryHang = fc.record({
  tilt: fc.double({ min: -20, max: 20, noNaN: true }),
  grid: fc.record({
    massKg: fc.double({ min: 1, max: 200, noNaN: true }),
    cgBehindMm: fc.integer({ min: -200, max: 800 }),
    cgAboveMm: fc.integer({ min: -100, max: 200 }),
  }),
  front: fc.integer({ min: -300, max: 200 }),
  span: fc.integer({ min: 100, max: 1500 }),
  boxes: fc.array(
    fc.record({
      massKg: fc.double({ min: 5, max: 150, noNaN: true }),
      frontHeightMm: fc.integer({ min: 150, max: 500 }),
      cgBehindMm: fc.integer({ min: 50, max: 400 }),
      cgBelowMm: fc.integer({ min: 50, max: 250 }),
      rearLeverMm: fc.integer({ min: 200, max: 900 }),
      splayDeg: fc.constantFrom<number>(0, 0.5, 1, 2, 4, 8, 10),
    }),
    { minLength: 1, maxLength: 24 },
  ),
});

/** One of those hangs, on one pick or two. */
export function hangFrom(raw: typeof arbitraryHang extends fc.Arbitrary<infer T> ? T : never, picks: 1 | 2 = 2): HangCase {
  return caseOf({
    gravityMps2: 9.80665,
    dynamicFactor: 1.25,
    ...(picks === 2 ? { tiltDownDeg: raw.tilt } : {}),
    grid: {
      ...raw.grid,
      holes: [
        { hole: 'a', behindMm: raw.front, aboveMm: 120 },
        { hole: 'b', behindMm: raw.front + raw.span, aboveMm: 120 },
      ],
    },
    boxes: raw.boxes,
    picks: ['a', 'b'].slice(0, picks).map((hole) => ({ hole, belowHookKg: 4, hoistKg: 50, chainKg: 20 })),
  });
}
