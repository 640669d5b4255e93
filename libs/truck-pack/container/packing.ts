import type { FreeSpaces } from './free-spaces.js';
import type { Given } from './given.js';

/** A partly filled container: boxes left, maximal free cuboids, placed blocks. Coordinates come as x0 y0 z0 x1 y1 z1. */
export class Packing {
  volume = 0;
  /** Equal for equal sets of placed blocks, whatever their order (49 bits). */
  key = 0;
  readonly left: Int32Array;
  /** By block: 1 where there are enough boxes left to build it. */
  readonly buildable: Uint8Array;
  /** Kinds of which some are left, as a set of bits. */
  readonly kindsLeft: Int32Array;
  /** Least extent along each axis of any box that is left. */
  readonly least: Int32Array;
  spaces: Int32Array;
  spaceCount = 1;
  placed: Int32Array;
  placedBlock: Int32Array;
  placedCount = 0;
  massKg = 0;
  /** By placed block: pressure that its top still takes; kept where boxes are weighed. */
  private bears: Float64Array;

  constructor(private readonly given: Given) {
    const { problem, extent } = given;
    this.left = Int32Array.from(problem.boxes, (box) => box.count);
    this.buildable = new Uint8Array(given.blocks.count).fill(1);
    this.kindsLeft = new Int32Array(given.words);
    this.least = new Int32Array(3);
    this.spaces = new Int32Array(6 * 64);
    this.spaces.set([0, 0, 0, ...extent]);
    this.placed = new Int32Array(6 * 64);
    this.placedBlock = new Int32Array(64);
    this.bears = new Float64Array(given.blocks.weights ? 64 : 0);
    problem.boxes.forEach((box, kind) => {
      if (box.count > 0) this.kindsLeft[kind >> 5]! |= 1 << (kind & 31);
    });
    this.findLeast();
  }

  /** Becomes equal to another packing of the same problem. */
  become(other: Packing): this {
    this.volume = other.volume;
    this.key = other.key;
    this.left.set(other.left);
    this.buildable.set(other.buildable);
    this.kindsLeft.set(other.kindsLeft);
    this.least.set(other.least);
    if (this.spaces.length < 6 * other.spaceCount) this.spaces = new Int32Array(12 * other.spaceCount);
    copyFirst(other.spaces, this.spaces, 6 * other.spaceCount);
    this.spaceCount = other.spaceCount;
    if (this.placedBlock.length < other.placedCount) this.growPlaced(2 * other.placedCount);
    copyFirst(other.placed, this.placed, 6 * other.placedCount);
    copyFirst(other.placedBlock, this.placedBlock, other.placedCount);
    this.placedCount = other.placedCount;
    this.massKg = other.massKg;
    if (this.given.blocks.weights) {
      if (this.bears.length < other.placedCount) this.bears = new Float64Array(2 * other.placedCount);
      this.bears.set(other.bears.subarray(0, other.placedCount));
    }
    return this;
  }

  /** Block and corner of each placed block. */
  placements(): { block: number; x: number; y: number; z: number }[] {
    return Array.from({ length: this.placedCount }, (_, index) => ({
      block: this.placedBlock[index]!,
      x: this.placed[6 * index]!,
      y: this.placed[6 * index + 1]!,
      z: this.placed[6 * index + 2]!,
    })).filter((each) => each.block >= 0);
  }

  /** Takes the blocked places away; before anything is placed. Nothing stands on them. */
  blockOff(free: FreeSpaces): this {
    const { blocked = [] } = this.given.problem;
    for (const { x, y, z, dx, dy, dz } of blocked) {
      if (this.placedCount === this.placedBlock.length) this.growPlaced(2 * this.placedCount);
      this.placed.set([x, y, z, x + dx, y + dy, z + dz], 6 * this.placedCount);
      this.placedBlock[this.placedCount] = -1;
      // One beyond the last block: it has no top.
      free.cut(this, 6 * this.placedCount++, this.given.blocks.count);
    }
    return this;
  }

  /** Whether the block may stand in the space by its mass and by what is below it. */
  mayTake(space: number, block: number): boolean {
    const { weights } = this.given.blocks;
    if (!weights) return true;
    if (this.massKg + weights.massKg[block]! > (this.given.problem.limits?.payloadKg ?? Infinity) + 1e-9) return false;
    const z = this.spaces[6 * space + 2]!;
    if (z === 0) return true;
    return weights.isFloorOnly[block] === 0 && weights.presses[block]! <= this.leastBorne(space, block, z);
  }

  /** Pressure that everything below the block still takes. */
  private leastBorne(space: number, block: number, z: number): number {
    const { size } = this.given.blocks;
    const [x, y] = [this.corner(space, block, 0), this.corner(space, block, 1)];
    const [X, Y] = [x + size[0][block]!, y + size[1][block]!];
    let least = Infinity;
    for (let each = 0, at = 0; each < this.placedCount; each++, at += 6) {
      const { placed } = this;
      const isBelow = placed[at + 5] === z && placed[at]! < X && placed[at + 3]! > x && placed[at + 1]! < Y && placed[at + 4]! > y;
      if (isBelow && this.bears[each]! < least) least = this.bears[each]!;
    }
    return least;
  }

  /** The space whose corner is nearest to a corner of the container, of equals the largest; -1 when there is none. Support counts from the floor. */
  nextSpace(): number {
    const { spaces, spaceCount } = this;
    const { extent, hasFullSupport } = this.given;
    const X = extent[0];
    const Y = extent[1];
    const Z = extent[2];
    let best = -1;
    let least = Infinity;
    let largest = 0;
    for (let space = 0, at = 0; space < spaceCount; space++, at += 6) {
      const x0 = spaces[at]!;
      const y0 = spaces[at + 1]!;
      const z0 = spaces[at + 2]!;
      const toX = X - spaces[at + 3]!;
      const toY = Y - spaces[at + 4]!;
      const toZ = Z - spaces[at + 5]!;
      const key = (x0 < toX ? x0 : toX) + (y0 < toY ? y0 : toY) + (z0 < toZ || hasFullSupport ? z0 : toZ);
      if (key > least) continue;
      const volume = (X - toX - x0) * (Y - toY - y0) * (Z - toZ - z0);
      if (key < least || volume > largest) {
        best = space;
        least = key;
        largest = volume;
      }
    }
    return best;
  }

  dropSpace(space: number): void {
    this.spaceCount--;
    this.spaces.copyWithin(6 * space, 6 * this.spaceCount, 6 * this.spaceCount + 6);
  }

  /** Where the block's lower corner comes along an axis: the space's end that is nearer to a wall; always the floor under support. */
  corner(space: number, block: number, axis: 0 | 1 | 2): number {
    const from = this.spaces[6 * space + axis]!;
    const to = this.spaces[6 * space + 3 + axis]!;
    const { extent, blocks, hasFullSupport } = this.given;
    return from <= extent[axis] - to || (axis === 2 && hasFullSupport) ? from : to - blocks.size[axis][block]!;
  }

  /** The key once the block stands in the space. */
  keyWith(space: number, block: number): number {
    const at = (this.corner(space, block, 0) << 20) ^ (this.corner(space, block, 1) << 10) ^ this.corner(space, block, 2);
    let mixed = Math.imul(at ^ Math.imul(block + 1, 0x9e3779b1), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    mixed ^= mixed >>> 16;
    const more = Math.imul(mixed ^ block, 0x27d4eb2f) ^ at;
    return (this.key + (mixed >>> 0) * 65_536 + ((more ^ (more >>> 15)) & 65_535)) % 0x1_0000_0000_0000;
  }

  place(space: number, block: number, free: FreeSpaces): this {
    const { size, volume, first, kind, quantity } = this.given.blocks;
    const x = this.corner(space, block, 0);
    const y = this.corner(space, block, 1);
    const z = this.corner(space, block, 2);
    this.key = this.keyWith(space, block);
    if (this.placedCount === this.placedBlock.length) this.growPlaced(2 * this.placedCount);
    const { placed, left } = this;
    const at = 6 * this.placedCount;
    placed[at] = x;
    placed[at + 1] = y;
    placed[at + 2] = z;
    placed[at + 3] = x + size[0][block]!;
    placed[at + 4] = y + size[1][block]!;
    placed[at + 5] = z + size[2][block]!;
    const { weights } = this.given.blocks;
    if (weights) {
      const below = z === 0 ? Infinity : this.leastBorne(space, block, z) - weights.presses[block]!;
      this.bears[this.placedCount] = Math.min(weights.bears[block]!, below);
      this.massKg += weights.massKg[block]!;
    }
    this.placedBlock[this.placedCount++] = block;
    this.volume += volume[block]!;
    const { takers, takersFrom, kindFrom } = this.given;
    const { buildable } = this;
    let isExhausted = false;
    for (let each = first[block]!; each < first[block + 1]!; each++) {
      const which = kind[each]!;
      const from = takersFrom[kindFrom[which]! + left[which]! - quantity[each]! + 1]!;
      const to = takersFrom[kindFrom[which]! + left[which]! + 1]!;
      for (let taker = from; taker < to; taker++) buildable[takers[taker]!] = 0;
      left[which]! -= quantity[each]!;
      if (left[which] !== 0) continue;
      isExhausted = true;
      this.kindsLeft[which >> 5]! &= ~(1 << (which & 31));
    }
    if (isExhausted) this.findLeast();
    free.cut(this, at, block);
    return this;
  }

  private growPlaced(capacity: number): void {
    const [placed, placedBlock] = [this.placed, this.placedBlock];
    this.placed = new Int32Array(6 * capacity);
    this.placed.set(placed);
    this.placedBlock = new Int32Array(capacity);
    this.placedBlock.set(placedBlock);
    if (!this.given.blocks.weights) return;
    const { bears } = this;
    this.bears = new Float64Array(capacity);
    this.bears.set(bears);
  }

  private findLeast(): void {
    const { leastExtent } = this.given;
    this.least.fill(1 << 30);
    for (let kind = 0; kind < this.left.length; kind++)
      if (this.left[kind]! > 0)
        for (let axis = 0; axis < 3; axis++)
          if (leastExtent[kind * 3 + axis]! < this.least[axis]!) this.least[axis] = leastExtent[kind * 3 + axis]!;
  }
}

function copyFirst(from: Int32Array, to: Int32Array, count: number): void {
  for (let index = 0; index < count; index++) to[index] = from[index]!;
}
