import type { HangCase } from './hang-case.js';
import { type Body, type Point, bodiesAt, degrees, place, restingTiltDeg, together } from './hang-geometry.js';

export interface HangFinding {
  readonly code: string;
  readonly subject: string;
  readonly date: null;
  readonly sentence: string;
}

export interface PickAnswer {
  readonly hole: string;
  readonly reactionN: number;
  readonly hookLoadKg: number;
  readonly pointLoadN: number;
  readonly pointLoadDynamicN: number;
}

export interface JointAnswer {
  readonly position: number;
  readonly loadN: number;
  readonly rearLinkN: number;
  readonly frontPins: { readonly xN: number; readonly zN: number };
  readonly frontPinN: number;
}

export interface HangAnswer {
  readonly tiltDownDeg: number;
  readonly bottomAimDownDeg: number;
  readonly massKg: number;
  readonly centreOfGravity: Point;
  readonly picks: readonly PickAnswer[];
  /** Two picks only: the tilt at which the rear and the front pick carry nothing. */
  readonly slackAtDeg?: { readonly rearSlack: number; readonly frontSlack: number };
  readonly joints: readonly JointAnswer[];
  readonly findings: readonly HangFinding[];
}

/**
 * Statics of a hang in its side plane: reactions by moments on vertical lines (two picks) or the resting tilt (one pick),
 * then the forces in every joint. All numbers are given even where a reaction is negative.
 */
export function solveHang(problem: HangCase): HangAnswer {
  const holes = problem.picks.map((pick) => problem.grid.holes.find((each) => each.hole === pick.hole)!);
  const tiltDownDeg = problem.tiltDownDeg ?? restingTiltDeg(problem, holes[0]!);
  const bodies = bodiesAt(problem, tiltDownDeg);
  const whole = together(bodies);
  const reactions = reactionsN(problem, holes, bodies, whole);
  const answer = {
    tiltDownDeg,
    bottomAimDownDeg: degrees(bodies.at(-1)!.theta),
    massKg: whole.massKg,
    centreOfGravity: whole.cg,
    picks: problem.picks.map((pick, index) => pickAnswer(problem, pick, reactions[index]!)),
    ...(holes.length === 2 ? { slackAtDeg: slackTilts(problem, holes) } : {}),
    joints: jointsOf(problem, bodies),
  };
  return { ...answer, findings: findingsOf(problem, answer) };
}

type Hole = HangCase['grid']['holes'][number];

function reactionsN(problem: HangCase, holes: readonly Hole[], bodies: readonly Body[], whole: { massKg: number; cg: Point }): number[] {
  const weightN = whole.massKg * problem.gravityMps2;
  if (holes.length === 1) return [weightN];
  const { pivot, theta } = bodies[0]!;
  const [xA, xB] = holes.map((hole) => place(pivot, hole.behindMm, hole.aboveMm, theta).xMm) as [number, number];
  const second = (weightN * (whole.cg.xMm - xA)) / (xB - xA);
  return [weightN - second, second];
}

function pickAnswer(problem: HangCase, pick: HangCase['picks'][number], reactionN: number): PickAnswer {
  const g = problem.gravityMps2;
  const pointLoadN = reactionN + (pick.belowHookKg + pick.hoistKg + pick.chainKg) * g;
  return {
    hole: pick.hole,
    reactionN,
    hookLoadKg: reactionN / g + pick.belowHookKg,
    pointLoadN,
    pointLoadDynamicN: problem.dynamicFactor * pointLoadN,
  };
}

/** Rear slack: the centre of gravity stands under the front hole; front slack: under the rear hole. */
function slackTilts(problem: HangCase, holes: readonly Hole[]): { rearSlack: number; frontSlack: number } {
  const [front, rear] = [...holes].sort((a, b) => a.behindMm - b.behindMm) as [Hole, Hole];
  return { rearSlack: restingTiltDeg(problem, front), frontSlack: restingTiltDeg(problem, rear) };
}

function jointsOf(problem: HangCase, bodies: readonly Body[]): JointAnswer[] {
  const joints: JointAnswer[] = [];
  let [massKg, moment] = [0, 0];
  for (let position = problem.boxes.length; position >= 1; position--) {
    const body = bodies[position]!;
    massKg += body.massKg;
    moment += body.massKg * body.cg.xMm;
    joints.push(
      jointAnswer(
        position,
        massKg * problem.gravityMps2,
        moment / massKg - body.pivot.xMm,
        body.theta,
        problem.boxes[position - 1]!.rearLeverMm,
      ),
    );
  }
  return joints.reverse();
}

/** W below the joint at distance d from its front pivot; the rear link lies along the box's own vertical, `leverMm` behind. */
function jointAnswer(position: number, loadN: number, distanceMm: number, theta: number, leverMm: number): JointAnswer {
  const rearLinkN = (-distanceMm * loadN) / leverMm + 0;
  const xN = -rearLinkN * Math.sin(theta) + 0;
  const zN = loadN - rearLinkN * Math.cos(theta);
  return { position, loadN, rearLinkN, frontPins: { xN, zN }, frontPinN: (Math.hypot(xN, zN) / 2) * (zN < 0 ? -1 : 1) };
}

function findingsOf(problem: HangCase, answer: Omit<HangAnswer, 'findings'>): HangFinding[] {
  const findings: HangFinding[] = [];
  const add = (code: string, subject: string, sentence: string) => findings.push({ code, subject, date: null, sentence });
  for (const pick of answer.picks)
    if (pick.reactionN < 0)
      add(
        'cannot-hang-like-this',
        `hole ${pick.hole}`,
        `Cannot hang like this: the pick at hole ${pick.hole} would have to push with ${newtons(-pick.reactionN)}, and a chain cannot push.`,
      );
  answer.picks.forEach((pick, index) => {
    const rated = problem.picks[index]!.ratedHoistKg;
    if (rated !== undefined && pick.hookLoadKg > rated)
      add(
        'over-rated-load',
        `hole ${pick.hole}`,
        `The hook at hole ${pick.hole} would carry ${kilograms(pick.hookLoadKg)}, more than the rated ${kilograms(rated)}.`,
      );
  });
  const reversed = answer.joints.filter((joint) => joint.rearLinkN < 0);
  for (const joint of reversed)
    add(
      'reversed-link',
      `joint ${joint.position}`,
      `The rear link above box ${joint.position} is pushed together with ${newtons(-joint.rearLinkN)} instead of pulled.`,
    );
  for (const joint of answer.joints.filter((each) => each.frontPinN < 0))
    add(
      'front-pins-push',
      `joint ${joint.position}`,
      `The front pins above box ${joint.position} push instead of carry: the load hangs behind the rear link.`,
    );
  for (const joint of answer.joints) compareJoint(problem.boxes[joint.position - 1]!, joint, add);
  const silent = problem.boxes.filter((box) => box.ratedRearLinkN === undefined || box.ratedFrontPinN === undefined).length;
  if (silent > 0)
    add(
      'no-rated-value',
      'joints',
      `No rated value on file for the joints of ${silent} of ${problem.boxes.length} boxes: their forces cannot be compared.`,
    );
  return findings;
}

function compareJoint(
  box: HangCase['boxes'][number],
  joint: JointAnswer,
  add: (code: string, subject: string, sentence: string) => void,
): void {
  if (box.ratedRearLinkN !== undefined && Math.abs(joint.rearLinkN) > box.ratedRearLinkN)
    add(
      'over-rated-load',
      `joint ${joint.position}`,
      `The rear link above box ${joint.position} carries ${newtons(Math.abs(joint.rearLinkN))}, more than the rated ${newtons(box.ratedRearLinkN)}.`,
    );
  if (box.ratedFrontPinN !== undefined && Math.abs(joint.frontPinN) > box.ratedFrontPinN)
    add(
      'over-rated-load',
      `joint ${joint.position}`,
      `A front pin above box ${joint.position} carries ${newtons(Math.abs(joint.frontPinN))}, more than the rated ${newtons(box.ratedFrontPinN)}.`,
    );
}

const newtons = (value: number): string => `${Math.round(value)} N`;
const kilograms = (value: number): string => `${Math.round(value * 10) / 10} kg`;
