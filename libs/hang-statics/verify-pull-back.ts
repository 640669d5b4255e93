import type { HangCase } from './hang-case.js';
import type { PullBack, PulledHang } from './pull-back.js';

/**
 * Checks a pulled hang from scratch with rotations as complex numbers: the whole hang and every part below a joint must be in balance along x and z
 * and about the world's origin. Shares no code with the solver. One sentence for each fault; empty when all holds within 1e-7 of the forces.
 */
export function verifyPullBack(problem: HangCase, pull: PullBack, answer: PulledHang): readonly string[] {
  const wrong: string[] = [];
  const g = problem.gravityMps2;
  let angle = (answer.tiltDownDeg * Math.PI) / 180;
  let pivot: Complex = [0, 0];
  const extra = (position: number) =>
    problem.extras.filter((each) => each.position === position).reduce((all, each) => all + each.massKg, 0);
  const turned = (from: Complex, behind: number, above: number, by: number): Complex =>
    plus(from, times([-behind, above], [Math.cos(by), -Math.sin(by)]));
  const parts: { mass: number; at: Complex; pivot: Complex; angle: number }[] = [
    { mass: problem.grid.massKg + extra(0), at: turned(pivot, problem.grid.cgBehindMm, problem.grid.cgAboveMm, angle), pivot, angle },
  ];
  problem.boxes.forEach((box, index) => {
    angle += (box.splayDeg * Math.PI) / 180;
    parts.push({ mass: box.massKg + extra(index + 1), at: turned(pivot, box.cgBehindMm, -box.cgBelowMm, angle), pivot, angle });
    pivot = turned(pivot, 0, -box.frontHeightMm, angle);
  });
  const body = parts[pull.position]!;
  const hook = turned(body.pivot, pull.behindMm, -pull.belowMm, body.angle);
  const line: Complex = [-answer.anchorForce.xN, -answer.anchorForce.zN];
  const tilt = (answer.tiltDownDeg * Math.PI) / 180;
  const aside: Complex = [answer.drawnAsideMm, pull.chainMm * (1 - Math.cos((answer.chainsInclineDeg * Math.PI) / 180))];
  const toAnchor: Complex = [pull.anchor.xMm - aside[0] - hook[0], pull.anchor.zMm - aside[1] - hook[1]];
  const scale = parts.reduce((all, each) => all + each.mass * g, 0) + Math.hypot(...line);
  const check = (what: string, off: number, by = 1) => {
    if (!(Math.abs(off) <= 1e-7 * scale * by)) wrong.push(`${what} is off by ${off}`);
  };
  check('direction of the line', cross(toAnchor, line) / Math.max(1, Math.hypot(...toAnchor)));
  if (line[0] * toAnchor[0] + line[1] * toAnchor[1] < -1e-6 * scale) wrong.push('the line pushes');
  check('tension', Math.hypot(...line) - answer.tensionN);
  if (problem.picks.length === 2) check('tension that is given', answer.tensionN - pull.tensionN!);
  check('tilt', answer.tiltDownDeg - (problem.picks.length === 2 ? problem.tiltDownDeg! : pull.tiltDownDeg!));
  check('aim of the bottom box', answer.bottomAimDownDeg - (parts.at(-1)!.angle * 180) / Math.PI);
  check('where the line holds the hang', Math.hypot(answer.line.at.xMm - hook[0], answer.line.at.zMm - hook[1]));
  check('pull of the line', Math.hypot(answer.line.xN - line[0], answer.line.zN - line[1]));
  check('length of the line', answer.lineLengthMm - Math.hypot(...toAnchor));
  const below = (answer.lineBelowHorizontalDeg * Math.PI) / 180;
  check('angle of the line', Math.sin(below) * Math.abs(toAnchor[0]) + Math.cos(below) * toAnchor[1]);
  check('how far the hang is drawn aside', answer.drawnAsideMm - pull.chainMm * Math.sin((answer.chainsInclineDeg * Math.PI) / 180));

  const balance = (what: string, forces: readonly (readonly [Complex, Complex])[]) => {
    check(
      `${what}, along x`,
      forces.reduce((all, [, f]) => all + f[0], 0),
    );
    check(
      `${what}, along z`,
      forces.reduce((all, [, f]) => all + f[1], 0),
    );
    check(
      `${what}, moment`,
      forces.reduce((all, [at, f]) => all + cross(at, f), 0),
      1e4,
    );
  };
  const weights = parts.map(({ mass, at }) => [at, [0, -mass * g]] as const);
  balance('the hang', [
    ...weights,
    [hook, line],
    ...answer.picks.map((pick) => {
      const hole = problem.grid.holes.find((each) => each.hole === pick.hole)!;
      return [turned([0, 0], hole.behindMm, hole.aboveMm, tilt), [pick.horizontalN, pick.verticalN]] as const;
    }),
  ]);
  answer.joints.forEach((joint, index) => {
    const part = parts[index + 1]!;
    const lever = problem.boxes[index]!.rearLeverMm;
    const loadN = parts.slice(index + 1).reduce((all, each) => all + each.mass * g, 0);
    const { xN, zN } = joint.frontPins;
    if (joint.position !== index + 1) wrong.push(`joint ${index + 1} is called ${joint.position}`);
    check(`load below joint ${joint.position}`, joint.loadN - loadN);
    check(`front pin of joint ${joint.position}`, 2 * joint.frontPinN - Math.hypot(xN, zN) * (zN < 0 ? -1 : 1));
    balance(`below joint ${joint.position}`, [
      ...weights.slice(index + 1),
      ...(pull.position > index ? [[hook, line] as const] : []),
      [part.pivot, [joint.frontPins.xN, joint.frontPins.zN]],
      [turned(part.pivot, lever, 0, part.angle), times([0, joint.rearLinkN], [Math.cos(part.angle), -Math.sin(part.angle)])],
    ]);
  });
  for (const pick of answer.picks) {
    check(
      `force along the chain of hole ${pick.hole}`,
      pick.alongN - Math.hypot(pick.horizontalN, pick.verticalN) * (pick.verticalN < 0 ? -1 : 1),
    );
    check(
      `chain of hole ${pick.hole}`,
      pick.horizontalN * Math.cos((answer.chainsInclineDeg * Math.PI) / 180) +
        pick.verticalN * Math.sin((answer.chainsInclineDeg * Math.PI) / 180),
    );
  }
  return wrong;
}

/** x as the real part, z as the imaginary one; nose down by t is a turn by -t. */
type Complex = readonly [number, number];
const plus = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]];
const times = (a: Complex, b: Complex): Complex => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
const cross = (at: Complex, force: Complex): number => at[0] * force[1] - at[1] * force[0];
