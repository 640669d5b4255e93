import type { HangCase } from './hang-case.js';
import { type Point, bodiesAt, degrees, place, radians, together } from './hang-geometry.js';
import { type PullBack, type PulledHang, solvePullBack } from './pull-back.js';

export interface SwungBack {
  readonly problem: HangCase;
  readonly pull: PullBack;
  readonly hang: PulledHang;
  /** What holds the load at the foot of its last box, forward positive. */
  readonly forceN: number;
  /** How far the load is turned from where it hangs by itself, positive nose down. */
  readonly turnedDeg: number;
}

/**
 * The load below the joint above `position` held by a level force at the foot of the last box's front, so that the joint's faces touch and its rear link
 * carries nothing. The chains incline until they balance that force. undefined where no tilt of a hang on one pick does it.
 */
export function swingBack(closed: HangCase, position: number): SwungBack | undefined {
  const level = bodiesAt(closed, 0);
  const last = closed.boxes.length;
  const foot = place(level[last]!.pivot, 0, -closed.boxes[last - 1]!.frontHeightMm, level[last]!.theta);
  const pivot = level[position]!.pivot;
  const below = together(level.slice(position));
  const whole = together(level);
  const g = closed.gravityMps2;
  const turned = (from: Point, to: Point, tiltDeg: number): Point =>
    place({ xMm: 0, zMm: 0 }, from.xMm - to.xMm, to.zMm - from.zMm, radians(tiltDeg));
  const forceAt = (tiltDeg: number) => {
    const lever = turned(pivot, foot, tiltDeg).zMm;
    return (-turned(pivot, below.cg, tiltDeg).xMm * below.massKg * g) / lever;
  };
  const hole = closed.grid.holes.find((each) => each.hole === closed.picks[0]!.hole)!;
  const at = { xMm: -hole.behindMm, zMm: hole.aboveMm };
  const momentAt = (tiltDeg: number) =>
    -turned(at, whole.cg, tiltDeg).xMm * whole.massKg * g - turned(at, foot, tiltDeg).zMm * forceAt(tiltDeg);
  const tiltDownDeg = closed.tiltDownDeg ?? rootOf(momentAt);
  if (tiltDownDeg === undefined) return undefined;
  const forceN = forceAt(tiltDownDeg);
  const anchored = place({ xMm: 0, zMm: 0 }, -foot.xMm, foot.zMm, radians(tiltDownDeg));
  const pull: PullBack = {
    position: last,
    behindMm: 0,
    belowMm: closed.boxes[last - 1]!.frontHeightMm,
    anchor: { xMm: anchored.xMm + (forceN < 0 ? -1000 : 1000), zMm: anchored.zMm },
    chainMm: 0,
    ...(closed.picks.length === 1 ? { tiltDownDeg } : { tensionN: Math.abs(forceN) }),
  };
  const answer = solvePullBack(closed, pull);
  if (!answer.ok) return undefined;
  const hangs = turned(pivot, below.cg, tiltDownDeg);
  return { problem: closed, pull, hang: answer.value, forceN, turnedDeg: -degrees(Math.atan2(hangs.xMm, -hangs.zMm)) };
}

/** A root between 60 degrees nose up and down, the one nearest to level. */
function rootOf(f: (deg: number) => number): number | undefined {
  const steps = Array.from({ length: 121 }, (_, index) => index - 60);
  const brackets = steps.slice(1).flatMap((to, index) => (f(steps[index]!) * f(to) <= 0 ? [[steps[index]!, to] as const] : []));
  const [found] = brackets.sort((a, b) => Math.abs(a[0] + a[1]) - Math.abs(b[0] + b[1]));
  if (!found) return undefined;
  let [low, high] = found;
  for (let round = 0; round < 80; round++) {
    const middle = (low + high) / 2;
    if (f(low) * f(middle) <= 0) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
