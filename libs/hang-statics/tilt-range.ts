import type { HangCase } from './hang-case.js';
import { restingTiltDeg } from './hang-geometry.js';

type Place = { readonly behindMm: number; readonly aboveMm: number };

/** Tilts (degrees, nose down) between which both picks carry at least the reserve, as a share of the weight of the hang. */
export interface TiltRange {
  readonly reserveShare: number;
  readonly fromDeg: number;
  readonly toDeg: number;
}

/**
 * The tilts at which each of two picks keeps at least `reserveShare` of the weight (0 to below 0.5). A pick carries the share r where the centre of
 * gravity stands under the point that divides the line between the holes by r, so both ends are resting tilts. undefined with one pick. Throws
 * outside [0, 0.5).
 */
export function tiltRange(problem: HangCase, reserveShare: number): TiltRange | undefined {
  if (!(reserveShare >= 0 && reserveShare < 0.5)) throw new RangeError(`a reserve from 0 to below 0.5 of the weight, not ${reserveShare}`);
  const [a, b] = problem.picks.map((pick) => problem.grid.holes.find((each) => each.hole === pick.hole)!);
  if (!a || !b) return undefined;
  const ends = [reserveShare, 1 - reserveShare].map((share) => restingTiltDeg(problem, between(a, b, share)));
  return { reserveShare, fromDeg: Math.min(...ends), toDeg: Math.max(...ends) };
}

const between = (a: Place, b: Place, share: number): Place => ({
  behindMm: a.behindMm + share * (b.behindMm - a.behindMm),
  aboveMm: a.aboveMm + share * (b.aboveMm - a.aboveMm),
});

/** Hung from one hole alone: the tilt that each hole of the grid gives, in the order of the tilts. */
export function holeTilts(problem: HangCase): readonly { readonly hole: string; readonly tiltDownDeg: number }[] {
  return problem.grid.holes
    .map((hole) => ({ hole: hole.hole, tiltDownDeg: restingTiltDeg(problem, hole) }))
    .sort((a, b) => a.tiltDownDeg - b.tiltDownDeg);
}

/** The holes whose tilts stand next below and next above a wanted one; null where the grid has none on that side. */
export interface HoleBracket {
  readonly lower: { readonly hole: string; readonly tiltDownDeg: number } | null;
  readonly upper: { readonly hole: string; readonly tiltDownDeg: number } | null;
}

export function bracketTilt(problem: HangCase, wantedDeg: number): HoleBracket {
  const tilts = holeTilts(problem);
  return {
    lower: tilts.filter((each) => each.tiltDownDeg <= wantedDeg).at(-1) ?? null,
    upper: tilts.find((each) => each.tiltDownDeg >= wantedDeg) ?? null,
  };
}
