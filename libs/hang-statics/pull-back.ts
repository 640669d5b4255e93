import type { CannotHang } from '#trade';
import type { HangCase } from './hang-case.js';
import { type Body, type Point, bodiesAt, degrees, place, radians, together } from './hang-geometry.js';
import type { JointAnswer } from './solve-hang.js';

/**
 * A line from a body (0 = grid, n = box n) to an anchor. Point on the body: `behindMm`, `belowMm` of its front pivot. The anchor is given in the
 * side plane from the grid's front pivot as the hang stands without the line (mm). One pick: `tiltDownDeg` is wanted and the tension is solved.
 * Two picks: `tensionN` is given and the tilt of the case stays, both chains inclined alike. `chainMm` is the chain above the grid: it says how far
 * the hang is drawn aside.
 */
export interface PullBack {
  readonly position: number;
  readonly behindMm: number;
  readonly belowMm: number;
  readonly anchor: Point;
  readonly chainMm: number;
  readonly tiltDownDeg?: number | undefined;
  readonly tensionN?: number | undefined;
}

export interface PullBackPick {
  readonly hole: string;
  readonly verticalN: number;
  readonly horizontalN: number;
  /** Along the inclined chain. */
  readonly alongN: number;
}

export interface PulledHang {
  readonly tiltDownDeg: number;
  readonly bottomAimDownDeg: number;
  readonly tensionN: number;
  /** Where the line holds the hang, and what it pulls it with. */
  readonly line: { readonly at: Point; readonly xN: number; readonly zN: number };
  /** What the line pulls the anchor with: toward the hang. */
  readonly anchorForce: { readonly xN: number; readonly zN: number };
  readonly lineLengthMm: number;
  readonly lineBelowHorizontalDeg: number;
  /** Chains from the vertical; positive when the hang is drawn forward. */
  readonly chainsInclineDeg: number;
  readonly drawnAsideMm: number;
  readonly picks: readonly PullBackPick[];
  readonly joints: readonly JointAnswer[];
}

export type PullBackAnswer = { readonly ok: true; readonly value: PulledHang } | { readonly ok: false; readonly reason: CannotHang };

const cannot = (reason: CannotHang): PullBackAnswer => ({ ok: false, reason });

/**
 * Equilibrium with the line. Vertical chains cannot balance a horizontal pull, so they incline until their horizontal parts do; the hang moves
 * aside with them, which turns the line: iterated to a millionth of a millimetre. Slack tilts without the line do not apply.
 */
export function solvePullBack(problem: HangCase, pull: PullBack): PullBackAnswer {
  const tiltDownDeg = problem.picks.length === 1 ? pull.tiltDownDeg : problem.tiltDownDeg;
  if (tiltDownDeg === undefined) return cannot({ code: 'wants-tilt' });
  if (problem.picks.length === 2 && !(pull.tensionN !== undefined && pull.tensionN >= 0)) return cannot({ code: 'wants-tension' });
  const bodies = bodiesAt(problem, tiltDownDeg);
  const body = bodies[pull.position];
  if (!body) return cannot({ code: 'no-such-box', position: pull.position });
  const at = place(body.pivot, pull.behindMm, -pull.belowMm, body.theta);
  let aside: Point = { xMm: 0, zMm: 0 };
  for (let round = 0; round < 200; round++) {
    const line = { xMm: pull.anchor.xMm - aside.xMm - at.xMm, zMm: pull.anchor.zMm - aside.zMm - at.zMm };
    const lengthMm = Math.hypot(line.xMm, line.zMm);
    if (lengthMm < 1) return cannot({ code: 'anchor-at-point' });
    const direction = { x: line.xMm / lengthMm, z: line.zMm / lengthMm };
    const forces = balance(problem, pull, bodies, tiltDownDeg, at, direction);
    if ('reason' in forces) return cannot(forces.reason);
    const [h, v] = [sum(forces.picks, (each) => each.horizontalN), sum(forces.picks, (each) => each.verticalN)];
    const incline = Math.atan2(-h, v);
    const next = { xMm: pull.chainMm * Math.sin(incline), zMm: pull.chainMm * (1 - Math.cos(incline)) };
    if (Math.hypot(next.xMm - aside.xMm, next.zMm - aside.zMm) < 1e-6)
      return { ok: true, value: pulled(problem, pull, bodies, tiltDownDeg, at, direction, lengthMm, forces, incline, next) };
    aside = next;
  }
  return cannot({ code: 'drawn-too-far' });
}

interface Balance {
  readonly tensionN: number;
  readonly picks: readonly PullBackPick[];
}

function balance(
  problem: HangCase,
  pull: PullBack,
  bodies: readonly Body[],
  tiltDownDeg: number,
  at: Point,
  direction: { readonly x: number; readonly z: number },
): Balance | { readonly reason: CannotHang } {
  const whole = together(bodies);
  const weightN = whole.massKg * problem.gravityMps2;
  const holes = problem.picks.map(({ hole }) => {
    const found = problem.grid.holes.find((each) => each.hole === hole)!;
    return { hole, ...place({ xMm: 0, zMm: 0 }, found.behindMm, found.aboveMm, radians(tiltDownDeg)) };
  });
  const [a, b] = holes;
  // Moment of the line about the first hole for each newton of tension, as x F_z - z F_x.
  const perNewton = (at.xMm - a!.xMm) * direction.z - (at.zMm - a!.zMm) * direction.x;
  const ofWeight = weightN * (whole.cg.xMm - a!.xMm);
  if (!b) {
    if (Math.abs(perNewton) < 1e-9) return { reason: { code: 'line-through-pick' } };
    const tensionN = ofWeight / perNewton;
    if (tensionN < -1e-9) return { reason: { code: 'line-would-push' } };
    return checkedUp({ tensionN, picks: [pickOf(a!.hole, weightN - tensionN * direction.z, -tensionN * direction.x)] });
  }
  const tensionN = pull.tensionN!;
  const up = weightN - tensionN * direction.z;
  if (up <= 0) return { reason: { code: 'line-lifts', picks: 2 } };
  const k = (-tensionN * direction.x) / up;
  const second = (ofWeight - tensionN * perNewton) / (b.xMm - a!.xMm - k * (b.zMm - a!.zMm));
  const first = up - second;
  return { tensionN, picks: [pickOf(a!.hole, first, k * first), pickOf(b.hole, second, k * second)] };
}

const checkedUp = (found: Balance): Balance | { readonly reason: CannotHang } =>
  found.picks[0]!.verticalN > 0 ? found : { reason: { code: 'line-lifts', picks: 1 } };

const pickOf = (hole: string, verticalN: number, horizontalN: number): PullBackPick => ({
  hole,
  verticalN,
  horizontalN,
  alongN: Math.hypot(verticalN, horizontalN) * (verticalN < 0 ? -1 : 1),
});

function pulled(
  problem: HangCase,
  pull: PullBack,
  bodies: readonly Body[],
  tiltDownDeg: number,
  at: Point,
  direction: { readonly x: number; readonly z: number },
  lineLengthMm: number,
  { tensionN, picks }: Balance,
  incline: number,
  aside: Point,
): PulledHang {
  const force = { x: tensionN * direction.x, z: tensionN * direction.z };
  return {
    tiltDownDeg,
    bottomAimDownDeg: degrees(bodies.at(-1)!.theta),
    tensionN,
    line: { at, xN: force.x, zN: force.z },
    anchorForce: { xN: -force.x, zN: -force.z },
    lineLengthMm,
    lineBelowHorizontalDeg: degrees(Math.atan2(-direction.z, Math.abs(direction.x))),
    chainsInclineDeg: degrees(incline),
    drawnAsideMm: aside.xMm,
    picks,
    joints: problem.boxes.map((box, index) => {
      const below = bodies.slice(index + 1);
      const { pivot, theta } = bodies[index + 1]!;
      const hanging = together(below);
      const loadN = hanging.massKg * problem.gravityMps2;
      const reaches = pull.position >= index + 1;
      const [fx, fz] = reaches ? [force.x, force.z] : [0, 0];
      const moment = -(hanging.cg.xMm - pivot.xMm) * loadN + (at.xMm - pivot.xMm) * fz - (at.zMm - pivot.zMm) * fx;
      const rearLinkN = moment / box.rearLeverMm + 0;
      const xN = -rearLinkN * Math.sin(theta) - fx + 0;
      const zN = loadN - rearLinkN * Math.cos(theta) - fz;
      return { position: index + 1, loadN, rearLinkN, frontPins: { xN, zN }, frontPinN: (Math.hypot(xN, zN) / 2) * (zN < 0 ? -1 : 1) };
    }),
  };
}

const sum = <T>(values: readonly T[], of: (value: T) => number): number => values.reduce((total, each) => total + of(each), 0);
