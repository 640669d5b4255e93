import type { HangCase } from './hang-case.js';

/** World: origin at the grid's front pivot, x forward to the audience, z up, millimetres. */
export interface Point {
  readonly xMm: number;
  readonly zMm: number;
}

export const radians = (degrees: number): number => (degrees * Math.PI) / 180;
export const degrees = (angle: number): number => (angle * 180) / Math.PI;

/** A point given `behind` and `above` a body's pivot, when the body is turned nose down by `theta` radians. */
export function place(pivot: Point, behindMm: number, aboveMm: number, theta: number): Point {
  const [u, v] = [-behindMm, aboveMm];
  return { xMm: pivot.xMm + u * Math.cos(theta) + v * Math.sin(theta), zMm: pivot.zMm - u * Math.sin(theta) + v * Math.cos(theta) };
}

/** A box of the hang at its angle. */
export interface Body {
  readonly pivot: Point;
  readonly theta: number;
  readonly massKg: number;
  readonly cg: Point;
}

/** Grid (index 0) and boxes (index = position) at a tilt, extras counted into the body they hang on. */
export function bodiesAt(problem: HangCase, tiltDownDeg: number): readonly Body[] {
  const extraKg = new Array<number>(problem.boxes.length + 1).fill(0);
  for (const { position, massKg } of problem.extras) extraKg[position]! += massKg;
  let theta = radians(tiltDownDeg);
  let pivot: Point = { xMm: 0, zMm: 0 };
  const { grid } = problem;
  const bodies: Body[] = [{ pivot, theta, massKg: grid.massKg + extraKg[0]!, cg: place(pivot, grid.cgBehindMm, grid.cgAboveMm, theta) }];
  problem.boxes.forEach((box, index) => {
    theta += radians(box.splayDeg);
    bodies.push({ pivot, theta, massKg: box.massKg + extraKg[index + 1]!, cg: place(pivot, box.cgBehindMm, -box.cgBelowMm, theta) });
    pivot = place(pivot, 0, -box.frontHeightMm, theta);
  });
  return bodies;
}

/** Mass and centre of gravity of bodies together. */
export function together(bodies: readonly Body[]): { readonly massKg: number; readonly cg: Point } {
  let [massKg, x, z] = [0, 0, 0];
  for (const body of bodies) {
    massKg += body.massKg;
    x += body.massKg * body.cg.xMm;
    z += body.massKg * body.cg.zMm;
  }
  return { massKg, cg: massKg === 0 ? { xMm: 0, zMm: 0 } : { xMm: x / massKg, zMm: z / massKg } };
}

/**
 * The tilt at which the hang, hung from one hole, comes to rest: its centre of gravity under the hole. The whole is rigid,
 * so what is known at tilt 0 is turned: with (u, v) from hole to centre of gravity, u cos + v sin = 0 and the centre below.
 */
export function restingTiltDeg(problem: HangCase, hole: { readonly behindMm: number; readonly aboveMm: number }): number {
  const { cg } = together(bodiesAt(problem, 0));
  const u = cg.xMm + hole.behindMm;
  const v = cg.zMm - hole.aboveMm;
  return degrees(Math.atan2(u, -v));
}
