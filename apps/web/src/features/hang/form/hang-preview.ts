import { hangOutline, lowestZMm, readHangCase, solveHang, trimMarkZMm } from '#hang-statics';
import { standardGravityMps2 } from '#kernel';
import type { HangResult } from '#pack-plan';
import type { DrawnHang } from '#drawings';
import type { BoxModel, FrameModel, GridModel, Hang } from '#tour-file';

export interface Models {
  readonly boxes: readonly BoxModel[];
  readonly grids: readonly GridModel[];
  readonly frames: readonly FrameModel[];
}

/** What the form shows beside itself. */
export type PreviewedHang = DrawnHang & Pick<HangResult, 'massKg' | 'tiltDownDeg' | 'slackAtDeg'>;

/** The hang as it would hang, for the drawing beside the form: without looms and hoists, which the plan adds. undefined while something is missing. */
export function previewHang(hang: Hang, models: Models): PreviewedHang | undefined {
  const grid = models.grids.find((each) => each.model === hang.grid);
  const boxes = hang.boxes.map((box) => models.boxes.find((each) => each.model === box.model));
  if (!grid || boxes.length === 0 || boxes.some((each) => each === undefined)) return undefined;
  const known = boxes as BoxModel[];
  const read = readHangCase({
    gravityMps2: standardGravityMps2,
    dynamicFactor: 1,
    ...(hang.picks.length >= 2 ? { tiltDownDeg: hang.tiltDownDeg ?? 0 } : {}),
    grid: { massKg: grid.massKg, cgBehindMm: grid.cgBehindMm, cgAboveMm: grid.cgAboveMm, holes: grid.holes },
    boxes: known.map((box, index) => ({
      massKg: box.massKg,
      frontHeightMm: box.frontHeightMm,
      cgBehindMm: box.cgBehindMm,
      cgBelowMm: box.cgBelowMm,
      rearLeverMm: box.rearLeverMm,
      splayDeg: hang.boxes[index]!.splayDeg,
    })),
    extras: [
      ...hang.extras.map(({ position, massKg }) => ({ position, massKg })),
      ...(hang.frames ?? []).map((name) => ({ position: 0, massKg: models.frames.find((each) => each.model === name)?.massKg ?? 0 })),
    ],
    picks: hang.picks.slice(0, 2).map(({ hole }) => ({ hole, belowHookKg: 0, hoistKg: 0, chainKg: 0 })),
  });
  if (!read.ok) return undefined;
  const answer = solveHang(read.value);
  const outline = hangOutline(read.value, answer.tiltDownDeg, known, {
    lengthMm: grid.lengthMm,
    heightMm: Math.max(60, ...grid.holes.map((each) => each.aboveMm)),
  });
  return {
    hang: hang.id,
    name: hang.name ?? hang.id,
    trimHeightMm: hang.trimHeightMm,
    room: roomOf(hang, { ...outline, adapters: [] }),
    tiltDownDeg: answer.tiltDownDeg,
    massKg: answer.massKg,
    centreOfGravity: answer.centreOfGravity,
    slackAtDeg: hang.picks.length <= 2 ? (answer.slackAtDeg ?? null) : null,
    picks:
      hang.picks.length <= 2
        ? answer.picks.map((pick, index) => ({
            hole: pick.hole,
            place: place(grid, hang, index),
            hoistSerial: null,
            reactionN: pick.reactionN,
            hookLoadKg: pick.hookLoadKg,
          }))
        : [],
    boxes: hang.boxes.map((box, index) => ({ position: index + 1, splayDeg: box.splayDeg, cart: null })),
    outline: {
      ...outline,
      gridWidthMm: grid.widthMm,
      boxes: outline.boxes.map((box, index) => ({ ...box, widthMm: known[index]!.widthMm })),
      adapters: [],
    },
  };
}

/** The mark of the trim height and the lowest point; the plan adds what stands above. */
function roomOf(hang: Hang, outline: Parameters<typeof lowestZMm>[0]): NonNullable<DrawnHang['room']> {
  const trimTo = hang.trimTo ?? 'grid';
  const markZMm = trimMarkZMm(outline, trimTo);
  return { trimTo, markZMm, lowestHeightMm: hang.trimHeightMm + lowestZMm(outline) - markZMm, deckHeightMm: hang.deckHeightMm ?? 0 };
}

function place(grid: GridModel, hang: Hang, index: number): 'front' | 'rear' | 'only' {
  if (hang.picks.length === 1) return 'only';
  const behind = hang.picks.map((pick) => grid.holes.find((hole) => hole.hole === pick.hole)?.behindMm ?? 0);
  return behind[index] === Math.min(...behind) ? 'front' : 'rear';
}
