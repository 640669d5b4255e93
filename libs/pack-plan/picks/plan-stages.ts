import {
  type Checked,
  type Comparison,
  type EnvelopeResult,
  type LiftCase,
  type StageResult,
  checkedBy,
  mismatchesOf,
} from '../contract/index.js';
import {
  type Extreme,
  type HangStage,
  type PullBack,
  type StageEnvelope,
  bodiesAt,
  solveStages,
  together,
  verifyStage,
} from '#hang-statics';
import { canonicalJson, groupDigits, standardGravityMps2 } from '#kernel';
import type { Hang } from '#tour-file';
import type { StageFact } from '#trade';
import { tell } from '#words';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import {
  type WorkingTilt,
  beyondTilt,
  liftCase,
  liftRemedies,
  loadedLockPins,
  mostTilted,
  tailLineN,
  workingTiltOf,
} from '../lift/index.js';
import { compareJoint, compareRated, comparisonFact, metalFactors, toldComparison } from '../rules/index.js';
import type { HangBodies } from './hang-bodies.js';
import type { LoadOnCart } from './load-on-cart.js';
import type { LiftStop } from './running-order.js';

/** Every cart load on its way up with the base of its cart and on its way down, the line of a pull-back, and the worst of all moments: it is often not the last. */
export function planStages(
  inputs: PlanInputs,
  hang: Hang,
  whole: HangBodies,
  loads: readonly LoadOnCart[],
  pull: PullBack | undefined,
): {
  readonly stages: readonly StageResult[];
  readonly envelope: EnvelopeResult;
  readonly lift: LiftCase;
  readonly solved: readonly HangStage[];
  readonly stops: readonly LiftStop[];
} & Checked {
  const { catalogue } = inputs.file;
  const { problem, bodies } = whole;
  const lift = liftCase(inputs, hang, whole, loads, pull);
  const { stages, envelope } = solveStages(problem, lift.plan);
  const factOf = (stage: HangStage) => stageFact(stage, loads);
  const nameOf = (stage: HangStage) => tell(inputs.words.stages, factOf(stage));
  const stageAt = (extreme: Extreme) => factOf(stages[extreme.stage]!);
  const at = (extreme: Extreme) => nameOf(stages[extreme.stage]!);
  const joints = envelope.joints.map((joint, index) => ({
    position: bodies[index]!.position,
    adapter: bodies[index]!.frame?.id ?? null,
    mostLinkN: joint.mostLinkN.value,
    mostLinkAt: at(joint.mostLinkN),
    leastLinkN: joint.leastLinkN.value,
    leastLinkAt: at(joint.leastLinkN),
    mostFrontPinN: joint.mostFrontPinN.value,
    mostFrontPinAt: at(joint.mostFrontPinN),
  }));
  return {
    lift,
    solved: stages,
    stops: liftStops(workingTiltOf(systemOf(inputs, hang)), stages, factOf, nameOf),
    stages: stages.map((stage) => {
      const { joints: own, picks, tiltDownDeg, massKg } = stage.answer;
      const link = own.reduce((a, b) => (Math.abs(b.rearLinkN) > Math.abs(a.rearLinkN) ? b : a));
      const pin = own.reduce((a, b) => (Math.abs(b.frontPinN) > Math.abs(a.frontPinN) ? b : a));
      return {
        name: nameOf(stage),
        tiltDownDeg,
        massKg: stage.kick ? together(bodiesAt(stage.kick.atRest, tiltDownDeg)).massKg : massKg,
        picks: picks.map(({ hole, reactionN }) => ({ hole, reactionN })),
        mostLink: { position: bodies[link.position - 1]!.position, newtons: link.rearLinkN },
        mostFrontPin: { position: bodies[pin.position - 1]!.position, newtons: pin.frontPinN },
      };
    }),
    envelope: {
      picks: envelope.picks.map((pick, index) => ({
        hole: pick.hole,
        mostN: pick.mostN.value,
        mostAt: at(pick.mostN),
        leastN: pick.leastN.value,
        leastAt: at(pick.leastN),
        fact: { most: stageAt(pick.mostN), least: stageAt(pick.leastN) },
        inclined: stages.flatMap((stage) => {
          const inclineDeg = Math.abs(stage.held?.hang.chainsInclineDeg ?? 0);
          return inclineDeg > (stage.swung ? countsAsVerticalDeg : 0)
            ? [{ reactionN: stage.answer.picks[index]!.reactionN, inclineDeg, at: factOf(stage) }]
            : [];
        }),
        aside: {
          newtons: pick.mostAsideN.value,
          inclineDeg: Math.abs(stages[pick.mostAsideN.stage]!.held?.hang.chainsInclineDeg ?? 0),
          at: stageAt(pick.mostAsideN),
        },
      })),
      joints,
      pushed: envelope.joints.flatMap(({ leastFrontPinN }, index) => {
        const { position, frame } = bodies[index]!;
        return frame === null && leastFrontPinN.value < -leastPushN
          ? [{ position, leastFrontPinN: leastFrontPinN.value, at: stageAt(leastFrontPinN) }]
          : [];
      }),
      lockPins: lockPinsOf(inputs, hang, whole, stages).map(({ stage, place, newtons }) => ({
        position: bodies[place - 1]!.position,
        newtons,
        at: factOf(stage),
      })),
      ...liftableOf(inputs, hang, lift, stages, factOf),
      comparisons: [
        ...hang.picks.map((pick, index) => {
          const hoist = modelOf(catalogue.hoists, pick.hoist);
          const lifting = stages.filter((each) => each.cartLoad !== null).map((each) => each.answer.picks[index]!.reactionN);
          const mostKg = Math.max(0, ...lifting) / standardGravityMps2 + problem.picks[index]!.belowHookKg;
          // While it is lifted nobody is below: the whole rated load counts.
          const part = { code: 'hoist-while-lifting', model: hoist.model, hole: pick.hole } as const;
          return compareRated(inputs, part, mostKg, hoist.ratedLoad, []);
        }),
        ...jointComparisons(inputs, hang, worstJoints(envelope, bodies, stageAt)),
      ],
    },
    ...checkedBy(stages.flatMap((stage) => mismatchesOf('statics', `${hang.id}, ${nameOf(stage)}`, verifyStage(stage)))),
  };
}

const lineFacts = { 'line half taken up': 'line-half-taken-up', 'line taken up': 'line-taken-up' } as const;

function stageFact({ cartLoad, name, way }: HangStage, loads: readonly LoadOnCart[]): StageFact {
  const load = cartLoad === null ? undefined : loads[cartLoad - 1];
  if (!load) return { code: name === 'line half taken up' || name === 'line taken up' ? lineFacts[name] : 'at-trim' };
  return { code: way === 'up' ? 'lifting' : 'coming-down', load: load.id, name: load.name, moment: name };
}

/** How far its grid stands from what its system is worked at, and what would do where it cannot be lifted as it is. */
function liftableOf(
  inputs: PlanInputs,
  hang: Hang,
  { problem, plan }: LiftCase,
  stages: readonly HangStage[],
  factOf: (stage: HangStage) => StageFact,
): Pick<EnvelopeResult, 'tilted' | 'remedies'> {
  const limits = workingTiltOf(systemOf(inputs, hang));
  const furthest = mostTilted(beyondTilt(stages, limits));
  const said = limits.fromDeg !== null || limits.toDeg !== null;
  const silent = !said && problem.picks.length === 1 ? mostTilted(stages) : undefined;
  const pushes = stages.some((each) => each.answer.picks.some((pick) => pick.reactionN < 0));
  const shown = furthest ?? silent;
  const tiltDeg = shown?.answer.tiltDownDeg ?? 0;
  const limitDeg = furthest ? (tiltDeg < 0 ? limits.fromDeg : limits.toDeg) : null;
  return {
    ...(shown
      ? { tilted: { tiltDeg, at: factOf(shown), limitDeg, tailLineN: limitDeg === null ? null : (tailLineN(shown, limitDeg) ?? null) } }
      : {}),
    ...(furthest || pushes ? { remedies: liftRemedies(problem, plan, limits) } : {}),
  };
}

/** Of each cart load and way the moment that cannot be done as it is planned: a pick that would push, or a grid beyond its working tilt. */
function liftStops(
  limits: WorkingTilt,
  stages: readonly HangStage[],
  factOf: (stage: HangStage) => StageFact,
  nameOf: (stage: HangStage) => string,
): readonly LiftStop[] {
  const beyond = beyondTilt(stages, limits);
  const found = stages.flatMap((stage): LiftStop[] => {
    const fact = factOf(stage);
    if (fact.code !== 'lifting' && fact.code !== 'coming-down') return [];
    const pushing = stage.answer.picks.find((each) => each.reactionN < 0);
    const tilt = stage.answer.tiltDownDeg;
    const what = pushing
      ? `hole ${pushing.hole} would have to push with ${groupDigits(-pushing.reactionN)} N`
      : `the grid would stand ${groupDigits(Math.abs(tilt), 1)}° nose ${tilt < 0 ? 'up' : 'down'}`;
    return pushing || beyond.includes(stage)
      ? [
          {
            load: fact.load,
            way: stage.way,
            step: `Do not lift as planned: at ${nameOf(stage)} ${what}. Plan it otherwise first.`,
            why: what,
          },
        ]
      : [];
  });
  return found.filter((each, index) => found.findIndex((one) => one.load === each.load && one.way === each.way) === index);
}

const systemOf = (inputs: PlanInputs, hang: Hang) => {
  const grid = modelOf(inputs.file.catalogue.grids, hang.grid);
  return inputs.file.systems.find((each) => each.id === grid.system);
};

/** Lock pins of the hang's system that would be drawn while they hold. */
function lockPinsOf(inputs: PlanInputs, hang: Hang, { problem }: HangBodies, stages: readonly HangStage[]) {
  return loadedLockPins(stages, systemOf(inputs, hang), (place) => problem.boxes[place - 1]?.splayDeg ?? 0);
}

/** 29 CFR 1910.184(b): up to 5 degrees from the vertical counts as vertical. */
const countsAsVerticalDeg = 5;
/** Less than this is the rounding of the sum. */
const leastPushN = 0.01;

interface WorstJoint {
  readonly position: number;
  readonly linkN: number;
  readonly linkAt: StageFact;
  readonly pinN: number;
  readonly pinAt: StageFact;
}

/** Of every joint that no frame makes the greatest force of all stages, pulled or pushed. */
const worstJoints = (
  envelope: StageEnvelope,
  bodies: HangBodies['bodies'],
  stageAt: (extreme: Extreme) => StageFact,
): readonly WorstJoint[] =>
  envelope.joints.flatMap(({ mostLinkN, leastLinkN, mostFrontPinN }, index) => {
    const { position, frame } = bodies[index]!;
    const link = Math.abs(leastLinkN.value) > mostLinkN.value ? leastLinkN : mostLinkN;
    if (frame !== null) return [];
    return [{ position, linkN: link.value, linkAt: stageAt(link), pinN: mostFrontPinN.value, pinAt: stageAt(mostFrontPinN) }];
  });

/** The joints that come nearest to what they are rated for at any stage, one comparison a figure and model. */
function jointComparisons(inputs: PlanInputs, hang: Hang, joints: readonly WorstJoint[]): Comparison[] {
  const all = joints.flatMap(({ position, linkN, linkAt, pinN, pinAt }) => {
    const box = modelOf(inputs.file.catalogue.boxes, hang.boxes[position - 1]!.model);
    const [rear, front] = compareJoint(inputs, box, { rearLinkN: linkN, frontPinN: pinN }, metalFactors(inputs));
    return [
      { each: rear!, worstAt: { position, stage: linkAt } },
      { each: front!, worstAt: { position, stage: pinAt } },
    ];
  });
  return [...new Set(all.map(({ each }) => keyOf(each)))].map((key) => {
    const worst = all.filter(({ each }) => keyOf(each) === key).reduce((a, b) => (b.each.value > a.each.value ? b : a));
    return toldComparison(inputs, { ...comparisonFact(inputs.loadRule, worst.each)!, worstAt: worst.worstAt }, worst.each.factors);
  });
}

const keyOf = ({ fact }: Comparison): string => canonicalJson(fact?.part ?? null);
