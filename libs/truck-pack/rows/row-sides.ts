import type { Truck } from '../case/index.js';
import type { Placed } from '../space/index.js';
import { type BuiltLane, type BuiltRow, placedRow } from './built-row.js';
import type { Room } from './row-room.js';

interface SetRow {
  readonly row: BuiltRow;
  readonly x: number;
  readonly room: Room;
}

/** Moments about the middle, kg mm, of what stays on after each stop; the whole load first. */
type Moments = readonly number[];

interface Variant {
  readonly placed: readonly Placed[];
  readonly moments: Moments;
}

/** Chooses the order of lanes and the wall of each row so that the load, and what is left of it after each stop, stays level; free space goes to one wall, or around the row where a wall does not do. */
export function levelSides(rows: readonly SetRow[], kept: readonly Placed[], truck: Truck, afterStops: boolean): Placed[] {
  const ways = rows.map(({ row, x, room }) => {
    const gap = room.widthMm - row.width;
    const offsets = [...new Set([0, gap, Math.floor(gap / 2), Math.floor(gap / 4), gap - Math.floor(gap / 4)])];
    return lanePermutations(row.lanes).flatMap((lanes) => offsets.map((offset) => placedRow(lanes, x, room.fromMm + offset)));
  });
  return chooseSides(ways, kept, truck, afterStops);
}

/** Of several ways to stand for each slice of a load, all with the same pieces, those that keep the load level. */
export function chooseSides(ways: readonly (readonly Placed[])[][], kept: readonly Placed[], truck: Truck, afterStops: boolean): Placed[] {
  const middle = truck.innerWidthMm / 2;
  const all = [...kept, ...ways.flatMap((each) => each[0]!)];
  const stops = [...new Set(all.map((each) => each.piece.firstOff))].sort((a, b) => a - b);
  const stages = [-Infinity, ...(afterStops ? stops.slice(0, -1) : [])];
  const sumOf = (placed: readonly Placed[], of: (each: Placed) => number): number[] =>
    stages.map((stage) => placed.reduce((sum, each) => sum + (each.piece.firstOff > stage ? of(each) : 0), 0));
  const momentsOf = (placed: readonly Placed[]) => sumOf(placed, ({ piece, y, across }) => piece.massKg * (y + across / 2 - middle));
  const masses = sumOf(all, ({ piece }) => piece.massKg);
  const variants = ways.map((each) => each.map((placed): Variant => ({ placed, moments: momentsOf(placed) })));
  const chosen: Variant[] = variants.map((each) => each[0]!);
  const total = momentsOf(kept);
  const add = (moments: Moments, sign: 1 | -1) => moments.forEach((each, index) => (total[index]! += sign * each));
  const tilt = (moments: Moments) =>
    moments.reduce((worst, each, index) => Math.max(worst, masses[index] === 0 ? 0 : Math.abs(total[index]! + each) / masses[index]!), 0);
  const choose = (index: number) => variants[index]!.reduce((best, each) => (tilt(each.moments) < tilt(best.moments) - 0.5 ? each : best));
  for (let pass = 0; pass < 4; pass++)
    variants.forEach((_, index) => {
      if (pass > 0) add(chosen[index]!.moments, -1);
      chosen[index] = choose(index);
      add(chosen[index].moments, 1);
    });
  return chosen.flatMap((each) => each.placed);
}

/** As planned, mirrored, and each lane in turn moved to either wall. */
function lanePermutations(lanes: readonly BuiltLane[]): (readonly BuiltLane[])[] {
  const orders: BuiltLane[][] = [[...lanes], [...lanes].reverse()];
  for (let index = 1; index < lanes.length - 1; index++) {
    const rest = lanes.filter((_, at) => at !== index);
    orders.push([lanes[index]!, ...rest], [...rest, lanes[index]!]);
  }
  return orders;
}
