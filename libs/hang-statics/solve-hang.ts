import type { HangRemark } from '#trade';
import type { HangCase } from './hang-case.js';
import { type Body, type Point, bodiesAt, degrees, place, restingTiltDeg, together } from './hang-geometry.js';

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
  readonly findings: readonly HangRemark[];
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

function findingsOf(problem: HangCase, answer: Omit<HangAnswer, 'findings'>): HangRemark[] {
  const findings: HangRemark[] = [];
  for (const { hole, reactionN } of answer.picks)
    if (reactionN < 0) findings.push({ code: 'cannot-hang-like-this', subject: `hole ${hole}`, date: null, hole, pushNewtons: -reactionN });
  answer.picks.forEach(({ hole, hookLoadKg }, index) => {
    const rated = problem.picks[index]!.ratedHoistKg;
    if (rated !== undefined && hookLoadKg > rated) findings.push(over('hook', `hole ${hole}`, hole, hookLoadKg, rated));
  });
  for (const { position, rearLinkN } of answer.joints)
    if (rearLinkN < 0) findings.push({ code: 'reversed-link', subject: `joint ${position}`, date: null, position, newtons: -rearLinkN });
  for (const { position, frontPinN } of answer.joints)
    if (frontPinN < 0) findings.push({ code: 'front-pins-push', subject: `joint ${position}`, date: null, position });
  for (const joint of answer.joints) findings.push(...compareJoint(problem.boxes[joint.position - 1]!, joint));
  const { boxes } = problem;
  const silent = boxes.filter((box) => box.ratedRearLinkN === undefined || box.ratedFrontPinN === undefined).length;
  if (silent > 0) findings.push({ code: 'no-rated-value', subject: 'joints', date: null, boxes: silent, of: boxes.length });
  return findings;
}

const compareJoint = (
  { ratedRearLinkN, ratedFrontPinN }: HangCase['boxes'][number],
  { position, rearLinkN, frontPinN }: JointAnswer,
): HangRemark[] =>
  (
    [
      ['rear link', Math.abs(rearLinkN), ratedRearLinkN],
      ['front pin', Math.abs(frontPinN), ratedFrontPinN],
    ] as const
  ).flatMap(([part, value, rated]) =>
    rated !== undefined && value > rated ? [over(part, `joint ${position}`, position, value, rated)] : [],
  );

const over = (
  part: 'hook' | 'rear link' | 'front pin',
  subject: string,
  at: string | number,
  value: number,
  rated: number,
): HangRemark => ({ code: 'over-rated-load', subject, date: null, part, at, value, rated });
