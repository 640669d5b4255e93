import { outsideLimitsKg } from '../case/index.js';
import type { LoadSpace, Placed } from './load-space.js';

/** A loaded truck as its limits judge it. */
export type Carried = Pick<LoadSpace, 'truck' | 'massKg' | 'momentKgMm' | 'sideMomentKgMm'> & { readonly placed: readonly Placed[] };

/** How far a whole load is outside what its truck allows, in kilograms (side offset counted by its share); 0 when it may drive like this, also after each stop. */
export function outsideLoad({ truck, placed, massKg, momentKgMm, sideMomentKgMm }: Carried, afterStops: boolean): number {
  let outside = outsideLimitsKg(truck, massKg, momentKgMm) + sideExcess(truck.maxSideOffsetMm, massKg, sideMomentKgMm);
  if (!afterStops) return outside;
  const stops = [...new Set(placed.map((each) => each.piece.firstOff))].sort((a, b) => a - b);
  for (const stop of stops.slice(0, -1)) {
    let [mass, moment, side] = [0, 0, 0];
    for (const { piece, x, along, y, across } of placed) {
      if (piece.firstOff <= stop) continue;
      mass += piece.massKg;
      moment += piece.massKg * (x + along / 2);
      side += piece.massKg * (y + across / 2 - truck.innerWidthMm / 2);
    }
    outside += outsideLimitsKg(truck, mass, moment) + sideExcess(truck.maxSideOffsetMm, mass, side);
  }
  return outside;
}

function sideExcess(most: number | undefined, massKg: number, sideMomentKgMm: number): number {
  if (most === undefined || massKg === 0) return 0;
  const excess = Math.abs(sideMomentKgMm) / massKg - most;
  return excess > 1e-9 ? (excess * massKg) / 1000 : 0;
}
