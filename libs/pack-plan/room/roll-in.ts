import { hangOutline, lowestZMm, momentCase, solveHang } from '#hang-statics';
import type { CartModel, Hang } from '#tour-file';
import type { LiftCase, PickRoom, RollIn } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import type { RolledIn } from './clearance.js';

interface Load {
  readonly name: string;
  readonly cartModel: string | null;
  readonly boxes: readonly unknown[];
}

/**
 * Whether every loaded cart rolls in under what hangs before it: the hang so far, its hoists drawn in as far as they go, above the cart as high as it is on
 * file, lid and poles on. Empty where no height of the points is on file.
 */
export function rollIns(
  inputs: PlanInputs,
  hang: Hang,
  lift: LiftCase,
  loads: readonly Load[],
  picks: readonly PickRoom[],
): readonly RollIn[] {
  return loads.flatMap((load, index): RollIn[] => {
    const cartMm = cartHeightMm(inputs, load);
    const boxes = (lift.plan.cartLoads[index]?.firstPosition ?? 1) - 1;
    const highest = highestMm(lift, boxes, picks);
    if (cartMm === null || highest === null) return [];
    const freeMm = highest - (hang.deckHeightMm ?? 0);
    return [{ load: load.name, cartMm, freeMm, leftMm: freeMm - cartMm }];
  });
}

/** The lowest point of the grid with so many of its boxes when it is lifted as high as its hoists can; null where a point has no height. */
function highestMm({ problem, plan, bodies, grid }: LiftCase, boxes: number, picks: readonly PickRoom[]): number | null {
  const moment = momentCase(problem, plan, { lastPosition: boxes, baseKg: 0, isClosed: () => false, tiltDownDeg: plan.liftTiltDownDeg });
  const outline = hangOutline(moment, solveHang(moment).tiltDownDeg, bodies.slice(0, boxes), grid);
  const pivots = picks.map((pick) => {
    const hole = outline.holes.find((each) => each.hole === pick.hole);
    // What is left at trim is how much higher its hole can go.
    return pick.leftMm === null || !hole ? null : pick.holeHeightMm + pick.leftMm - hole.at.zMm;
  });
  if (pivots.length === 0 || pivots.includes(null)) return null;
  // Where nothing hangs yet the grid comes down onto the top box with its front pivot.
  return Math.min(...pivots.map((each) => each ?? 0)) + Math.min(0, lowestZMm({ ...outline, adapters: [] }));
}

const modelsFor = ({ file }: PlanInputs, { cartModel, boxes }: Load): readonly CartModel[] =>
  cartModel === null ? file.catalogue.carts.filter((each) => each.capacity >= boxes.length) : [modelOf(file.catalogue.carts, cartModel)];

/** Of the carts that it could be the tallest, loaded; null where none is on file. */
function cartHeightMm(inputs: PlanInputs, load: Load): number | null {
  const heights = modelsFor(inputs, load).map((each) => each.heightsMm[load.boxes.length] ?? Math.max(...each.heightsMm));
  return heights.length === 0 ? null : Math.max(...heights);
}

/** The largest of a hang's loaded carts, where it stands to be lifted. */
export function rolledIn(inputs: PlanInputs, hang: Hang, loads: readonly Load[]): RolledIn | undefined {
  const models = loads.flatMap((load) => modelsFor(inputs, load));
  const heights = loads.flatMap((load) => cartHeightMm(inputs, load) ?? []);
  const [top] = hang.boxes;
  if (models.length === 0 || heights.length === 0 || !top) return undefined;
  const box = modelOf(inputs.file.catalogue.boxes, top.model);
  // A cart is as long as its boxes are wide, or the other way round.
  const isAcross = (each: CartModel) => each.lengthMm >= each.widthMm === box.widthMm >= box.depthMm;
  return {
    heightMm: Math.max(...heights),
    acrossMm: Math.max(...models.map((each) => (isAcross(each) ? each.lengthMm : each.widthMm))),
    alongMm: Math.max(...models.map((each) => (isAcross(each) ? each.widthMm : each.lengthMm))),
    boxDepthMm: box.depthMm,
    floorMm: hang.deckHeightMm ?? 0,
  };
}
