import type { Blocks } from './blocks.js';
import { type ContainerCase, orientationsOf } from './container-case.js';
import { type Reach, reachOf } from './reach.js';

/** Gap, as part of a block's extent, that still counts as touching. */
const touchGap = 0.04;
const surfacePower = 4;
const piecesPower = -0.2;

/** What stays the same through a search. */
export class Problem {
  readonly extent: readonly [number, number, number];
  readonly reach: readonly [Reach, Reach, Reach];
  /** Volume times pieces to the power -0.2, by block. */
  readonly worth: Float64Array;
  /** Blocks, the worthiest first. */
  readonly byWorth: Int32Array;
  /** By kind and axis: the least extent that it can have. */
  readonly leastExtent: Int32Array;
  readonly words: number;

  constructor(
    readonly problem: ContainerCase,
    readonly blocks: Blocks,
  ) {
    this.extent = [problem.length, problem.width, problem.height];
    this.reach = reachOf(problem);
    this.words = this.reach[0].words;
    this.worth = Float64Array.from({ length: blocks.count }, (_, block) => blocks.volume[block]! * blocks.pieces[block]! ** piecesPower);
    this.byWorth = Int32Array.from({ length: blocks.count }, (_, block) => block).sort((a, b) => this.worth[b]! - this.worth[a]! || a - b);
    this.leastExtent = new Int32Array(problem.boxes.length * 3);
    problem.boxes.forEach((box, kind) => {
      for (let axis = 0; axis < 3; axis++) this.leastExtent[kind * 3 + axis] = Math.min(...orientationsOf(box).map((each) => each[axis]!));
    });
  }
}

/** A partly filled container: boxes left, buildable blocks, maximal free cuboids, placed blocks. */
export class PackingState {
  volume = 0;
  private readonly left: Int32Array;
  private buildable: Int32Array;
  private spaces: Int32Array;
  private spaceCount: number;
  /** x0 y0 z0 x1 y1 z1 of each placed block. */
  private readonly placed: Int32Array;
  private readonly placedBlock: Int32Array;
  private placedCount: number;
  private readonly kindsLeft: Int32Array;

  private constructor(
    private readonly given: Problem,
    from: PackingState | undefined,
  ) {
    if (from) {
      this.left = from.left.slice();
      this.buildable = from.buildable;
      this.spaces = from.spaces.slice();
      this.spaceCount = from.spaceCount;
      this.placed = from.placed.slice();
      this.placedBlock = from.placedBlock.slice();
      this.placedCount = from.placedCount;
      this.kindsLeft = from.kindsLeft.slice();
      this.volume = from.volume;
      return;
    }
    const { problem, extent } = given;
    this.left = Int32Array.from(problem.boxes, (box) => box.count);
    this.buildable = given.byWorth;
    this.spaces = new Int32Array(6 * 64);
    this.spaces.set([0, 0, 0, ...extent]);
    this.spaceCount = 1;
    const most = problem.boxes.reduce((sum, box) => sum + box.count, 0);
    this.placed = new Int32Array(6 * Math.min(most, 600));
    this.placedBlock = new Int32Array(Math.min(most, 600));
    this.placedCount = 0;
    this.kindsLeft = new Int32Array(given.words);
    problem.boxes.forEach((box, kind) => {
      if (box.count > 0) this.kindsLeft[kind >> 5]! |= 1 << (kind & 31);
    });
  }

  static empty(given: Problem): PackingState {
    return new PackingState(given, undefined);
  }

  copy(): PackingState {
    return new PackingState(this.given, this);
  }

  /** Block and corner of each placed block. */
  placements(): { block: number; x: number; y: number; z: number }[] {
    return Array.from({ length: this.placedCount }, (_, index) => ({
      block: this.placedBlock[index]!,
      x: this.placed[6 * index]!,
      y: this.placed[6 * index + 1]!,
      z: this.placed[6 * index + 2]!,
    }));
  }

  /** Fills on with the best block in the best space until nothing fits. */
  complete(): this {
    const best = new Int32Array(1);
    const values = new Float64Array(1);
    for (let space = this.nextSpace(); space >= 0; space = this.nextSpace())
      if (this.bestBlocks(space, 1, best, values) > 0) this.place(space, best[0]!);
      else this.dropSpace(space);
    return this;
  }

  /** The first space that takes anything, with its `width` best blocks; undefined when the container is as full as it gets. */
  options(width: number): { space: number; blocks: Int32Array } | undefined {
    const best = new Int32Array(width);
    const values = new Float64Array(width);
    for (let space = this.nextSpace(); space >= 0; space = this.nextSpace()) {
      const count = this.bestBlocks(space, width, best, values);
      if (count > 0) return { space, blocks: best.slice(0, count) };
      this.dropSpace(space);
    }
    return undefined;
  }

  /** The space whose corner is nearest to a corner of the container; of equals the largest. */
  private nextSpace(): number {
    const { spaces } = this;
    const [X, Y, Z] = this.given.extent;
    let [best, least, largest] = [-1, Infinity, 0];
    for (let space = 0; space < this.spaceCount; space++) {
      const at = 6 * space;
      const key =
        Math.min(spaces[at]!, X - spaces[at + 3]!) +
        Math.min(spaces[at + 1]!, Y - spaces[at + 4]!) +
        Math.min(spaces[at + 2]!, Z - spaces[at + 5]!);
      if (key > least) continue;
      const volume = (spaces[at + 3]! - spaces[at]!) * (spaces[at + 4]! - spaces[at + 1]!) * (spaces[at + 5]! - spaces[at + 2]!);
      if (key < least || volume > largest) [best, least, largest] = [space, key, volume];
    }
    return best;
  }

  private dropSpace(space: number): void {
    this.spaceCount--;
    this.spaces.copyWithin(6 * space, 6 * this.spaceCount, 6 * this.spaceCount + 6);
  }

  /** The best blocks for a space, best first; gives how many. */
  private bestBlocks(space: number, width: number, best: Int32Array, values: Float64Array): number {
    const { blocks, worth, reach } = this.given;
    const [sx, sy, sz] = blocks.size;
    const at = 6 * space;
    const { spaces, buildable } = this;
    const lx = spaces[at + 3]! - spaces[at]!;
    const ly = spaces[at + 4]! - spaces[at + 1]!;
    const lz = spaces[at + 5]! - spaces[at + 2]!;
    const full = reach[0].longest[lx]! * reach[1].longest[ly]! * reach[2].longest[lz]!;
    this.lookAround(space);
    let count = 0;
    let least = 0;
    for (let index = 0; index < buildable.length; index++) {
      const block = buildable[index]!;
      // Neither what is kept nor what touches is more than all: no later block can be better.
      if (count === width && worth[block]! <= least) break;
      if (sx[block]! > lx || sy[block]! > ly || sz[block]! > lz) continue;
      let value = worth[block]!;
      value *= this.kept(block, lx, ly, lz) / full;
      if (count === width && value <= least) continue;
      value *= this.touching(space, block) ** surfacePower;
      if (count === width && value <= least) continue;
      let place = count < width ? count++ : width - 1;
      while (place > 0 && values[place - 1]! < value) {
        values[place] = values[place - 1]!;
        best[place] = best[place - 1]!;
        place--;
      }
      values[place] = value;
      best[place] = block;
      least = values[width - 1]!;
    }
    return count;
  }

  /** Volume that the block and the reachable rest along each axis use up. */
  private kept(block: number, lx: number, ly: number, lz: number): number {
    const { blocks, reach } = this.given;
    this.markExhausted(block);
    const [sx, sy, sz] = [blocks.size[0][block]!, blocks.size[1][block]!, blocks.size[2][block]!];
    return (sx + this.reachable(reach[0], lx - sx)) * (sy + this.reachable(reach[1], ly - sy)) * (sz + this.reachable(reach[2], lz - sz));
  }

  private readonly after = new Int32Array(8);

  /** Kinds that are left once the block is built. */
  private markExhausted(block: number): void {
    const { blocks, words } = this.given;
    for (let word = 0; word < words; word++) this.after[word] = this.kindsLeft[word]!;
    for (let at = blocks.first[block]!; at < blocks.first[block + 1]!; at++) {
      const kind = blocks.kind[at]!;
      if (blocks.quantity[at] === this.left[kind]) this.after[kind >> 5]! &= ~(1 << (kind & 31));
    }
  }

  private reachable({ longest, enders, words }: Reach, rest: number): number {
    for (let t = longest[rest]!; t > 0; t = longest[t - 1]!)
      for (let word = 0; word < words; word++) if ((enders[t * words + word]! & this.after[word]!) !== 0) return t;
    return 0;
  }

  private corner(space: number, block: number): readonly [number, number, number] {
    const { spaces } = this;
    const { extent, blocks } = this.given;
    const low = (axis: number): number => {
      const [from, to] = [spaces[6 * space + axis]!, spaces[6 * space + 3 + axis]!];
      return from <= extent[axis]! - to ? from : to - blocks.size[axis]![block]!;
    };
    return [low(0), low(1), low(2)];
  }

  /** Placed blocks that a block within the space could touch, a small gap allowed. */
  private readonly near = new Int32Array(600);
  private nearCount = 0;

  private lookAround(space: number): void {
    const { spaces, placed, placedCount } = this;
    const at = 6 * space;
    const gx = touchGap * (spaces[at + 3]! - spaces[at]!);
    const gy = touchGap * (spaces[at + 4]! - spaces[at + 1]!);
    const gz = touchGap * (spaces[at + 5]! - spaces[at + 2]!);
    const [x, y, z] = [spaces[at]! - gx, spaces[at + 1]! - gy, spaces[at + 2]! - gz];
    const [X, Y, Z] = [spaces[at + 3]! + gx, spaces[at + 4]! + gy, spaces[at + 5]! + gz];
    this.nearCount = 0;
    for (let index = 0; index < placedCount; index++) {
      const p = 6 * index;
      if (placed[p]! > X || placed[p + 3]! < x || placed[p + 1]! > Y || placed[p + 4]! < y || placed[p + 2]! > Z || placed[p + 5]! < z)
        continue;
      this.near[this.nearCount++] = p;
    }
  }

  /** Part of the block's surface that touches walls or placed blocks, a small gap allowed. */
  private touching(space: number, block: number): number {
    const { blocks, extent } = this.given;
    const [dx, dy, dz] = [blocks.size[0][block]!, blocks.size[1][block]!, blocks.size[2][block]!];
    const [x, y, z] = this.corner(space, block);
    const [X, Y, Z] = [x + dx, y + dy, z + dz];
    const [gx, gy, gz] = [touchGap * dx, touchGap * dy, touchGap * dz];
    let [x0, x1, y0, y1, z0, z1] = [0, 0, 0, 0, 0, 0];
    const { placed, near, nearCount } = this;
    for (let index = 0; index < nearCount; index++) {
      const at = near[index]!;
      const [px, py, pz, pX, pY, pZ] = [placed[at]!, placed[at + 1]!, placed[at + 2]!, placed[at + 3]!, placed[at + 4]!, placed[at + 5]!];
      const ox = (X < pX ? X : pX) - (x > px ? x : px);
      const oy = (Y < pY ? Y : pY) - (y > py ? y : py);
      const oz = (Z < pZ ? Z : pZ) - (z > pz ? z : pz);
      if (oy > 0 && oz > 0) {
        if (pX <= x && x - pX <= gx) x0 += oy * oz;
        else if (px >= X && px - X <= gx) x1 += oy * oz;
      } else if (ox > 0 && oz > 0) {
        if (pY <= y && y - pY <= gy) y0 += ox * oz;
        else if (py >= Y && py - Y <= gy) y1 += ox * oz;
      } else if (ox > 0 && oy > 0) {
        if (pZ <= z && z - pZ <= gz) z0 += ox * oy;
        else if (pz >= Z && pz - Z <= gz) z1 += ox * oy;
      }
    }
    const [fx, fy, fz] = [dy * dz, dx * dz, dx * dy];
    const sum =
      (x <= gx ? fx : Math.min(fx, x0)) +
      (extent[0] - X <= gx ? fx : Math.min(fx, x1)) +
      (y <= gy ? fy : Math.min(fy, y0)) +
      (extent[1] - Y <= gy ? fy : Math.min(fy, y1)) +
      (z <= gz ? fz : Math.min(fz, z0)) +
      (extent[2] - Z <= gz ? fz : Math.min(fz, z1));
    return sum / (2 * (fx + fy + fz));
  }

  place(space: number, block: number): this {
    const { blocks } = this.given;
    const [x, y, z] = this.corner(space, block);
    const [X, Y, Z] = [x + blocks.size[0][block]!, y + blocks.size[1][block]!, z + blocks.size[2][block]!];
    this.placed.set([x, y, z, X, Y, Z], 6 * this.placedCount);
    this.placedBlock[this.placedCount++] = block;
    this.volume += blocks.volume[block]!;
    for (let at = blocks.first[block]!; at < blocks.first[block + 1]!; at++) {
      const kind = blocks.kind[at]!;
      this.left[kind]! -= blocks.quantity[at]!;
      if (this.left[kind] === 0) this.kindsLeft[kind >> 5]! &= ~(1 << (kind & 31));
    }
    this.keepBuildable();
    this.cutSpaces(x, y, z, X, Y, Z);
    return this;
  }

  private keepBuildable(): void {
    const { first, kind, quantity } = this.given.blocks;
    const kept = new Int32Array(this.buildable.length);
    let count = 0;
    outer: for (let index = 0; index < this.buildable.length; index++) {
      const block = this.buildable[index]!;
      for (let at = first[block]!; at < first[block + 1]!; at++) if (quantity[at]! > this.left[kind[at]!]!) continue outer;
      kept[count++] = block;
    }
    this.buildable = kept.subarray(0, count);
  }

  /** Every space that the block reaches into gives way to what is left of it on its six sides. */
  private cutSpaces(x: number, y: number, z: number, X: number, Y: number, Z: number): void {
    const least = this.leastExtents();
    const old = this.spaces;
    const oldCount = this.spaceCount;
    const kept: number[] = [];
    const fresh: number[] = [];
    for (let space = 0; space < oldCount; space++) {
      const at = 6 * space;
      const [a, b, c, A, B, C] = [old[at]!, old[at + 1]!, old[at + 2]!, old[at + 3]!, old[at + 4]!, old[at + 5]!];
      const isLarge = A - a >= least[0]! && B - b >= least[1]! && C - c >= least[2]!;
      if (!isLarge) continue;
      if (x >= A || X <= a || y >= B || Y <= b || z >= C || Z <= c) {
        kept.push(a, b, c, A, B, C);
        continue;
      }
      if (x - a >= least[0]!) fresh.push(a, b, c, x, B, C);
      if (A - X >= least[0]!) fresh.push(X, b, c, A, B, C);
      if (y - b >= least[1]!) fresh.push(a, b, c, A, y, C);
      if (B - Y >= least[1]!) fresh.push(a, Y, c, A, B, C);
      if (z - c >= least[2]!) fresh.push(a, b, c, A, B, z);
      if (C - Z >= least[2]!) fresh.push(a, b, Z, A, B, C);
    }
    for (let at = 0; at < fresh.length; at += 6)
      if (!isInside(fresh, at, kept, -1) && !isInside(fresh, at, fresh, at)) kept.push(...fresh.slice(at, at + 6));
    if (kept.length > this.spaces.length) this.spaces = new Int32Array(kept.length * 2);
    this.spaces.set(kept);
    this.spaceCount = kept.length / 6;
  }

  private leastExtents(): readonly number[] {
    const least = [Infinity, Infinity, Infinity];
    const { leastExtent } = this.given;
    for (let kind = 0; kind < this.left.length; kind++)
      if (this.left[kind]! > 0) for (let axis = 0; axis < 3; axis++) least[axis] = Math.min(least[axis]!, leastExtent[kind * 3 + axis]!);
    return least;
  }
}

/** Whether the cuboid at `at` of `list` lies within another of `others`; of equal ones in one list the earlier stays. */
function isInside(list: readonly number[], at: number, others: readonly number[], own: number): boolean {
  for (let other = 0; other < others.length; other += 6) {
    if (other === own) continue;
    if (
      list[at]! >= others[other]! &&
      list[at + 1]! >= others[other + 1]! &&
      list[at + 2]! >= others[other + 2]! &&
      list[at + 3]! <= others[other + 3]! &&
      list[at + 4]! <= others[other + 4]! &&
      list[at + 5]! <= others[other + 5]!
    ) {
      const isEqual = own >= 0 && [0, 1, 2, 3, 4, 5].every((index) => list[at + index] === others[other + index]);
      if (!isEqual || other < own) return true;
    }
  }
  return false;
}
