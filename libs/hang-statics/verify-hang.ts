import type { HangCase } from './hang-case.js';
import type { HangAnswer } from './solve-hang.js';

/**
 * Checks an answer from scratch: every body is placed by its own rotation matrix and every free body (whole hang, each part below a
 * joint) must be in balance, forces along x and z and moment about the world's origin. Shares no code with the solver.
 * Returns what is wrong, one sentence each; empty when all holds within 1e-7 of the weight.
 */
export function verifyHang(problem: HangCase, answer: HangAnswer): readonly string[] {
  const wrong: string[] = [];
  const g = problem.gravityMps2;
  const chain = masses(problem, answer.tiltDownDeg);
  const weight = chain.flatMap((body) => body.points).reduce((sum, [m]) => sum + m * g, 0);
  const tolerance = 1e-7 * Math.max(1, weight);
  const check = (what: string, off: number, scale = 1) => {
    if (!(Math.abs(off) <= tolerance * scale)) wrong.push(`${what} is off by ${off}`);
  };
  check('massKg', answer.massKg * g - weight);
  if (problem.tiltDownDeg !== undefined) check('tiltDownDeg', answer.tiltDownDeg - problem.tiltDownDeg);
  check('bottomAimDownDeg', answer.bottomAimDownDeg - chain.at(-1)!.angleDeg);

  // The whole hang: picks up, weights down.
  const [cos, sin] = turn(answer.tiltDownDeg);
  let [up, moment] = [0, 0];
  for (const pick of answer.picks) {
    const hole = problem.grid.holes.find((each) => each.hole === pick.hole);
    if (!hole) return [...wrong, `hole ${pick.hole} is not on the grid`];
    up += pick.reactionN;
    moment += pick.reactionN * (-hole.behindMm * cos + hole.aboveMm * sin);
  }
  const all = chain.flatMap((body) => body.points);
  check('sum of reactions', up - weight);
  check('moment of the hang', moment - all.reduce((sum, [m, x]) => sum + m * g * x, 0), 1e4);
  check('centre of gravity', answer.centreOfGravity.xMm * weight - all.reduce((sum, [m, x]) => sum + m * g * x, 0), 1e4);
  check('height of the centre of gravity', answer.centreOfGravity.zMm * weight - all.reduce((sum, [m, , z]) => sum + m * g * z, 0), 1e4);
  if (answer.picks.length !== problem.picks.length) wrong.push(`${answer.picks.length} picks are answered of ${problem.picks.length}`);
  if (answer.joints.length !== problem.boxes.length) wrong.push(`${answer.joints.length} joints are answered of ${problem.boxes.length}`);
  if (answer.picks.length === 1 && answer.slackAtDeg !== undefined) wrong.push('one pick has no slack tilts');
  if (answer.picks.length === 2) wrong.push(...wrongSlack(problem, answer, tolerance));

  answer.picks.forEach((pick, index) => {
    const { belowHookKg, hoistKg, chainKg } = problem.picks[index]!;
    check(`hookLoadKg of ${pick.hole}`, pick.hookLoadKg - (pick.reactionN / g + belowHookKg));
    check(`pointLoadN of ${pick.hole}`, pick.pointLoadN - (pick.reactionN + g * (belowHookKg + hoistKg + chainKg)));
    check(`pointLoadDynamicN of ${pick.hole}`, pick.pointLoadDynamicN - pick.pointLoadN * problem.dynamicFactor);
  });

  // Each part below a joint: front pins at the pivot, rear link at its lever along the box's own vertical.
  answer.joints.forEach((joint, index) => {
    const box = chain[index + 1]!;
    const below = chain.slice(index + 1).flatMap((body) => body.points);
    const load = below.reduce((sum, [m]) => sum + m * g, 0);
    const [c, s] = turn(box.angleDeg);
    const lever = problem.boxes[index]!.rearLeverMm;
    const [fx, fz] = [joint.rearLinkN * s, joint.rearLinkN * c];
    const [lx, lz] = [box.x - lever * c, box.z + lever * s];
    if (joint.position !== index + 1) wrong.push(`joint ${index + 1} is called ${joint.position}`);
    check(`load below joint ${joint.position}`, joint.loadN - load);
    check(`horizontal balance of joint ${joint.position}`, joint.frontPins.xN + fx);
    check(`vertical balance of joint ${joint.position}`, joint.frontPins.zN + fz - load);
    const about = joint.frontPins.zN * box.x - joint.frontPins.xN * box.z + fz * lx - fx * lz;
    check(`moment at joint ${joint.position}`, about - below.reduce((sum, [m, x]) => sum + m * g * x, 0), 1e4);
    check(
      `front pin of joint ${joint.position}`,
      joint.frontPinN * 2 - Math.sqrt(joint.frontPins.xN ** 2 + joint.frontPins.zN ** 2) * (joint.frontPins.zN < 0 ? -1 : 1),
    );
  });
  return wrong;
}

/** At the tilt where one pick carries nothing, the weights have no moment about the hole of the other, below which they hang. */
function wrongSlack(problem: HangCase, { picks, slackAtDeg }: HangAnswer, tolerance: number): string[] {
  if (slackAtDeg === undefined) return ['two picks have slack tilts'];
  const holes = picks
    .flatMap((pick) => problem.grid.holes.filter((each) => each.hole === pick.hole))
    .sort((a, b) => a.behindMm - b.behindMm);
  const tilts = { rearSlack: [slackAtDeg.rearSlack, holes[0]], frontSlack: [slackAtDeg.frontSlack, holes[1]] } as const;
  return Object.entries(tilts).flatMap(([name, [tiltDeg, hole]]) => {
    const [cos, sin] = turn(tiltDeg);
    const [x, z] = [-hole!.behindMm * cos + hole!.aboveMm * sin, hole!.behindMm * sin + hole!.aboveMm * cos];
    const points = masses(problem, tiltDeg).flatMap((body) => body.points);
    const aside = points.reduce((sum, [m, at]) => sum + m * problem.gravityMps2 * (at - x), 0);
    const below = points.reduce((sum, [m, , at]) => sum + m * problem.gravityMps2 * (at - z), 0);
    return Math.abs(aside) <= tolerance * 1e4 && below <= 0 ? [] : [`${name} is off by a moment of ${aside}`];
  });
}

const turn = (angleDeg: number): [number, number] => [Math.cos((angleDeg * Math.PI) / 180), Math.sin((angleDeg * Math.PI) / 180)];

type Mass = readonly [massKg: number, xMm: number, zMm: number];

function masses(problem: HangCase, tiltDownDeg: number): { angleDeg: number; x: number; z: number; points: Mass[] }[] {
  const at = (x: number, z: number, angleDeg: number, u: number, v: number): [number, number] => {
    const [c, s] = turn(angleDeg);
    return [x + u * c + v * s, z - u * s + v * c];
  };
  const extra = (position: number) => problem.extras.filter((each) => each.position === position).map((each) => each.massKg);
  const chain = [];
  const gridCg = at(0, 0, tiltDownDeg, -problem.grid.cgBehindMm, problem.grid.cgAboveMm);
  chain.push({ angleDeg: tiltDownDeg, x: 0, z: 0, points: [problem.grid.massKg, ...extra(0)].map((m): Mass => [m, ...gridCg]) });
  let [x, z, angleDeg] = [0, 0, tiltDownDeg];
  problem.boxes.forEach((box, index) => {
    angleDeg += box.splayDeg;
    const cg = at(x, z, angleDeg, -box.cgBehindMm, -box.cgBelowMm);
    chain.push({ angleDeg, x, z, points: [box.massKg, ...extra(index + 1)].map((m): Mass => [m, ...cg]) });
    [x, z] = at(x, z, angleDeg, 0, -box.frontHeightMm);
  });
  return chain;
}
