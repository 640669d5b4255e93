import type { Piece, Truck } from '../case/index.js';
import { type Carried, type Placed, outsideLoad } from '../space/index.js';
import type { Waiting } from './waiting.js';

/** A truck as it was loaded, and the order in which the load goes in. */
export interface Loaded {
  readonly load: Carried;
  readonly order: readonly Placed[];
}

/**
 * The load of a truck once more in a truck that is alike, with other pieces that are alike and no heavier, so that each stands and bears as before. Undefined where too few such
 * pieces wait, or where their masses are outside a limit.
 */
export function loadAgain({ load, order }: Loaded, into: Truck, waiting: Waiting, afterStops: boolean): Loaded | undefined {
  const instead = waiting.insteadOf(load.placed.map((each) => each.piece));
  if (!instead) return undefined;
  const again = new Map(load.placed.map((each) => [each.piece, { ...each, piece: instead.get(each.piece) as Piece }]));
  const placed = load.placed.map((each) => again.get(each.piece) as Placed);
  let [massKg, momentKgMm, sideMomentKgMm] = [0, 0, 0];
  for (const { piece, x, y, along, across } of placed) {
    massKg += piece.massKg;
    momentKgMm += piece.massKg * (x + along / 2);
    sideMomentKgMm += piece.massKg * (y + across / 2 - into.innerWidthMm / 2);
  }
  const carried = { truck: into, placed, massKg, momentKgMm, sideMomentKgMm };
  if (outsideLoad(carried, afterStops) > 0) return undefined;
  return { load: carried, order: order.map((each) => again.get(each.piece) as Placed) };
}

/** Trucks with the same text are alike but for their names. */
export const textOf = (truck: Truck): string => JSON.stringify({ ...truck, id: '' });
