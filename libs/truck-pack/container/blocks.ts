import { BlockWeights } from './block-weights.js';
import { type ContainerCase, isWeighed, orientationsOf } from './container-case.js';

/** Boxes built into solid blocks, structure of arrays; `first[b] .. first[b + 1]` are its kinds and quantities. */
export interface Blocks {
  readonly count: number;
  readonly size: readonly [Int32Array, Int32Array, Int32Array];
  /** Extent along x and y, from the lower corner, of what is flat and closed on top; kept under full support only, else the whole. */
  readonly top: readonly [Int32Array, Int32Array];
  /** Volume of the boxes in it, and how many there are. */
  readonly volume: Float64Array;
  readonly pieces: Int32Array;
  readonly first: Int32Array;
  readonly kind: Int32Array;
  readonly quantity: Int32Array;
  /** How it was built: axis -1 is one box of kind `a`; else block `b` stands behind block `a` along the axis. */
  readonly axis: Int8Array;
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** Masses and what blocks bear; left out where nothing is weighed. */
  readonly weights: BlockWeights | undefined;
}

const mostBlocks = 10_000;

/**
 * Blocks by generations: every block of the last generation beside every block before it along each axis, kept where it fits, where there are enough
 * boxes, and where at least `leastFill` of it is box. (General blocks of Fanslau and Bortfeldt 2010, as used by Araya, Guerrero and Nunez 2017.)
 */
export function makeBlocks(problem: ContainerCase, leastFill: number, isLate: () => boolean): Blocks {
  const builder = new BlockBuilder(problem, leastFill);
  problem.boxes.forEach((box, kind) => {
    for (const [dx, dy, dz] of orientationsOf(box)) builder.addBox(kind, dx, dy, dz);
  });
  let from = 0;
  while (from < builder.count && builder.count < mostBlocks) {
    const to = builder.count;
    for (let p = from; p < to && builder.count < mostBlocks && !isLate(); p++) builder.joinAll(p);
    from = to;
  }
  return builder.blocks();
}

class BlockBuilder {
  count = 0;
  private readonly size = [0, 1, 2].map(() => new Int32Array(mostBlocks + 8)) as [Int32Array, Int32Array, Int32Array];
  private readonly top = [0, 1].map(() => new Int32Array(mostBlocks + 8)) as [Int32Array, Int32Array];
  private readonly volume = new Float64Array(mostBlocks + 8);
  private readonly pieces = new Int32Array(mostBlocks + 8);
  private readonly first = new Int32Array(mostBlocks + 9);
  private kind = new Int32Array(1 << 16);
  private quantity = new Int32Array(1 << 16);
  private readonly axis = new Int8Array(mostBlocks + 8);
  private readonly a = new Int32Array(mostBlocks + 8);
  private readonly b = new Int32Array(mostBlocks + 8);
  /** By axis: blocks with the same face across it, in the order in which they were made. */
  private readonly faces = [0, 1, 2].map(() => new Map<number, number[]>());
  private readonly most: readonly [number, number, number];
  private readonly available: Int32Array;
  private readonly hasFullSupport: boolean;
  private readonly weights: BlockWeights | undefined;
  /** Open addressing by hash of size and kinds; -1 is empty. */
  private readonly table = new Int32Array(1 << 15).fill(-1);

  constructor(
    problem: ContainerCase,
    private readonly leastFill: number,
  ) {
    this.most = [problem.length, problem.width, problem.height];
    this.hasFullSupport = problem.support === 'full';
    this.weights = isWeighed(problem) ? new BlockWeights(problem, mostBlocks + 8) : undefined;
    this.available = Int32Array.from(problem.boxes, (box) => box.count);
  }

  addBox(kind: number, dx: number, dy: number, dz: number): void {
    if (dx > this.most[0] || dy > this.most[1] || dz > this.most[2] || this.available[kind] === 0) return;
    const at = this.first[this.count]!;
    this.kind[at] = kind;
    this.quantity[at] = 1;
    this.weights?.ofBox(this.count, kind, dx * dy);
    this.keep(dx, dy, dz, dx, dy, dx * dy * dz, 1, at + 1, -1, kind, kind);
  }

  /** Block `p` with every block up to it, along every axis. */
  joinAll(p: number): void {
    if (this.leastFill < 1) return this.joinNearlySolid(p);
    // Solid blocks are solid together only where their faces are equal.
    for (let axis = 0; axis < 3; axis++)
      for (const q of this.alikeFaces(p, axis)) {
        if (q > p || this.count >= mostBlocks) break;
        this.join(p, q, axis);
        // Which is above matters where not every box bears the other.
        if (this.weights && axis === 2 && q !== p) this.join(q, p, axis);
      }
  }

  private joinNearlySolid(p: number): void {
    const { volume, leastFill, most, hasFullSupport } = this;
    const [sx, sy, sz] = this.size;
    const x = sx[p]!;
    const y = sy[p]!;
    const z = sz[p]!;
    const own = volume[p]! + 1e-9;
    for (let q = 0; q <= p && this.count < mostBlocks; q++) {
      const qx = sx[q]!;
      const qy = sy[q]!;
      const qz = sz[q]!;
      const wide = x > qx ? x : qx;
      const deep = y > qy ? y : qy;
      const high = z > qz ? z : qz;
      const filled = own + volume[q]!;
      if ((x + qx) * deep * high * leastFill <= filled && x + qx <= most[0]) this.join(p, q, 0);
      if (wide * (y + qy) * high * leastFill <= filled && y + qy <= most[1]) this.join(p, q, 1);
      if (wide * deep * (z + qz) * leastFill > filled || z + qz > most[2]) continue;
      this.join(p, q, 2);
      // Which is above matters only where a top can be too small.
      if (hasFullSupport && q !== p) this.join(q, p, 2);
    }
  }

  private alikeFaces(block: number, axis: number): readonly number[] {
    return this.faces[axis]!.get(this.faceKey(block, axis)) ?? [];
  }

  private faceKey(block: number, axis: number): number {
    const [a, b] = axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1];
    return this.size[a as 0 | 1 | 2][block]! * 65_536 + this.size[b as 0 | 1 | 2][block]!;
  }

  private join(p: number, q: number, axis: number): void {
    const [x, y, z] = this.size;
    const dx = axis === 0 ? x[p]! + x[q]! : Math.max(x[p]!, x[q]!);
    if (dx > this.most[0]) return;
    const dy = axis === 1 ? y[p]! + y[q]! : Math.max(y[p]!, y[q]!);
    if (dy > this.most[1]) return;
    const dz = axis === 2 ? z[p]! + z[q]! : Math.max(z[p]!, z[q]!);
    if (dz > this.most[2]) return;
    const volume = this.volume[p]! + this.volume[q]!;
    if (volume < this.leastFill * dx * dy * dz - 1e-9) return;
    let [topX, topY] = [dx, dy];
    if (this.hasFullSupport) {
      if (!this.isCarried(p, q, axis)) return;
      const [tx, ty] = this.top;
      topX = axis === 0 ? dx : axis === 2 ? tx[q]! : Math.min(tx[p]!, tx[q]!);
      topY = axis === 1 ? dy : axis === 2 ? ty[q]! : Math.min(ty[p]!, ty[q]!);
    }
    if (this.weights && !this.weights.ofPair(this.count, p, q, axis)) return;
    const end = this.merge(p, q);
    if (end > 0) this.keep(dx, dy, dz, topX, topY, volume, this.pieces[p]! + this.pieces[q]!, end, axis, p, q);
  }

  /** Upwards the second stands within the first one's top; sideways both are of one height and their tops meet along the whole axis. */
  private isCarried(p: number, q: number, axis: number): boolean {
    const [x, y, z] = this.size;
    const [tx, ty] = this.top;
    if (axis === 2) return x[q]! <= tx[p]! && y[q]! <= ty[p]!;
    if (z[p] !== z[q]) return false;
    return axis === 0 ? tx[p] === x[p] && tx[q] === x[q] : ty[p] === y[p] && ty[q] === y[q];
  }

  /** Writes the kinds of both behind the last block; gives the end, or 0 where there are not enough boxes. */
  private merge(p: number, q: number): number {
    let at = this.first[this.count]!;
    if (at + 300 > this.kind.length) this.grow();
    const { kind, quantity } = this;
    let [i, j] = [this.first[p]!, this.first[q]!];
    const [iEnd, jEnd] = [this.first[p + 1]!, this.first[q + 1]!];
    while (i < iEnd || j < jEnd) {
      const left = i < iEnd ? kind[i]! : Infinity;
      const right = j < jEnd ? kind[j]! : Infinity;
      const least = left < right ? left : right;
      const count = (left === least ? quantity[i++]! : 0) + (right === least ? quantity[j++]! : 0);
      if (count > this.available[least]!) return 0;
      kind[at] = least;
      quantity[at++] = count;
    }
    return at;
  }

  private keep(
    dx: number,
    dy: number,
    dz: number,
    topX: number,
    topY: number,
    volume: number,
    pieces: number,
    end: number,
    axis: number,
    a: number,
    b: number,
  ): void {
    const from = this.first[this.count]!;
    let hash = Math.imul(Math.imul(Math.imul(dx, 16_777_619) ^ dy, 16_777_619) ^ dz, 16_777_619);
    for (let at = from; at < end; at++) hash = Math.imul(hash ^ (this.kind[at]! * 512 + this.quantity[at]!), 16_777_619);
    const mask = this.table.length - 1;
    let slot = (hash ^ (hash >>> 15)) & mask;
    for (; this.table[slot] !== -1; slot = (slot + 1) & mask) if (this.isSame(this.table[slot]!, dx, dy, dz, topX, topY, from, end)) return;
    this.table[slot] = this.count;
    this.size[0][this.count] = dx;
    this.size[1][this.count] = dy;
    this.size[2][this.count] = dz;
    this.top[0][this.count] = topX;
    this.top[1][this.count] = topY;
    this.volume[this.count] = volume;
    this.pieces[this.count] = pieces;
    this.axis[this.count] = axis;
    this.a[this.count] = a;
    this.b[this.count] = b;
    if (this.leastFill === 1)
      for (let each = 0; each < 3; each++) {
        const key = this.faceKey(this.count, each);
        const alike = this.faces[each]!.get(key);
        if (alike) alike.push(this.count);
        else this.faces[each]!.set(key, [this.count]);
      }
    this.first[++this.count] = end;
  }

  private isSame(other: number, dx: number, dy: number, dz: number, topX: number, topY: number, from: number, end: number): boolean {
    if (this.weights && !this.weights.areAlike(other, this.count)) return false;
    if (this.top[0][other] !== topX || this.top[1][other] !== topY) return false;
    if (this.size[0][other] !== dx || this.size[1][other] !== dy || this.size[2][other] !== dz) return false;
    const start = this.first[other]!;
    if (this.first[other + 1]! - start !== end - from) return false;
    for (let at = 0; at < end - from; at++)
      if (this.kind[start + at] !== this.kind[from + at] || this.quantity[start + at] !== this.quantity[from + at]) return false;
    return true;
  }

  private grow(): void {
    const longer = (old: Int32Array) => {
      const grown = new Int32Array(old.length * 2);
      grown.set(old);
      return grown;
    };
    this.kind = longer(this.kind);
    this.quantity = longer(this.quantity);
  }

  blocks(): Blocks {
    const { count, size, top, volume, pieces, first, kind, quantity, axis, a, b, weights } = this;
    return { count, size, top, volume, pieces, first, kind, quantity, axis, a, b, weights };
  }
}
