import { seededRandom } from '#kernel';
import type { Hang, TourFile } from '#tour-file';
import type { Lift } from './lifted-loads.js';

/** A hang of the demo's house made from a seed: what stands in the tour file, and the same as plain figures. */
export interface MadeHang {
  readonly hang: Hang;
  readonly lift: Lift;
  readonly closing: { readonly gridJoint: Lift['gridJoint']; readonly cartJoints: Lift['cartJoints'] };
}

const gravityMps2 = 9.80665;
const [trimHeightMm, pointHeightMm] = [11_500, 15_200];
const splays = [0, 1, 2, 3, 4];
const closings = [
  { gridJoint: 'on the ground', cartJoints: 'swung back and driven down' },
  { gridJoint: 'in the air', cartJoints: 'swung back and driven down' },
  { gridJoint: 'on the ground', cartJoints: 'on the floor at matched tilt' },
  { gridJoint: 'on the ground', cartJoints: 'box by box' },
] as const;

export const closingOfSeed = (seed: number) => closings[seed % closings.length]!;

/** Five to eighteen boxes with splays, holes, tilts and an extra of their own, on the grid, boxes, looms and carts of the file. */
export function madeHang(written: TourFile, seed: number, id: string, closing: MadeHang['closing']): MadeHang {
  const random = seededRandom(seed);
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));
  const { catalogue } = written;
  const [grid, box, loom] = [catalogue.grids[0]!, catalogue.boxes[0]!, catalogue.looms[0]!];
  const [front, rear] = [grid.holes[whole(0, 4)]!, grid.holes[whole(8, grid.holes.length - 1)]!];
  const count = whole(5, 18);
  const boxes = Array.from({ length: count }, (_, index) => ({ model: box.model, splayDeg: index === 0 ? 0.5 : splays[whole(0, 4)]! }));
  const [trimDeg, liftDeg] = [whole(-20, 40) / 10, whole(-10, 30) / 10];
  const line = lineOf(whole, count, box.frontHeightMm);
  const extra = { position: whole(0, count), massKg: whole(1, 20), what: 'a lamp' };
  const loads = Array.from({ length: Math.ceil(count / 4) }, (_, index) => ({
    first: 4 * index + 1,
    last: Math.min(count, 4 * index + 4),
  }));
  const pick = (hole: string) => ({
    hole,
    hoist: catalogue.hoists[0]!.model,
    shackles: [catalogue.shackles[0]!.model, catalogue.shackles[0]!.model],
    slings: [catalogue.slings[0]!.model],
  });
  return {
    closing,
    hang: {
      id,
      grid: grid.model,
      goesUp: 1,
      tiltDownDeg: trimDeg,
      liftTiltDownDeg: liftDeg,
      trimHeightMm,
      pointHeightMm,
      stage: { xMm: 0, yMm: 0, azimuthDeg: whole(-30, 30) },
      picks: [pick(front.hole), pick(rear.hole)],
      boxes,
      extras: [extra],
      loom: loom.model,
      partLoad: 'bottom',
      ...(line ? { pullBack: line.setting } : {}),
    },
    lift: {
      gravityMps2,
      grid,
      holes: [front, rear],
      boxes: boxes.map(({ splayDeg }) => ({ ...box, splayDeg })),
      extras: [extra, ...loads.map((each) => ({ position: each.first, massKg: loom.massKg }))],
      loads,
      baseKg: catalogue.carts[0]!.baseMassKg!,
      closedDeg: 0,
      liftDeg,
      trimDeg,
      ...(line ? { line: line.figures } : {}),
      ...closing,
    },
  };
}

/** Every third hang is drawn back by a line from the foot of its lowest box to the floor behind it. */
function lineOf(whole: (from: number, to: number) => number, position: number, belowMm: number) {
  const [isThere, tensionN, forwardMm, downMm] = [whole(1, 3) === 1, whole(100, 900), -whole(3000, 9000), whole(6000, 11_000)];
  if (!isThere) return undefined;
  const setting = { position, behindMm: 0, belowMm, anchorForwardMm: forwardMm, anchorBelowMm: downMm, tensionN, shackles: [], slings: [] };
  const chainMm = pointHeightMm - trimHeightMm;
  return { setting, figures: { position, belowMm, newtons: tensionN, anchor: [forwardMm, -downMm] as const, chainMm } };
}

/** Where a pick hangs on the stage plan. */
export function placeOf({ hang, lift }: MadeHang, pick: 0 | 1): readonly [x: number, y: number] {
  const [tilt, turn] = [lift.trimDeg, hang.stage!.azimuthDeg].map((deg) => (deg * Math.PI) / 180) as [number, number];
  const forward = -lift.holes[pick].behindMm * Math.cos(tilt) + lift.holes[pick].aboveMm * Math.sin(tilt);
  return [hang.stage!.xMm + forward * Math.cos(turn), hang.stage!.yMm + forward * Math.sin(turn)];
}
