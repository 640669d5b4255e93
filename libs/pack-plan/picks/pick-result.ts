import { type BridleAnswer, type HangAnswer, type HangCase, restingTiltDeg, solveBridle } from '#hang-statics';
import { groupDigits, standardGravityMps2 } from '#kernel';
import { type GridModel, type Hang, type Pick, hangName } from '#tour-file';
import type { EnvelopeResult, LegResult, PickResult, Working, WorstLoads } from '../contract/index.js';
import type { StageFact } from '#trade';
import { tell } from '#words';
import type { PlanInputs } from '../inputs/index.js';
import { compareAlone, compareLegs, comparePick, enoughSteel } from '../rules/index.js';
import { chainAside } from './chain-aside.js';
import type { ChosenItem } from './chosen-items.js';
import { bridleMassKg } from './hang-bodies.js';
import { namedAt, pickKit } from './pick-kit.js';
import type { Pulled } from './plan-pull-back.js';

/** One pick of a hang on one pick or two: its loads, what was compared with what, and the sum with its figures. */
export function pickResult(
  inputs: PlanInputs,
  hang: Hang,
  grid: GridModel,
  problem: HangCase,
  answer: HangAnswer & Pulled,
  index: number,
  chosen: readonly ChosenItem[],
  envelope: EnvelopeResult | null,
): PickResult {
  const pick = hang.picks[index]!;
  const bridle = pick.bridle ? bridleOf(inputs, hang, pick, answer, problem, index) : null;
  const bridleKg = bridleMassKg(inputs, pick);
  const pointLoadN = answer.picks[index]!.pointLoadN + bridleKg * problem.gravityMps2;
  const loads = { ...answer.picks[index]!, pointLoadN, pointLoadDynamicN: pointLoadN * problem.dynamicFactor };
  const place = placeOf(grid, hang, pick);
  const without = answer.without?.picks[index];
  const withoutPointN = without ? without.pointLoadN + bridleKg * problem.gravityMps2 : pointLoadN;
  const worst = worstOf(inputs, problem, index, bridleKg, loads, without, envelope);
  // The hoist holds the worse of the two at rest, with the line and before it is taken up; where people are below while it moves, the worst of all.
  const rest = {
    hookLoadKg: inputs.show.movesOverPersons ? worst.hookLoadKg : Math.max(loads.hookLoadKg, without?.hookLoadKg ?? loads.hookLoadKg),
  };
  const hoistSerial = chosen.find((each) => each.hang === hang.id && each.hole === pick.hole)?.item ?? null;
  return {
    hole: pick.hole,
    place,
    point: pick.point ?? `${hangName(hang)} ${pick.hole}`,
    hoist: pick.hoist,
    hoistSerial,
    kit: pickKit(inputs, pick, hoistSerial, massesOf(problem, index), { rest: loads.hookLoadKg, worst: worst.hookLoadKg }),
    ...namedAt(pick),
    reactionN: loads.reactionN,
    hookLoadKg: loads.hookLoadKg,
    ...massesOf(problem, index),
    pointLoadN,
    pointLoadDynamicN: loads.pointLoadDynamicN,
    alone: hang.picks.length === 2 && !hang.pullBack ? aloneOf(inputs, grid, pick, problem, answer, index, bridleKg) : null,
    withoutLine: without
      ? { hookLoadKg: without.hookLoadKg, pointLoadN: withoutPointN, pointLoadDynamicN: withoutPointN * problem.dynamicFactor }
      : null,
    worst,
    ...chainAside(hang, answer, loads.reactionN, envelope?.picks[index]?.aside),
    ...(pick.bridle ? { bridleKg } : {}),
    bridle,
    comparisons: [
      ...comparePick(inputs, grid, hang, pick, loads.reactionN < 0 ? loads : rest, {
        ...(loads.reactionN < 0 ? loads : worst),
        // Moments at which its chain inclines are compared each for itself.
        sideDeg: 0,
        inclined: inclinedAt(problem, index, envelope),
        at: loads.reactionN < 0 ? null : worst.fact,
      }),
      ...(pick.bridle && bridle && bridle.reason === null
        ? compareLegs(inputs, pick.bridle, atWorst(bridle.legs, worst.pointLoadN / Math.max(pointLoadN, withoutPointN)))
        : []),
    ],
    enough: enoughSteel(inputs, worst.hookLoadKg, hang.secondary !== undefined, rest.hookLoadKg),
    working: pickWorking(problem, answer, index, place, bridleKg),
    stage: pointOnStage(hang, answer, problem, pick.hole),
  };
}

/** Moments at which the chain of a pick inclines, with what hangs at its hook. */
const inclinedAt = (problem: HangCase, index: number, envelope: EnvelopeResult | null) =>
  (envelope?.picks[index]?.inclined ?? []).map(({ reactionN, inclineDeg, at }) => ({
    hookLoadKg: reactionN / problem.gravityMps2 + problem.picks[index]!.belowHookKg,
    sideDeg: inclineDeg,
    at,
  }));

const massesOf = ({ picks }: HangCase, index: number) => {
  const { belowHookKg, hoistKg, chainKg } = picks[index]!;
  return { belowHookKg, hoistKg, chainKg };
};

function placeOf(grid: GridModel, { picks }: Hang, pick: Pick): PickResult['place'] {
  const behind = (hole: string) => grid.holes.find((each) => each.hole === hole)!.behindMm;
  if (picks.length === 1) return 'only';
  return behind(pick.hole) === Math.min(...picks.map((each) => behind(each.hole))) ? 'front' : 'rear';
}

/** The legs under the worst load: their directions stay, their forces grow with it. */
const atWorst = (legs: readonly LegResult[], by: number): readonly LegResult[] =>
  legs.map((leg) => ({ ...leg, tensionN: leg.tensionN * by }));

/** The greatest of what it carries at rest, before its line is taken up, and at any moment of lifting; of equal loads the rest is named. */
function worstOf(
  { words }: PlanInputs,
  problem: HangCase,
  index: number,
  bridleKg: number,
  rest: { readonly reactionN: number },
  without: { readonly reactionN: number } | undefined,
  envelope: EnvelopeResult | null,
): WorstLoads {
  const own = envelope?.picks[index];
  const trim: StageFact = { code: 'at-trim' };
  const all = [
    { reactionN: own?.mostN ?? -Infinity, fact: own?.fact?.most ?? trim },
    { reactionN: without?.reactionN ?? -Infinity, fact: trim },
    { reactionN: rest.reactionN, fact: without ? ({ code: 'line-taken-up' } as const) : trim },
  ];
  const { reactionN, fact } = all.reduce((a, b) => (b.reactionN >= a.reactionN - 1e-9 ? b : a));
  const { belowHookKg, hoistKg, chainKg } = problem.picks[index]!;
  const pointLoadN = reactionN + (belowHookKg + hoistKg + chainKg + bridleKg) * problem.gravityMps2;
  return {
    reactionN,
    hookLoadKg: reactionN / problem.gravityMps2 + belowHookKg,
    pointLoadN,
    pointLoadDynamicN: pointLoadN * problem.dynamicFactor,
    at: tell(words.stages, fact),
    fact,
  };
}

/** The other pick is slack: this one carries the whole hang, which turns until it hangs below. */
function aloneOf(
  inputs: PlanInputs,
  grid: GridModel,
  pick: Pick,
  problem: HangCase,
  { massKg }: HangAnswer,
  index: number,
  bridleKg: number,
): PickResult['alone'] {
  const { hole, belowHookKg, hoistKg, chainKg } = problem.picks[index]!;
  const hookLoadKg = massKg + belowHookKg;
  const pointLoadN = (hookLoadKg + hoistKg + chainKg + bridleKg) * problem.gravityMps2;
  const pointLoadDynamicN = pointLoadN * problem.dynamicFactor;
  const comparisons = compareAlone(inputs, grid, pick, { hookLoadKg, massKg, pointLoadDynamicN });
  return {
    tiltDownDeg: restingTiltDeg(problem, problem.grid.holes.find((each) => each.hole === hole)!),
    hookLoadKg,
    pointLoadN,
    ...(comparisons.length > 0 ? { comparisons } : {}),
  };
}

/** Legs from the hook of the hoist; they carry the whole point load of the pick. */
function bridleOf(
  inputs: PlanInputs,
  hang: Hang,
  pick: Pick,
  answer: HangAnswer & Pulled,
  problem: HangCase,
  index: number,
): PickResult['bridle'] {
  const hook = { xMm: 0, yMm: 0, zMm: 0 };
  const anchors = pick.bridle!.legs.map(({ xMm, yMm, aboveMm }) => ({ xMm, yMm, zMm: aboveMm }));
  const loadN =
    Math.max(answer.picks[index]!.pointLoadN, answer.without?.picks[index]?.pointLoadN ?? 0) +
    bridleMassKg(inputs, pick) * problem.gravityMps2;
  const solved: BridleAnswer = solveBridle(hook, anchors, loadN);
  if (!solved.ok) return { legs: [], reason: tell(inputs.words.cannotHang, solved.reason), fact: solved.reason };
  const at = pointOnStage(hang, answer, problem, pick.hole);
  return {
    reason: null,
    legs: solved.legs.map((leg, each) => ({
      stage: at && { xMm: at.xMm + anchors[each]!.xMm, yMm: at.yMm + anchors[each]!.yMm },
      lengthMm: leg.lengthMm,
      tensionN: leg.tensionN,
      tensionDynamicN: leg.tensionN * problem.dynamicFactor,
      verticalN: Math.sqrt(Math.max(0, leg.tensionN ** 2 - leg.horizontalN ** 2)),
      horizontalN: leg.horizontalN,
      fromHorizontalDeg: leg.fromHorizontalDeg,
      directionDeg: (Math.atan2(-anchors[each]!.yMm, -anchors[each]!.xMm) * 180) / Math.PI,
      ...(pick.bridle!.legs[each]!.structureBy === undefined ? {} : { structureBy: pick.bridle!.legs[each]!.structureBy }),
    })),
  };
}

function pickWorking(problem: HangCase, answer: HangAnswer & Pulled, index: number, place: PickResult['place'], bridleKg: number): Working {
  const { hole, belowHookKg, hoistKg, chainKg } = problem.picks[index]!;
  const { reactionN, hookLoadKg, pointLoadN } = answer.picks[index]!;
  const g = standardGravityMps2;
  const own = holeX(problem, answer, hole);
  const other = problem.picks[1 - index];
  const cg = answer.centreOfGravity.xMm;
  const pulled = answer.chainsInclineDeg !== undefined;
  const n = (value: number, decimals = 1) => groupDigits(value, decimals);
  const bracketed = (value: number) => (value < 0 ? `(${n(value)})` : n(value));
  const m = (mm: number) => `${groupDigits(mm, 1)} mm`;
  const point = pointLoadN + bridleKg * g;
  const steps = [
    ...(pulled
      ? [
          `With the pull-back the chains incline by ${n(answer.chainsInclineDeg, 2)}°; along its chain hole ${hole} carries ${n(reactionN)} N (balance of the hang with its line).`,
        ]
      : other
        ? [
            `Hole ${hole} stands at ${m(own)}, hole ${other.hole} at ${m(holeX(problem, answer, other.hole))}, the centre of gravity at ${m(cg)}, all forward of the front pivot.`,
            `Reaction = ${n(answer.massKg, 2)} kg × ${g} × (${n(cg)} − ${bracketed(holeX(problem, answer, other.hole))}) / (${n(own)} − ${bracketed(holeX(problem, answer, other.hole))}) = ${n(reactionN)} N.`,
          ]
        : [
            `The centre of gravity hangs under hole ${hole}: both at ${m(cg)} forward of the front pivot.`,
            `Reaction = ${n(answer.massKg, 2)} kg × ${g} = ${n(reactionN)} N.`,
          ]),
    `At the hook = ${n(reactionN)} N / ${g} + ${n(belowHookKg, 2)} kg of steel = ${n(hookLoadKg)} kg.`,
    `Point, static = ${n(reactionN)} N + (${n(belowHookKg, 2)} + ${n(hoistKg)} + ${n(chainKg)}${bridleKg > 0 ? ` + ${n(bridleKg)}` : ''}) kg × ${g} = ${n(point)} N.`,
    `Point × ${Number(problem.dynamicFactor.toFixed(4))} = ${n(point * problem.dynamicFactor)} N.`,
  ];
  return {
    terms: [
      { what: 'mass of the hang', value: answer.massKg, unit: 'kg' },
      { what: 'centre of gravity, forward of the front pivot', value: cg, unit: 'mm' },
      { what: `hole ${hole}, forward of the front pivot`, value: own, unit: 'mm' },
      ...(other ? [{ what: `hole ${other.hole}, forward of the front pivot`, value: holeX(problem, answer, other.hole), unit: 'mm' }] : []),
      { what: 'steel below the hook', value: belowHookKg, unit: 'kg' },
      { what: 'hoist', value: hoistKg, unit: 'kg' },
      { what: 'chain', value: chainKg, unit: 'kg' },
      ...(bridleKg > 0 ? [{ what: 'steel of the bridle', value: bridleKg, unit: 'kg' }] : []),
      { what: 'factor on the point load', value: problem.dynamicFactor, unit: '' },
    ],
    steps,
    rule: pulled
      ? 'Balance of the hang with its line: the chains incline alike until their horizontal parts balance the line; moments about the other hole give the rest. Hook load = force along the chain / g + steel below the hook.'
      : place === 'only'
        ? 'One pick carries the whole hang; the centre of gravity hangs under the hole. Hook load = reaction / g + steel below the hook. Point load = reaction + (steel + hoist + chain) × g.'
        : 'Moments about the other hole: reaction = mass × g × (distance of the centre of gravity from the other hole) / (distance between the holes). Hook load = reaction / g + steel below the hook. Point load = reaction + (steel + hoist + chain) × g.',
    source: `static equilibrium of a rigid body${pulled ? '' : ' on vertical lines'}; figures of the models as filed`,
  };
}

/** x of a grid hole at the tilt of the answer, forward of the grid's front pivot. */
function holeX(problem: HangCase, answer: HangAnswer, name: string): number {
  const hole = problem.grid.holes.find((each) => each.hole === name)!;
  const tilt = (answer.tiltDownDeg * Math.PI) / 180;
  return -hole.behindMm * Math.cos(tilt) + hole.aboveMm * Math.sin(tilt);
}

function pointOnStage(hang: Hang, answer: HangAnswer, problem: HangCase, hole: string): { xMm: number; yMm: number } | null {
  if (!hang.stage) return null;
  const azimuth = (hang.stage.azimuthDeg * Math.PI) / 180;
  const x = holeX(problem, answer, hole);
  return { xMm: hang.stage.xMm + x * Math.cos(azimuth), yMm: hang.stage.yMm + x * Math.sin(azimuth) };
}
