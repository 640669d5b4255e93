import { type HangAnswer, type HangCase, hangOutline, solveHang } from '#hang-statics';
import { standardGravityMps2 } from '#kernel';
import type { BoxModel, GridModel, Hang, Pick } from '#tour-file';
import type { WantedLoad } from './allocation-case.js';
import type { ChosenItem } from './chosen-items.js';
import { compareJoint, comparePick } from './compare-loads.js';
import type { CartsResult, HangResult, PickResult, PicksResult, Working } from './plan.js';
import { type PlanInputs, modelOf } from './plan-inputs.js';

const loadCaution =
  'Loads are computed from the figures on file. A competent person confirms them against the maker’s rated data, local rules and the structure before anything is lifted.';

/** What each hang weighs, where it balances, what each pick carries and what every joint passes on, compared with what is on file. */
export function planPicks(
  inputs: PlanInputs,
  loads: readonly WantedLoad[],
  carts: CartsResult,
  chosen: readonly ChosenItem[],
): PicksResult {
  const { loadRule, show } = inputs;
  return {
    hangs: inputs.hangs.map((hang) =>
      planHang(
        inputs,
        hang,
        loads.filter((each) => each.hang.id === hang.id),
        carts,
        chosen,
      ),
    ),
    loadRule: {
      title: loadRule.title,
      source: loadRule.source,
      status: loadRule.status,
      dynamicFactor: loadRule.dynamicFactor,
      usableShare: show.personsBelow ? loadRule.usableShareWithPersonsBelow : 1,
    },
    caution: loadCaution,
  };
}

/** The hang as a case of the statics engine: looms hang at the top box of their cart load. */
export function hangCase(inputs: PlanInputs, hang: Hang, loads: readonly WantedLoad[]): HangCase {
  const { catalogue } = inputs.file;
  const grid = modelOf(catalogue.grids, hang.grid);
  const loom = hang.loom === undefined ? undefined : modelOf(catalogue.looms, hang.loom);
  return {
    gravityMps2: standardGravityMps2,
    dynamicFactor: inputs.loadRule.dynamicFactor,
    ...(hang.tiltDownDeg === undefined ? {} : { tiltDownDeg: hang.tiltDownDeg }),
    grid: { massKg: grid.massKg, cgBehindMm: grid.cgBehindMm, cgAboveMm: grid.cgAboveMm, holes: grid.holes.map((each) => ({ ...each })) },
    boxes: hang.boxes.map(({ model, splayDeg }) => {
      const box = modelOf(catalogue.boxes, model);
      return {
        massKg: box.massKg,
        frontHeightMm: box.frontHeightMm,
        cgBehindMm: box.cgBehindMm,
        cgBelowMm: box.cgBelowMm,
        rearLeverMm: box.rearLeverMm,
        splayDeg,
      };
    }),
    extras: [
      ...hang.extras.map(({ position, massKg }) => ({ position, massKg })),
      ...(loom && loom.massKg > 0 ? loads.map((load) => ({ position: load.positions[0]!, massKg: loom.massKg })) : []),
    ],
    picks: hang.picks.map((pick) => ({ hole: pick.hole, ...pickMasses(inputs, pick) })),
  };
}

/** Steel below the hook, the hoist, and the whole chain of the hoist, which its point carries wherever it hangs. */
function pickMasses(inputs: PlanInputs, pick: Pick): { belowHookKg: number; hoistKg: number; chainKg: number } {
  const { catalogue } = inputs.file;
  const hoist = modelOf(catalogue.hoists, pick.hoist);
  const steel = [
    ...pick.shackles.map((each) => modelOf(catalogue.shackles, each)),
    ...pick.slings.map((each) => modelOf(catalogue.slings, each)),
  ];
  return {
    belowHookKg: steel.reduce((sum, each) => sum + each.massKg, 0),
    hoistKg: hoist.massKg,
    chainKg: hoist.chainKgPerM * hoist.chainLengthM,
  };
}

function planHang(
  inputs: PlanInputs,
  hang: Hang,
  loads: readonly WantedLoad[],
  carts: CartsResult,
  chosen: readonly ChosenItem[],
): HangResult {
  const { catalogue, systems } = inputs.file;
  const grid = modelOf(catalogue.grids, hang.grid);
  const boxes = hang.boxes.map(({ model }) => modelOf(catalogue.boxes, model));
  const problem = hangCase(inputs, hang, loads);
  const answer = solveHang(problem);
  const planned = new Map(
    carts.loads
      .filter((each) => each.hang === hang.id)
      .flatMap((load) => load.boxes.map((box) => [box.position, { ...box, cart: load.cart }] as const)),
  );
  const system = systems.find((each) => each.id === grid.system);
  return {
    hang: hang.id,
    mirrorOf: hang.mirrorOf ?? null,
    grid: grid.model,
    gridSerial: chosen.find((each) => each.hang === hang.id && each.kind === 'grid')?.item ?? null,
    system: grid.system,
    systemApproved: system?.approved !== undefined,
    goesUp: hang.goesUp,
    trimHeightMm: hang.trimHeightMm,
    tiltDownDeg: answer.tiltDownDeg,
    bottomAimDownDeg: answer.bottomAimDownDeg,
    massKg: answer.massKg,
    centreOfGravity: answer.centreOfGravity,
    slackAtDeg: answer.slackAtDeg ?? null,
    picks: answer.picks.map((_, index) => pickResult(inputs, hang, grid, problem, answer, index, chosen)),
    joints: answer.joints.map((joint, index) => ({
      position: joint.position,
      loadN: joint.loadN,
      rearLinkN: joint.rearLinkN,
      frontPinN: joint.frontPinN,
      comparisons: compareJoint(boxes[index]!, joint),
    })),
    boxes: hang.boxes.map((box, index) => ({
      position: index + 1,
      model: box.model,
      serial: planned.get(index + 1)?.serial ?? null,
      splayDeg: box.splayDeg,
      cart: planned.get(index + 1)?.cart ?? null,
      hangsBelowKg: answer.joints[index]!.loadN / standardGravityMps2,
    })),
    outline: outlineOf(grid, boxes, problem, answer),
    stage: hang.stage ?? null,
  };
}

function outlineOf(grid: GridModel, boxes: readonly BoxModel[], problem: HangCase, answer: HangAnswer): HangResult['outline'] {
  return hangOutline(
    problem,
    answer.tiltDownDeg,
    boxes.map(({ frontHeightMm, rearHeightMm, depthMm }) => ({ frontHeightMm, rearHeightMm, depthMm })),
    {
      lengthMm: grid.lengthMm,
      heightMm: Math.max(...grid.holes.map((each) => each.aboveMm), 60),
    },
  );
}

function pickResult(
  inputs: PlanInputs,
  hang: Hang,
  grid: GridModel,
  problem: HangCase,
  answer: HangAnswer,
  index: number,
  chosen: readonly ChosenItem[],
): PickResult {
  const pick = hang.picks[index]!;
  const loads = answer.picks[index]!;
  const masses = problem.picks[index]!;
  const behind = (hole: string) => grid.holes.find((each) => each.hole === hole)!.behindMm;
  const place =
    hang.picks.length === 1 ? 'only' : behind(pick.hole) === Math.min(...hang.picks.map((each) => behind(each.hole))) ? 'front' : 'rear';
  return {
    hole: pick.hole,
    place,
    hoist: pick.hoist,
    hoistSerial: chosen.find((each) => each.hang === hang.id && each.hole === pick.hole)?.item ?? null,
    reactionN: loads.reactionN,
    hookLoadKg: loads.hookLoadKg,
    belowHookKg: masses.belowHookKg,
    hoistKg: masses.hoistKg,
    chainKg: masses.chainKg,
    pointLoadN: loads.pointLoadN,
    pointLoadDynamicN: loads.pointLoadDynamicN,
    comparisons: comparePick(inputs, grid, pick, loads),
    working: pickWorking(problem, answer, index, place),
    stage: pointOnStage(hang, answer, problem, pick.hole),
  };
}

function pickWorking(problem: HangCase, answer: HangAnswer, index: number, place: PickResult['place']): Working {
  const masses = problem.picks[index]!;
  const loads = answer.picks[index]!;
  const xOf = (hole: string) => holeX(problem, answer, hole);
  const other = problem.picks[1 - index];
  return {
    terms: [
      { what: 'mass of the hang', value: answer.massKg, unit: 'kg' },
      { what: 'centre of gravity, forward of the front pivot', value: answer.centreOfGravity.xMm, unit: 'mm' },
      { what: `hole ${masses.hole}, forward of the front pivot`, value: xOf(masses.hole), unit: 'mm' },
      ...(other ? [{ what: `hole ${other.hole}, forward of the front pivot`, value: xOf(other.hole), unit: 'mm' }] : []),
      { what: 'reaction at the hole', value: loads.reactionN, unit: 'N' },
      { what: 'steel below the hook', value: masses.belowHookKg, unit: 'kg' },
      { what: 'hoist', value: masses.hoistKg, unit: 'kg' },
      { what: 'chain', value: masses.chainKg, unit: 'kg' },
      { what: 'factor on the point load', value: problem.dynamicFactor, unit: '' },
    ],
    rule:
      place === 'only'
        ? 'One pick carries the whole hang; the centre of gravity hangs under the hole. Hook load = reaction / g + steel below the hook. Point load = reaction + (steel + hoist + chain) × g.'
        : 'Moments about the other hole: reaction = mass × g × (distance of the centre of gravity from the other hole) / (distance between the holes). Hook load = reaction / g + steel below the hook. Point load = reaction + (steel + hoist + chain) × g.',
    source: 'static equilibrium of a rigid body on vertical lines; figures of the models as filed',
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
