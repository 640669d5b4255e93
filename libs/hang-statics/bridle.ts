import type { CannotHang } from '#trade';

/** A point in space in millimetres: x along, y across, z up. */
export interface SpacePoint {
  readonly xMm: number;
  readonly yMm: number;
  readonly zMm: number;
}

export interface BridleLeg {
  readonly lengthMm: number;
  readonly tensionN: number;
  /** What the leg pulls its anchor sideways with. */
  readonly horizontalN: number;
  /** 90 = vertical. */
  readonly fromHorizontalDeg: number;
}

export type BridleAnswer = { readonly ok: true; readonly legs: readonly BridleLeg[] } | { readonly ok: false; readonly reason: CannotHang };

/** 1 / sin of the angle from the horizontal: what a leg of a symmetric sling carries beside its vertical share. Throws outside (0, 90]. */
export function slingTensionFactor(fromHorizontalDeg: number): number {
  if (!(fromHorizontalDeg > 0 && fromHorizontalDeg <= 90))
    throw new RangeError(`an angle above 0 and up to 90 degrees, not ${fromHorizontalDeg}`);
  return 1 / Math.sin((fromHorizontalDeg * Math.PI) / 180);
}

/**
 * Tensions of two or three legs that hold `loadN` at `hook`: equilibrium of the hook. Two legs must lie in one vertical plane with the hook.
 * "Cannot hang like this" is an answer: a leg would have to push, or the hook would swing.
 */
export function solveBridle(hook: SpacePoint, anchors: readonly SpacePoint[], loadN: number): BridleAnswer {
  const legs = anchors.map((anchor) => {
    const [x, y, z] = [anchor.xMm - hook.xMm, anchor.yMm - hook.yMm, anchor.zMm - hook.zMm];
    const lengthMm = Math.hypot(x, y, z);
    return { lengthMm, x: x / lengthMm, y: y / lengthMm, z: z / lengthMm };
  });
  if (legs.length < 2 || legs.length > 3) return { ok: false, reason: { code: 'bridle-legs' } };
  if (legs.some((leg) => !(leg.z > 1e-9))) return { ok: false, reason: { code: 'anchor-not-above' } };
  const tensions = legs.length === 2 ? twoLegs(legs, loadN) : threeLegs(legs, loadN);
  if (!tensions) return { ok: false, reason: { code: 'hook-would-swing' } };
  if (tensions.some((tension) => tension < -1e-6 * loadN)) return { ok: false, reason: { code: 'leg-would-push' } };
  return {
    ok: true,
    legs: legs.map((leg, index) => ({
      lengthMm: leg.lengthMm,
      tensionN: tensions[index]!,
      horizontalN: tensions[index]! * Math.hypot(leg.x, leg.y),
      fromHorizontalDeg: (Math.asin(leg.z) * 180) / Math.PI,
    })),
  };
}

interface Direction {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

function twoLegs([a, b]: readonly Direction[], loadN: number): number[] | undefined {
  // Horizontal parts must be opposite: a.xy is a negative multiple of b.xy, or both are vertical.
  const cross = a!.x * b!.y - a!.y * b!.x;
  const [ha, hb] = [Math.hypot(a!.x, a!.y), Math.hypot(b!.x, b!.y)];
  if (Math.abs(cross) > 1e-9 || a!.x * b!.x + a!.y * b!.y > 1e-12) return undefined;
  if (ha < 1e-9 && hb < 1e-9) return [loadN / 2, loadN / 2];
  const down = a!.z * hb + b!.z * ha;
  return [(loadN * hb) / down, (loadN * ha) / down];
}

function threeLegs([a, b, c]: readonly Direction[], loadN: number): number[] | undefined {
  const determinant = (p: Direction, q: Direction, r: Direction) =>
    p.x * (q.y * r.z - q.z * r.y) - p.y * (q.x * r.z - q.z * r.x) + p.z * (q.x * r.y - q.y * r.x);
  const whole = determinant(a!, b!, c!);
  if (Math.abs(whole) < 1e-9) return undefined;
  const up = { x: 0, y: 0, z: loadN };
  return [determinant(up, b!, c!) / whole, determinant(a!, up, c!) / whole, determinant(a!, b!, up) / whole];
}
