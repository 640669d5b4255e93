import {
  type Body,
  type HangCase,
  type HangStage,
  type JointAnswer,
  type PulledHang,
  bodiesAt,
  degrees,
  hangOutline,
  place,
  solvePullBack,
  solveStages,
  together,
} from '#hang-statics';
import { type Words, english, tell } from '#words';
import type { HangResult, LiftCase, Point } from '../contract/index.js';

/** The chain of a pick: what it pulls its hole with, and from the vertical, positive where it leans toward the audience going up. */
export interface MomentPick {
  readonly hole: string;
  readonly at: Point;
  readonly alongN: number;
  readonly leansDeg: number;
}

/** The joint above a box or frame: its pins, and its rear link (pulled positive) at its lever. */
export interface MomentJoint {
  readonly position: number;
  readonly isFrame: boolean;
  readonly pins: Point;
  readonly link: Point;
  readonly rearLinkN: number;
  /** Both front pins together, negative where they are pushed. */
  readonly frontPinsN: number;
}

/** One moment of the lift with every force where it acts (mm of the hang's side plane; N). */
export interface LiftMoment {
  readonly name: string;
  /** Counted from 0; null at trim. */
  readonly load: number | null;
  readonly tiltDownDeg: number;
  readonly grid: readonly Point[];
  readonly holes: readonly Point[];
  readonly boxes: readonly { readonly position: number; readonly isFrame: boolean; readonly corners: readonly Point[] }[];
  /** What stands on the floor at this moment while the rest hangs. */
  readonly standing: readonly (readonly Point[])[];
  /** The base of its cart is still under the lowest box. */
  readonly withBase: boolean;
  readonly massKg: number;
  /** What it pulls down with: its weight, and more where it swings. */
  readonly weightN: number;
  readonly centre: Point;
  readonly picks: readonly MomentPick[];
  readonly joints: readonly MomentJoint[];
  /** A level force that holds the load, or the line of a pull-back. */
  readonly pull: { readonly at: Point; readonly xN: number; readonly zN: number } | null;
}

const withoutBase: ReadonlySet<string> = new Set<HangStage['name']>([
  'driven down',
  'base off',
  'box joined',
  'at trim',
  'line half taken up',
  'line taken up',
]);

/** Every moment of the lift in its order, computed again from what the plan was computed from; empty where a plan does not say. */
export function liftMoments(hang: Pick<HangResult, 'lift' | 'stages'>, words: Words = english): readonly LiftMoment[] {
  const { lift } = hang;
  if (!lift) return [];
  const { stages } = solveStages(lift.problem, lift.plan);
  const lifted = stages.map((stage, index) => momentOf(lift, stage, hang.stages[index]?.name ?? stage.name, stages[index + 1]));
  const pulled = lift.pull && solvePullBack(lift.problem, lift.pull);
  return pulled?.ok ? [...lifted, lineTakenUp(lift, pulled.value, tell(words.stages, { code: 'line-taken-up' }))] : lifted;
}

/** The moment at which one pick, or any of them, carries most; of equal ones the last. */
export function worstMoment(moments: readonly LiftMoment[], hole?: string): number {
  const most = (moment: LiftMoment) =>
    Math.max(...moment.picks.filter((each) => hole === undefined || each.hole === hole).map((each) => each.alongN));
  return moments.reduce((worst, each, index) => (most(each) >= most(moments[worst]!) ? index : worst), 0);
}

function momentOf(lift: LiftCase, stage: HangStage, name: string, next: HangStage | undefined): LiftMoment {
  const { answer, problem, held, kick } = stage;
  return {
    ...hangingAt(lift, problem, answer.tiltDownDeg, answer.joints, held?.hang ?? null),
    ...(kick ? { massKg: together(bodiesAt(kick.atRest, answer.tiltDownDeg)).massKg } : {}),
    name,
    load: stage.cartLoad === null ? null : stage.cartLoad - 1,
    standing: stage.name === 'driven down' && next ? standingOf(lift, stage, next) : [],
    withBase: !withoutBase.has(stage.name),
    picks: answer.picks.map(({ hole, reactionN }) => pickAt(problem, answer.tiltDownDeg, hole, reactionN, held?.hang)),
  };
}

function lineTakenUp(lift: LiftCase, pulled: PulledHang, name: string): LiftMoment {
  const { problem } = lift;
  return {
    ...hangingAt(lift, problem, pulled.tiltDownDeg, pulled.joints, pulled),
    name,
    load: null,
    standing: [],
    withBase: false,
    picks: pulled.picks.map(({ hole, alongN }) => pickAt(problem, pulled.tiltDownDeg, hole, alongN, pulled)),
  };
}

/** Bodies, joints and the force that holds the hang aside, where one does. */
function hangingAt(lift: LiftCase, problem: HangCase, tiltDownDeg: number, joints: readonly JointAnswer[], pulled: PulledHang | null) {
  const bodies = bodiesAt(problem, tiltDownDeg);
  const outline = outlineOf(lift, problem, tiltDownDeg);
  const { massKg, cg } = together(bodies);
  return {
    tiltDownDeg,
    grid: outline.grid,
    holes: outline.holes.map((each) => each.at),
    boxes: outline.boxes.map(({ corners }, index) => ({ ...named(lift, index), corners })),
    massKg,
    weightN: massKg * problem.gravityMps2,
    centre: cg,
    joints: joints.map((joint, index) => jointAt(lift, problem, bodies, joint, index)),
    pull: pulled ? { at: pulled.line.at, xN: pulled.line.xN, zN: pulled.line.zN } : null,
  };
}

function jointAt(
  lift: LiftCase,
  problem: HangCase,
  bodies: readonly Body[],
  { rearLinkN, frontPinN }: JointAnswer,
  index: number,
): MomentJoint {
  const { pivot, theta } = bodies[index + 1]!;
  const link = place(pivot, problem.boxes[index]!.rearLeverMm, 0, theta);
  return { ...named(lift, index), pins: pivot, link, rearLinkN, frontPinsN: 2 * frontPinN };
}

function pickAt(problem: HangCase, tiltDownDeg: number, hole: string, alongN: number, pulled: PulledHang | undefined): MomentPick {
  const { behindMm, aboveMm } = problem.grid.holes.find((each) => each.hole === hole)!;
  const own = pulled?.picks.find((each) => each.hole === hole);
  const { pivot, theta } = bodiesAt(problem, tiltDownDeg)[0]!;
  return {
    hole,
    at: place(pivot, behindMm, aboveMm, theta),
    alongN,
    leansDeg: own ? degrees(Math.atan2(own.horizontalN, own.verticalN)) : 0,
  };
}

const named = ({ bodies }: LiftCase, index: number) => ({ position: bodies[index]!.position, isFrame: bodies[index]!.isFrame });

const outlineOf = ({ bodies, grid }: LiftCase, problem: HangCase, tiltDownDeg: number) =>
  hangOutline(problem, tiltDownDeg, bodies.slice(0, problem.boxes.length), grid);

/** The load that the hang is driven down onto, where it stands once the joint has closed. */
function standingOf(lift: LiftCase, stage: HangStage, closed: HangStage): readonly (readonly Point[])[] {
  return outlineOf(lift, closed.problem, stage.answer.tiltDownDeg)
    .boxes.slice(stage.problem.boxes.length)
    .map((each) => each.corners);
}
