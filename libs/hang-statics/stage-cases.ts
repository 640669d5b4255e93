import type { HangCase } from './hang-case.js';
import { bodiesAt, degrees, together } from './hang-geometry.js';
import type { PullBack } from './pull-back.js';

/** How joints close: data of the rigging system. */
export interface JointClosing {
  /** Grid and top box: front and rear while the first cart stands, or hanging by its front pins first. */
  readonly gridJoint: 'on the ground' | 'in the air';
  /** Between two cart loads, or between all boxes where they go up one by one. */
  readonly cartJoints: 'swung back and driven down' | 'on the floor at matched tilt' | 'box by box';
}

/** How a hang is built: cart loads from the top with the mass of the base that still hangs on each, and how the boxes stand on a cart. */
export interface StagePlan {
  readonly cartLoads: readonly { readonly firstPosition: number; readonly lastPosition: number; readonly baseKg: number }[];
  /** Splay between the boxes of a cart while they stand on it, their faces touching. */
  readonly closedSplayDeg: number;
  /** Tilt of the grid while boxes are added, with two picks; with one the hang comes to rest by itself. */
  readonly liftTiltDownDeg: number;
  readonly closing: JointClosing;
  /** The line of a pull-back, taken up at trim; left out where there is none. */
  readonly pull?: PullBack;
  /** With the moments of coming down; left out in plans made before these were computed. */
  readonly comesDown?: boolean;
}

export type StageName =
  | 'front pins only'
  | 'opened on front pins'
  | 'swung back'
  | 'driven down'
  | 'linked and closed'
  | 'opened and locked'
  | 'base off'
  | 'box joined'
  | 'at trim'
  | 'line half taken up'
  | 'line taken up'
  | 'rear link drawn';

/** What hangs at a moment, up to which box, with or without the base, and which joints are closed. */
interface Moment {
  readonly lastPosition: number;
  readonly baseKg: number;
  readonly isClosed: (position: number) => boolean;
  readonly tiltDownDeg: number;
}

/** A moment as a case of its own. The base acts at the centre of gravity of the last box. Extras hang on their boxes as soon as these are up. */
export function momentCase(problem: HangCase, plan: StagePlan, { lastPosition, baseKg, isClosed, tiltDownDeg }: Moment): HangCase {
  const boxes = problem.boxes
    .slice(0, lastPosition)
    // The joint of grid and top box has the angle that the grid gives it from the first moment.
    .map((box, index) => (index > 0 && isClosed(index + 1) ? { ...box, splayDeg: plan.closedSplayDeg } : box));
  return {
    ...problem,
    boxes,
    ...(problem.picks.length === 2 ? { tiltDownDeg } : {}),
    extras: [
      ...problem.extras.filter((each) => each.position <= lastPosition),
      ...(baseKg > 0 ? [{ position: lastPosition, massKg: baseKg }] : []),
    ],
  };
}

/** The joint above `position` works as a hinge: what is below it turns until its centre of gravity is under the joint. */
export function hinged(linked: HangCase, position: number): HangCase {
  const level = bodiesAt(linked, 0);
  const pivot = level[position]!.pivot;
  const below = together(level.slice(position));
  const above = level.slice(0, position);
  // A hinge passes on the weight alone: above it, what hangs below is a mass in the joint.
  const whole = together([...above, { pivot, theta: 0, massKg: below.massKg, cg: pivot }]);
  const tiltDownDeg = linked.tiltDownDeg ?? underHoleDeg(linked, whole.cg);
  const turnOfLevelDeg = degrees(Math.atan2(below.cg.xMm - pivot.xMm, -(below.cg.zMm - pivot.zMm)));
  // Body angles at tilt 0 turn by `tilt` above the hinge and by `turnOfLevel` below it.
  const splayDeg = linked.boxes[position - 1]!.splayDeg + turnOfLevelDeg - tiltDownDeg;
  return { ...linked, boxes: linked.boxes.map((box, index) => (index === position - 1 ? { ...box, splayDeg } : box)) };
}

function underHoleDeg(linked: HangCase, cg: { readonly xMm: number; readonly zMm: number }): number {
  const hole = linked.grid.holes.find((each) => each.hole === linked.picks[0]!.hole)!;
  return degrees(Math.atan2(cg.xMm + hole.behindMm, -(cg.zMm - hole.aboveMm)));
}

/** The tilt of the grid at which the box above `position` stands as the load on the floor does, so that front and rear close together. */
export const matchedTiltDeg = (problem: HangCase, plan: StagePlan, position: number): number =>
  -problem.boxes.slice(0, position - 1).reduce((sum, box) => sum + box.splayDeg, position > 1 ? plan.closedSplayDeg : 0);
