import { type Truck, headroomOf } from '../case/index.js';
import type { Placed } from '../space/index.js';
import type { RowRoom } from './row-patterns.js';

interface Box {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly z0: number;
}

/** Room across the truck, from `fromMm` off the left wall. */
export interface Room extends RowRoom {
  readonly fromMm: number;
}

/** Where rows may stand in a truck: beside, behind and under what is blocked or kept. */
export class RowRooms {
  private readonly boxes: readonly Box[];
  private readonly ends: readonly number[];
  readonly whole: Room;

  constructor(
    readonly truck: Truck,
    kept: readonly Placed[],
  ) {
    this.whole = { fromMm: 0, widthMm: truck.innerWidthMm, heightMm: headroomOf(truck) };
    this.boxes = [
      ...truck.blocked.map(({ xMm, yMm, zMm, lengthMm, widthMm }) => ({
        x0: xMm,
        x1: xMm + lengthMm,
        y0: yMm,
        y1: yMm + widthMm,
        z0: zMm,
      })),
      ...kept.map(({ x, y, along, across }) => ({ x0: x, x1: x + along, y0: y, y1: y + across, z0: 0 })),
    ].filter((each) => each.z0 < this.whole.heightMm && each.y1 > 0 && each.y0 < truck.innerWidthMm && each.x1 > 0);
    this.ends = [...new Set(this.boxes.map((each) => each.x1))].filter((x) => x < truck.innerLengthMm).sort((a, b) => a - b);
  }

  get heightMatters(): boolean {
    return this.boxes.some((each) => each.z0 > 0);
  }

  /** Places from x on where a row might begin: there, and behind each end of something that is blocked or kept. */
  starts(x: number): number[] {
    return [x, ...this.ends.filter((each) => each > x)];
  }

  /** Rooms of a row of that depth at x: the widest on the floor between what is in the way, at full height and under what hangs lower. */
  at(x: number, depth: number): readonly Room[] {
    if (this.boxes.length === 0) return [this.whole];
    const over = this.boxes.filter((each) => each.x0 < x + depth && x < each.x1);
    if (over.length === 0) return [this.whole];
    const heights = [...new Set([this.whole.heightMm, ...over.filter((each) => each.z0 > 0).map((each) => each.z0)])];
    return heights.flatMap((heightMm) => {
      const room = this.widest(over.filter((each) => each.z0 < heightMm));
      return room ? [{ ...room, heightMm }] : [];
    });
  }

  private widest(over: readonly Box[]): { fromMm: number; widthMm: number } | undefined {
    let best: { fromMm: number; widthMm: number } | undefined;
    let from = 0;
    const note = (to: number) => {
      if (to > from && (!best || to - from > best.widthMm)) best = { fromMm: from, widthMm: to - from };
    };
    for (const each of [...over].sort((a, b) => a.y0 - b.y0)) {
      note(Math.min(each.y0, this.truck.innerWidthMm));
      from = Math.max(from, each.y1);
    }
    note(this.truck.innerWidthMm);
    return best;
  }
}
