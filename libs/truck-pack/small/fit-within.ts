import type { PlacementAnswer } from '../case/index.js';
import type { SmallFloor, SmallKind } from './small-floor.js';

/** Nodes that a search may look at. */
export interface NodeBudget {
  left: number;
}

interface Step {
  readonly kind: SmallKind;
  readonly turned: boolean;
  readonly x: number;
  readonly from: number;
}

/**
 * Whether everything goes into so much length: pieces go in level by level, last off first, each straight to what stands in its lane, within a level from the nose. What is
 * left free behind a piece is lost, and no more may be lost than the length leaves. States that were met before are not looked at again. undefined: the
 * budget ended first; null: nothing fits, proved.
 */
export function fitWithin(floor: SmallFloor, lengthMm: number, budget: NodeBudget): readonly PlacementAnswer[] | null | undefined {
  const search = new Fit(floor, lengthMm, budget);
  const isFound = search.from(0, 0, -1);
  if (isFound) return search.placements();
  return budget.left > 0 ? null : undefined;
}

class Fit {
  private readonly skyline: Int32Array;
  private readonly left: number[][];
  private readonly steps: Step[] = [];
  private readonly seen = new Set<string>();
  private readonly fills = new Map<string, Int32Array>();
  private spareMm2: number;

  constructor(
    private readonly floor: SmallFloor,
    private readonly lengthMm: number,
    private readonly budget: NodeBudget,
  ) {
    this.skyline = new Int32Array(floor.cells.length);
    this.left = floor.levels.map((kinds) => kinds.map((each) => each.pieces.length));
    this.spareMm2 = lengthMm * floor.widthMm - floor.areaMm2;
  }

  /** From this level on, after a piece of it at `lastX` and `lastFrom`. */
  from(level: number, lastX: number, lastFrom: number): boolean {
    if (level === this.floor.levels.length) return true;
    if (this.spareMm2 < 0 || this.budget.left-- <= 0) return false;
    const left = this.left[level]!;
    if (left.every((count) => count === 0)) return this.from(level + 1, 0, -1);
    const [spare, before] = [this.spareMm2, this.skyline.slice()];
    this.spareMm2 -= this.closeOff(level);
    const isFound = this.spareMm2 >= this.lostAhead(level) && this.choose(level, left, lastX, lastFrom);
    this.spareMm2 = spare;
    if (!isFound) this.skyline.set(before);
    return isFound;
  }

  private choose(level: number, left: readonly number[], lastX: number, lastFrom: number): boolean {
    const key = `${level}:${left.join()}:${lastX}:${lastFrom}:${this.skyline.join()}`;
    if (this.seen.has(key)) return false;
    const kinds = this.floor.levels[level]!;
    for (let index = 0; index < kinds.length; index++) {
      if (left[index] === 0) continue;
      for (const way of kinds[index]!.ways)
        for (const { from, to } of way.places) {
          // The first piece stands in the left half: the other half is its mirror image.
          if (this.steps.length === 0 && this.middleOf(from, to) > this.floor.widthMm / 2) continue;
          if (this.tryAt(level, index, way, from, to, lastX, lastFrom)) return true;
          if (this.budget.left <= 0) return false;
        }
    }
    this.seen.add(key);
    return false;
  }

  /** Raises what no piece that is left can use: bays narrower than each of them, lanes shorter than each of them to the end. Gives the floor that is lost by it. */
  private closeOff(level: number): number {
    const { skyline, floor, lengthMm } = this;
    let [narrowest, shortest] = [Infinity, Infinity];
    for (let each = level; each < floor.levels.length; each++)
      floor.levels[each]!.forEach(({ ways }, index) => {
        if (this.left[each]![index] === 0) return;
        for (const { across, along } of ways) [narrowest, shortest] = [Math.min(narrowest, across), Math.min(shortest, along)];
      });
    let lost = 0;
    const raise = (from: number, to: number, height: number) => {
      for (let cell = from; cell < to; cell++) {
        lost += (height - skyline[cell]!) * floor.cells[cell]!;
        skyline[cell] = height;
      }
    };
    for (let cell = 0; cell < skyline.length; cell++)
      if (skyline[cell]! < lengthMm && lengthMm - skyline[cell]! < shortest) raise(cell, cell + 1, lengthMm);
    for (let isRaised = true; isRaised; ) {
      isRaised = false;
      for (let from = 0, to = 0; from < skyline.length; from = to) {
        let wide = 0;
        for (to = from; to < skyline.length && skyline[to] === skyline[from]; to++) wide += floor.cells[to]!;
        const sides = Math.min(from === 0 ? Infinity : skyline[from - 1]!, to === skyline.length ? Infinity : skyline[to]!);
        if (wide >= narrowest || sides <= skyline[from]! || sides === Infinity) continue;
        raise(from, to, sides);
        isRaised = true;
      }
    }
    return lost;
  }

  /**
   * Floor that will be lost whatever comes: along each line across the truck, what is left free is in bays, and no widths of pieces that are left fill a bay
   * further than their best sum.
   */
  private lostAhead(level: number): number {
    const { skyline, floor, lengthMm } = this;
    const fill = this.bestFill(level);
    const heights = [...new Set(skyline)].sort((a, b) => a - b);
    let lost = 0;
    heights.forEach((height, index) => {
      const deep = (heights[index + 1] ?? lengthMm) - height;
      let bay = 0;
      for (let cell = 0; cell <= skyline.length; cell++) {
        if (cell < skyline.length && skyline[cell]! <= height) {
          bay += floor.cells[cell]!;
          continue;
        }
        lost += deep * (bay - fill[bay]!);
        bay = 0;
      }
    });
    return lost;
  }

  /** By width of a bay: the largest sum of widths of pieces that are left, each in one of its ways, that fits into it. */
  private bestFill(level: number): Int32Array {
    const key = `${level}:${this.left[level]!.join()}`;
    const known = this.fills.get(key);
    if (known) return known;
    const { widthMm, levels } = this.floor;
    const fill = new Int32Array(widthMm + 1);
    const sums = new Uint8Array(widthMm + 1);
    sums[0] = 1;
    for (let each = level; each < levels.length; each++)
      levels[each]!.forEach(({ ways }, index) => {
        for (let count = this.left[each]![index]!; count > 0; count--)
          for (let sum = widthMm; sum > 0; sum--)
            if (sums[sum] === 0 && ways.some(({ across }) => across <= sum && sums[sum - across] === 1)) sums[sum] = 1;
      });
    for (let sum = 1; sum <= widthMm; sum++) fill[sum] = sums[sum] === 1 ? sum : fill[sum - 1]!;
    this.fills.set(key, fill);
    return fill;
  }

  private tryAt(
    level: number,
    index: number,
    way: SmallKind['ways'][number],
    from: number,
    to: number,
    lastX: number,
    lastFrom: number,
  ): boolean {
    const { skyline, floor } = this;
    let x = 0;
    for (let cell = from; cell < to; cell++) if (skyline[cell]! > x) x = skyline[cell]!;
    if (x + way.along > this.lengthMm || x < lastX || (x === lastX && from <= lastFrom)) return false;
    let lost = 0;
    for (let cell = from; cell < to; cell++) lost += (x - skyline[cell]!) * floor.cells[cell]!;
    if (lost > this.spareMm2) return false;
    const before = skyline.slice(from, to);
    skyline.fill(x + way.along, from, to);
    this.spareMm2 -= lost;
    this.left[level]![index]!--;
    this.steps.push({ kind: floor.levels[level]![index]!, turned: way.turned, x, from });
    if (this.from(level, x, from)) return true;
    this.steps.pop();
    this.left[level]![index]!++;
    this.spareMm2 += lost;
    skyline.set(before, from);
    return false;
  }

  private middleOf(from: number, to: number): number {
    const { cells } = this.floor;
    const start = cells.slice(0, from).reduce((sum, each) => sum + each, 0);
    return start + cells.slice(from, to).reduce((sum, each) => sum + each, 0) / 2;
  }

  placements(): PlacementAnswer[] {
    const used = new Map<SmallKind, number>();
    return this.steps.map(({ kind, turned, x, from }) => {
      const next = used.get(kind) ?? 0;
      used.set(kind, next + 1);
      const yMm = this.floor.cells.slice(0, from).reduce((sum, each) => sum + each, 0);
      return { id: kind.pieces[next]!.id, xMm: x, yMm, zMm: 0, turned };
    });
  }
}
