import { hangOutline, readHangCase, solveHang } from '#hang-statics';
import { standardGravityMps2 } from '#kernel';
import type { HangResult } from '#pack-plan';
import type { BoxModel, GridModel, Hang } from '#tour-file';

export interface Models {
  readonly boxes: readonly BoxModel[];
  readonly grids: readonly GridModel[];
}

/** The hang as it would hang, for the drawing beside the form: without looms and hoists, which the plan adds. undefined while something is missing. */
export function previewHang(hang: Hang, models: Models): HangResult | undefined {
  const grid = models.grids.find((each) => each.model === hang.grid);
  const boxes = hang.boxes.map((box) => models.boxes.find((each) => each.model === box.model));
  if (!grid || boxes.length === 0 || boxes.some((each) => each === undefined)) return undefined;
  const known = boxes as BoxModel[];
  const read = readHangCase({
    gravityMps2: standardGravityMps2,
    dynamicFactor: 1,
    ...(hang.picks.length === 2 ? { tiltDownDeg: hang.tiltDownDeg ?? 0 } : {}),
    grid: { massKg: grid.massKg, cgBehindMm: grid.cgBehindMm, cgAboveMm: grid.cgAboveMm, holes: grid.holes },
    boxes: known.map((box, index) => ({
      massKg: box.massKg,
      frontHeightMm: box.frontHeightMm,
      cgBehindMm: box.cgBehindMm,
      cgBelowMm: box.cgBelowMm,
      rearLeverMm: box.rearLeverMm,
      splayDeg: hang.boxes[index]!.splayDeg,
    })),
    extras: hang.extras.map(({ position, massKg }) => ({ position, massKg })),
    picks: hang.picks.map(({ hole }) => ({ hole, belowHookKg: 0, hoistKg: 0, chainKg: 0 })),
  });
  if (!read.ok) return undefined;
  const answer = solveHang(read.value);
  return {
    hang: hang.id,
    mirrorOf: null,
    grid: grid.model,
    gridSerial: null,
    system: grid.system,
    systemApproved: true,
    goesUp: hang.goesUp,
    trimHeightMm: hang.trimHeightMm,
    tiltDownDeg: answer.tiltDownDeg,
    bottomAimDownDeg: answer.bottomAimDownDeg,
    massKg: answer.massKg,
    centreOfGravity: answer.centreOfGravity,
    slackAtDeg: answer.slackAtDeg ?? null,
    picks: answer.picks.map((pick, index) => ({
      hole: pick.hole,
      place: place(grid, hang, index),
      hoist: '',
      hoistSerial: null,
      reactionN: pick.reactionN,
      hookLoadKg: pick.hookLoadKg,
      belowHookKg: 0,
      hoistKg: 0,
      chainKg: 0,
      pointLoadN: pick.pointLoadN,
      pointLoadDynamicN: pick.pointLoadDynamicN,
      comparisons: [],
      working: { terms: [], rule: '', source: '' },
      stage: null,
    })),
    joints: [],
    boxes: hang.boxes.map((box, index) => ({
      position: index + 1,
      model: box.model,
      serial: box.serial ?? null,
      splayDeg: box.splayDeg,
      cart: null,
      hangsBelowKg: answer.joints[index]!.loadN / standardGravityMps2,
    })),
    outline: hangOutline(read.value, answer.tiltDownDeg, known, {
      lengthMm: grid.lengthMm,
      heightMm: Math.max(60, ...grid.holes.map((each) => each.aboveMm)),
    }),
    stage: null,
  };
}

function place(grid: GridModel, hang: Hang, index: number): 'front' | 'rear' | 'only' {
  if (hang.picks.length === 1) return 'only';
  const behind = hang.picks.map((pick) => grid.holes.find((hole) => hole.hole === pick.hole)?.behindMm ?? 0);
  return behind[index] === Math.min(...behind) ? 'front' : 'rear';
}
