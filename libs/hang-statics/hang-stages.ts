import type { HangCase } from './hang-case.js';
import { bodiesAt, degrees, together } from './hang-geometry.js';
import { type HangAnswer, solveHang } from './solve-hang.js';

/** How a hang is built: cart loads from the top with the mass of the base that still hangs on each, and how the boxes stand on a cart. */
export interface StagePlan {
  readonly cartLoads: readonly { readonly firstPosition: number; readonly lastPosition: number; readonly baseKg: number }[];
  /** Splay between the boxes of a cart while they stand on it. */
  readonly closedSplayDeg: number;
  /** Tilt of the grid while boxes are added, with two picks; with one the hang comes to rest by itself. */
  readonly liftTiltDownDeg: number;
}

export type StageName = 'front pins only' | 'linked and closed' | 'opened and locked' | 'at trim';

/** One moment of building the hang, as a case of its own with its answer. */
export interface HangStage {
  readonly name: StageName;
  /** 1 for the first cart load; null at trim. */
  readonly cartLoad: number | null;
  readonly problem: HangCase;
  readonly answer: HangAnswer;
}

/** An extreme of one figure over all stages, and the stage in which it stands. */
export interface Extreme {
  readonly value: number;
  readonly stage: number;
}

export interface StageEnvelope {
  readonly picks: readonly { readonly hole: string; readonly mostN: Extreme; readonly leastN: Extreme }[];
  readonly joints: readonly {
    readonly position: number;
    readonly mostLinkN: Extreme;
    readonly leastLinkN: Extreme;
    /** By size, whichever way it points. */
    readonly mostFrontPinN: Extreme;
  }[];
}

export interface StagesAnswer {
  readonly stages: readonly HangStage[];
  readonly envelope: StageEnvelope;
}

/**
 * Every cart load on its way up: hanging by its front pins alone with the base on, turned until its centre of gravity is under the joint; linked
 * with its boxes closed; opened and locked, the base still on; at last the whole hang at trim. Extras hang on their boxes as soon as these are up.
 * The base acts at the centre of gravity of the last box of its load.
 */
export function solveStages(problem: HangCase, plan: StagePlan): StagesAnswer {
  const stages: HangStage[] = plan.cartLoads.flatMap((load, index) =>
    (['front pins only', 'linked and closed', 'opened and locked'] as const).map((name) => {
      const stage = stageCase(problem, plan, load, name);
      return { name, cartLoad: index + 1, problem: stage, answer: solveHang(stage) };
    }),
  );
  stages.push({ name: 'at trim', cartLoad: null, problem, answer: solveHang(problem) });
  return { stages, envelope: envelopeOf(problem, stages) };
}

function stageCase(problem: HangCase, plan: StagePlan, load: StagePlan['cartLoads'][number], name: StageName): HangCase {
  const { firstPosition, lastPosition, baseKg } = load;
  const boxes = problem.boxes.slice(0, lastPosition).map((box, index) => {
    const position = index + 1;
    // The joint of grid and top box has the angle that the grid gives it from the first moment.
    const isClosed = name !== 'opened and locked' && position >= firstPosition && position > 1;
    return isClosed ? { ...box, splayDeg: plan.closedSplayDeg } : box;
  });
  const linked: HangCase = {
    ...problem,
    boxes,
    ...(problem.picks.length === 2 ? { tiltDownDeg: plan.liftTiltDownDeg } : {}),
    extras: [...problem.extras.filter((each) => each.position <= lastPosition), { position: lastPosition, massKg: baseKg }],
  };
  return name === 'front pins only' ? swung(linked, firstPosition) : linked;
}

/** The joint above `position` works as a hinge: what is below it turns until its centre of gravity is under the joint. */
function swung(linked: HangCase, position: number): HangCase {
  const level = bodiesAt(linked, 0);
  const pivot = level[position]!.pivot;
  const below = together(level.slice(position));
  const above = level.slice(0, position);
  // A hinge passes on the weight alone: above it, what hangs below is a mass in the joint.
  const hinged = together([...above, { pivot, theta: 0, massKg: below.massKg, cg: pivot }]);
  const tiltDownDeg = linked.tiltDownDeg ?? hingedTiltDeg(linked, hinged.cg);
  const turnOfLevelDeg = degrees(Math.atan2(below.cg.xMm - pivot.xMm, -(below.cg.zMm - pivot.zMm)));
  // Body angles at tilt 0 turn by `tilt` above the hinge and by `turnOfLevel` below it.
  const splayDeg = linked.boxes[position - 1]!.splayDeg + turnOfLevelDeg - tiltDownDeg;
  return { ...linked, boxes: linked.boxes.map((box, index) => (index === position - 1 ? { ...box, splayDeg } : box)) };
}

function hingedTiltDeg(linked: HangCase, cg: { readonly xMm: number; readonly zMm: number }): number {
  const hole = linked.grid.holes.find((each) => each.hole === linked.picks[0]!.hole)!;
  return degrees(Math.atan2(cg.xMm + hole.behindMm, -(cg.zMm - hole.aboveMm)));
}

function envelopeOf(problem: HangCase, stages: readonly HangStage[]): StageEnvelope {
  return {
    picks: problem.picks.map((pick, index) => {
      const values = stages.map(({ answer }, stage) => ({ value: answer.picks[index]!.reactionN, stage }));
      return { hole: pick.hole, mostN: most(values), leastN: least(values) };
    }),
    joints: problem.boxes.map((_, index) => {
      const joints = stages.flatMap(({ answer }, stage) => (answer.joints[index] ? [{ joint: answer.joints[index], stage }] : []));
      const links = joints.map(({ joint, stage }) => ({ value: joint.rearLinkN, stage }));
      const pins = joints.map(({ joint, stage }) => ({ value: joint.frontPinN, stage }));
      return {
        position: index + 1,
        mostLinkN: most(links),
        leastLinkN: least(links),
        mostFrontPinN: pins.reduce((a, b) => (Math.abs(b.value) > Math.abs(a.value) ? b : a)),
      };
    }),
  };
}

// Of equal values the later stage is named, so that trim stands where nothing before is worse.
const most = (values: readonly Extreme[]): Extreme => values.reduce((a, b) => (b.value >= a.value ? b : a));
const least = (values: readonly Extreme[]): Extreme => values.reduce((a, b) => (b.value <= a.value ? b : a));
