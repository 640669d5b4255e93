import { type HangAnswer, type HangCase, bodiesAt, solveHang, solvePullBack, together } from '#hang-statics';
import { standardGravityMps2 } from '#kernel';
import type { Hang } from '#tour-file';
import { compareSteel } from './compare-loads.js';
import type { PullBackResult } from './plan.js';
import type { PlanInputs } from './plan-inputs.js';

/** A hang with its line to the anchor: the answer that takes the place of the one without, and what is to be said of the line. */
export interface PulledPlan {
  readonly answer: HangAnswer & { readonly chainsInclineDeg?: number };
  readonly result: PullBackResult;
}

/** undefined where the hang has no line. Where it cannot stand with its line the loads are those without, and the reason is said. */
export function planPullBack(inputs: PlanInputs, hang: Hang, problem: HangCase): PulledPlan | undefined {
  const { pullBack } = hang;
  if (!pullBack) return undefined;
  const without = solveHang(problem);
  const pulled = solvePullBack(problem, {
    position: pullBack.position,
    behindMm: pullBack.behindMm,
    belowMm: pullBack.belowMm,
    anchor: { xMm: pullBack.anchorForwardMm, zMm: -pullBack.anchorBelowMm },
    // What hangs above the grid when it is at trim; the hoist's chain is longer.
    chainMm: pullBack.chainMm ?? 0,
    tiltDownDeg: pullBack.tiltDownDeg,
    tensionN: pullBack.tensionN,
  });
  if (!pulled.ok)
    return { answer: without, result: { position: pullBack.position, reason: pulled.reason, figures: null, comparisons: [] } };
  const { value } = pulled;
  const g = problem.gravityMps2;
  const { massKg, cg } = together(bodiesAt(problem, value.tiltDownDeg));
  return {
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
    },
    result: {
      position: pullBack.position,
      reason: null,
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
      comparisons: compareSteel(inputs, pullBack, value.tensionN / standardGravityMps2, 0, ' of the pull-back'),
    },
  };
}
