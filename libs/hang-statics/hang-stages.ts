import type { HangCase } from './hang-case.js';
import { bodiesAt, together } from './hang-geometry.js';
import type { HangStage, HeldAside } from './hang-stage.js';
import { lineStages } from './line-stages.js';
import { linkDrawn } from './link-drawn.js';
import { type HangAnswer, solveHang } from './solve-hang.js';
import { type StageEnvelope, envelopeOf } from './stage-envelope.js';
import { type StageName, type StagePlan, hinged, matchedTiltDeg, momentCase } from './stage-cases.js';
import { swingBack } from './swing-back.js';
import { verifyHang } from './verify-hang.js';
import { verifyPullBack } from './verify-pull-back.js';

export interface StagesAnswer {
  readonly stages: readonly HangStage[];
  readonly envelope: StageEnvelope;
  /** Cart loads that no tilt of the grid lets swing back until the faces of their joint touch. */
  readonly neverTouch: readonly number[];
}

/**
 * Every cart load on its way up, by how the joints of the rigging system close: joined on the floor and lifted closed, then opened with the base on; or
 * hanging by its front pins, opened, swung back, driven down (the picks carry what is above), linked, opened and locked; at last without its base, and
 * the whole hang at trim and with its line. Coming down passes the same moments in reverse; a load on its front pins comes there by its rear link being drawn.
 */
export function solveStages(problem: HangCase, plan: StagePlan): StagesAnswer {
  const stages = plan.cartLoads.flatMap((_, index) => loadStages(problem, plan, index));
  const neverTouch = plan.cartLoads.flatMap((_, index) =>
    isHinged(plan, index) && !stages.some((each) => each.cartLoad === index + 1 && each.name === 'swung back') ? [index + 1] : [],
  );
  stages.push(stageOf('at trim', null, problem), ...linesTakenUp(problem, plan));
  if (plan.comesDown) stages.push(...plan.cartLoads.flatMap((_, index) => linksDrawn(stages, plan, index)).reverse());
  return { stages, envelope: envelopeOf(problem, stages), neverTouch };
}

/** One sentence for each figure of a stage that does not agree with the independent checkers. */
export const verifyStage = ({ problem, answer, held }: HangStage): readonly string[] =>
  held ? verifyPullBack(held.problem, held.pull, held.hang) : verifyHang(problem, answer);

const stageOf = (name: StageName, cartLoad: number | null, problem: HangCase): HangStage => ({
  name,
  cartLoad,
  way: 'up',
  problem,
  answer: solveHang(problem),
  swung: null,
  held: null,
  kick: null,
});

const heldStage = (name: StageName, cartLoad: number | null, held: HeldAside): HangStage => ({
  ...stageOf(name, cartLoad, held.problem),
  answer: heldAnswer(held),
  held,
});

const linesTakenUp = (problem: HangCase, { pull }: StagePlan): readonly HangStage[] =>
  pull === undefined ? [] : lineStages(problem, pull).map(({ name, held }) => heldStage(name, null, held));

/** Of a joint that closes by being driven down; where front and rear close together on the floor nothing hangs when they are drawn. */
function linksDrawn(stages: readonly HangStage[], plan: StagePlan, index: number): readonly HangStage[] {
  const linked = stages.find((each) => each.cartLoad === index + 1 && each.name === 'linked and closed');
  if (!linked || !isHinged(plan, index)) return [];
  const kick = linkDrawn(linked.problem, plan.cartLoads[index]!.firstPosition);
  return [{ ...stageOf('rear link drawn', index + 1, kick.problem), way: 'down', kick }];
}

const isHinged = ({ closing }: StagePlan, index: number): boolean =>
  index === 0 ? closing.gridJoint === 'in the air' : closing.cartJoints === 'swung back and driven down';

function loadStages(problem: HangCase, plan: StagePlan, index: number): HangStage[] {
  const { firstPosition, lastPosition, baseKg } = plan.cartLoads[index]!;
  const isLast = index === plan.cartLoads.length - 1;
  const tiltDownDeg = plan.liftTiltDownDeg;
  const at = (name: StageName, stage: HangCase) => stageOf(name, index + 1, stage);
  const all = { lastPosition, baseKg, tiltDownDeg };
  const closed = momentCase(problem, plan, { ...all, isClosed: (position) => position >= firstPosition });
  const opened = momentCase(problem, plan, { ...all, isClosed: () => false });
  const baseOff = at('base off', momentCase(problem, plan, { ...all, baseKg: 0, isClosed: () => false }));
  if (isHinged(plan, index)) {
    const touching = momentCase(problem, plan, { ...all, isClosed: (position) => position === firstPosition });
    const swung = swingBack(touching, firstPosition);
    const standing = momentCase(problem, plan, { lastPosition: firstPosition - 1, baseKg: 0, tiltDownDeg, isClosed: () => false });
    return [
      at('front pins only', hinged(closed, firstPosition)),
      at('opened on front pins', hinged(touching, firstPosition)),
      ...(swung ? [{ ...heldStage('swung back', index + 1, swung), swung }] : []),
      ...(index > 0 ? [at('driven down', standing)] : []),
      at('linked and closed', touching),
      at('opened and locked', opened),
      // Of the others the moment that the next load is driven down is the same.
      ...(isLast ? [baseOff] : []),
    ];
  }
  if (index > 0 && plan.closing.cartJoints === 'box by box')
    return Array.from({ length: lastPosition - firstPosition + 1 }, (_, added) =>
      at('box joined', momentCase(problem, plan, { lastPosition: firstPosition + added, baseKg: 0, tiltDownDeg, isClosed: () => false })),
    );
  const matched = index === 0 ? tiltDownDeg : matchedTiltDeg(problem, plan, firstPosition);
  const joined = momentCase(problem, plan, { ...all, tiltDownDeg: matched, isClosed: (position) => position >= firstPosition });
  return [at('linked and closed', joined), at('opened and locked', opened), baseOff];
}

function heldAnswer({ problem, hang }: HeldAside): HangAnswer {
  const whole = together(bodiesAt(problem, hang.tiltDownDeg));
  return {
    tiltDownDeg: hang.tiltDownDeg,
    bottomAimDownDeg: hang.bottomAimDownDeg,
    massKg: whole.massKg,
    centreOfGravity: whole.cg,
    picks: hang.picks.map(({ hole, alongN }, index) => {
      const { belowHookKg, hoistKg, chainKg } = problem.picks[index]!;
      const pointLoadN = alongN + (belowHookKg + hoistKg + chainKg) * problem.gravityMps2;
      return {
        hole,
        reactionN: alongN,
        hookLoadKg: alongN / problem.gravityMps2 + belowHookKg,
        pointLoadN,
        pointLoadDynamicN: pointLoadN * problem.dynamicFactor,
      };
    }),
    joints: hang.joints,
    findings: [],
  };
}
