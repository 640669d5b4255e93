import {
  type HangAnswer,
  type HangCase,
  type PullBack,
  type PulledHang,
  bodiesAt,
  solveHang,
  solvePullBack,
  together,
  trimMarkZMm,
  verifyPullBack,
} from '#hang-statics';
import { groupDigits, standardGravityMps2 } from '#kernel';
import type { Hang, PullBackSetting } from '#tour-file';
import { tell } from '#words';
import { type Checked, type HangResult, type PullBackResult, checkedBy, mismatchesOf } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { compareSteel } from '../rules/index.js';
import type { HangBodies } from './hang-bodies.js';

/** What a pick needs to know of the line: how far the chains incline, the sum written out, and the loads without it. */
export interface Pulled {
  readonly chainsInclineDeg?: number;
  readonly without?: HangAnswer;
  readonly stepsOf?: (hole: string) => readonly string[];
}

/** A hang with its line to the anchor: the answer that takes the place of the one without, and what is to be said of the line. */
export interface PulledPlan extends Checked {
  /** What it was solved from; left out where the hang cannot stand with its line. */
  readonly pull?: PullBack;
  readonly answer: HangAnswer & Pulled & { readonly without: HangAnswer };
  readonly result: PullBackResult;
}

/** undefined where the hang has no line. Where it cannot stand with its line the loads are those without, and the reason is said. */
export function planPullBack(
  inputs: PlanInputs,
  hang: Hang,
  { problem, placeOf }: Pick<HangBodies, 'problem' | 'placeOf'>,
  drawnAt: (tiltDownDeg: number) => HangResult['outline'],
): PulledPlan | undefined {
  const { pullBack } = hang;
  if (!pullBack) return undefined;
  const without = solveHang(problem);
  const outline = drawnAt(pullBack.tiltDownDeg ?? problem.tiltDownDeg ?? 0);
  const pull = {
    // A frame between boxes is a body of its own.
    position: placeOf(pullBack.position),
    behindMm: pullBack.behindMm,
    belowMm: pullBack.belowMm,
    anchor: { xMm: pullBack.anchorForwardMm, zMm: -pullBack.anchorBelowMm },
    // What hangs above the grid when it is at trim; the hoist's chain is longer.
    chainMm: pullBack.chainMm ?? aboveGridMm(hang, outline),
    tiltDownDeg: pullBack.tiltDownDeg,
    tensionN: pullBack.tensionN,
  };
  const pulled = solvePullBack(problem, pull);
  if (!pulled.ok)
    return {
      answer: { ...without, without },
      result: {
        position: pullBack.position,
        reason: tell(inputs.words.cannotHang, pulled.reason),
        fact: pulled.reason,
        figures: null,
        comparisons: [],
      },
    };
  const { value } = pulled;
  const g = problem.gravityMps2;
  const { massKg, cg } = together(bodiesAt(problem, value.tiltDownDeg));
  return {
    pull,
    answer: {
      tiltDownDeg: value.tiltDownDeg,
      bottomAimDownDeg: value.bottomAimDownDeg,
      massKg,
      centreOfGravity: cg,
      picks: value.picks.map((pick, index) => {
        const { belowHookKg, hoistKg, chainKg } = problem.picks[index]!;
        const pointLoadN = pick.alongN + (belowHookKg + hoistKg + chainKg) * g;
        return {
          hole: pick.hole,
          reactionN: pick.alongN,
          hookLoadKg: pick.alongN / g + belowHookKg,
          pointLoadN,
          pointLoadDynamicN: pointLoadN * problem.dynamicFactor,
        };
      }),
      joints: value.joints,
      findings: [],
      chainsInclineDeg: value.chainsInclineDeg,
      without,
      stepsOf: (hole) => pulledSteps(problem, value, hole, massKg, cg.xMm),
    },
    result: {
      position: pullBack.position,
      reason: null,
      anchor: anchorOf(hang, pullBack, outline),
      ...(pullBack.structureBy === undefined ? {} : { structureBy: pullBack.structureBy }),
      figures: {
        tensionN: value.tensionN,
        anchorForwardN: value.anchorForce.xN,
        anchorUpN: value.anchorForce.zN,
        lineLengthMm: value.lineLengthMm,
        lineBelowHorizontalDeg: value.lineBelowHorizontalDeg,
        chainsInclineDeg: value.chainsInclineDeg,
        drawnAsideMm: value.drawnAsideMm,
        reversed: value.joints.flatMap((joint, index) =>
          joint.rearLinkN < 0 && without.joints[index]!.rearLinkN >= 0 ? [joint.position] : [],
        ),
      },
      comparisons: compareSteel(inputs, pullBack, value.tensionN / standardGravityMps2, 0, 'pull-back'),
    },
    ...checkedBy(mismatchesOf('pull-back', hang.id, verifyPullBack(problem, pull, value))),
  };
}

/** The anchor on the stage plan and above the floor. */
function anchorOf(
  { stage, trimHeightMm, trimTo = 'grid' }: Hang,
  pull: PullBackSetting,
  outline: HangResult['outline'],
): PullBackResult['anchor'] {
  const turn = ((stage?.azimuthDeg ?? 0) * Math.PI) / 180;
  return {
    stage: stage
      ? { xMm: stage.xMm + pull.anchorForwardMm * Math.cos(turn), yMm: stage.yMm + pull.anchorForwardMm * Math.sin(turn) }
      : null,
    heightMm: trimHeightMm - trimMarkZMm(outline, trimTo) - pull.anchorBelowMm,
  };
}

/** From the grid up to the point; nothing where no height of the point is on file, or where the room of the hang says that it does not fit. */
function aboveGridMm({ pointHeightMm, trimHeightMm, trimTo = 'grid' }: Hang, outline: HangResult['outline']): number {
  return pointHeightMm === undefined ? 0 : Math.max(0, pointHeightMm - trimHeightMm + trimMarkZMm(outline, trimTo));
}

/** The balance with the line, with its figures put in. */
function pulledSteps(problem: HangCase, value: PulledHang, hole: string, massKg: number, cgX: number): string[] {
  const n = (figure: number, decimals = 1) => groupDigits(figure, decimals);
  const place = (name: string) => {
    const at = problem.grid.holes.find((each) => each.hole === name)!;
    const tilt = (value.tiltDownDeg * Math.PI) / 180;
    return {
      x: -at.behindMm * Math.cos(tilt) + at.aboveMm * Math.sin(tilt),
      z: at.behindMm * Math.sin(tilt) + at.aboveMm * Math.cos(tilt),
    };
  };
  const [x, z] = [value.line.at.xMm, value.line.at.zMm];
  const [fx, fz] = [value.line.xN, value.line.zN];
  const weight = massKg * problem.gravityMps2;
  const up = weight - fz;
  const k = -fx / up;
  const own = value.picks.find((each) => each.hole === hole)!;
  const other = value.picks.find((each) => each.hole !== hole);
  const [a, b] = [place(hole), other ? place(other.hole) : undefined];
  const line = `The line pulls at x ${n(x)} mm, z ${n(z)} mm of the front pivot with ${n(value.tensionN)} N: ${n(fx)} N forward, ${n(fz)} N up.`;
  const incline = `Up at the chains = ${n(massKg, 2)} kg × ${problem.gravityMps2} − (${n(fz)}) = ${n(up)} N; aside = −(${n(fx)}) N; both chains incline by ${n(Math.abs(value.chainsInclineDeg), 2)}°.`;
  if (!b)
    return [
      line,
      `Tension: moments about hole ${hole} at x ${n(a.x)} mm, z ${n(a.z)} mm: weight ${n(weight)} N × (${n(cgX)} − (${n(a.x)})) mm = the moment of the line about it.`,
      incline,
      `Along the chain = √(${n(own.verticalN)}² + ${n(own.horizontalN)}²) = ${n(own.alongN)} N.`,
    ];
  const top = weight * (cgX - b.x) - ((x - b.x) * fz - (z - b.z) * fx);
  const lever = a.x - b.x - k * (a.z - b.z);
  return [
    line,
    incline,
    `Hole ${hole} stands at x ${n(a.x)} mm, z ${n(a.z)} mm, hole ${other!.hole} at x ${n(b.x)} mm, z ${n(b.z)} mm, the centre of gravity at x ${n(cgX)} mm.`,
    `Moments about hole ${other!.hole}: weight ${n(weight * (cgX - b.x))} N mm, less the line’s ${n((x - b.x) * fz - (z - b.z) * fx)} N mm, = ${n(top)} N mm; lever ${n(lever, 2)} mm: ${n(top / lever)} N up.`,
    `Along the chain = ${n(own.verticalN)} N / cos ${n(Math.abs(value.chainsInclineDeg), 2)}° = ${n(own.alongN)} N.`,
  ];
}
