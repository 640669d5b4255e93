import { type TruckAnswer, axleLoads } from '../case/index.js';
import type { Carried } from './check-load.js';
import type { Placed } from './load-space.js';

/** What an answer says of a loaded truck. `order`: the loading order where it is not that of the placing. */
export function truckAnswer(space: Carried, order: readonly Placed[] = space.placed): TruckAnswer {
  const { truck, placed, massKg, momentKgMm, sideMomentKgMm } = space;
  return {
    id: truck.id,
    placements: placed.map((each) => ({ id: each.piece.id, xMm: each.x, yMm: each.y, zMm: each.z, turned: each.turned })),
    loadingOrder: order.map((each) => each.piece.id),
    usedLengthMm: usedLengthMm(placed),
    massKg,
    sideOffsetMm: massKg > 0 ? sideMomentKgMm / massKg : 0,
    axles: axleLoads(truck, massKg, momentKgMm) ?? {},
  };
}

export const usedLengthMm = (placed: readonly Placed[]): number => placed.reduce((far, each) => Math.max(far, each.x + each.along), 0);
