import type { Blocks } from './blocks.js';

const step = 12;

/** Blocks found by size, the worthiest first. */
export class BlockIndex {
  /** By axis: blocks by extent along it; extent t is `byExtent[axis][from[axis][t]] .. [from[axis][t + 1] - 1]`. */
  readonly byExtent: readonly [Int32Array, Int32Array, Int32Array];
  readonly from: readonly [Int32Array, Int32Array, Int32Array];
  private readonly byWorth: Int32Array;
  /** Lists of `fitting`, made when first asked for. */
  private readonly cells: (Int32Array | undefined)[] = [];
  private readonly coarseCells: (Int32Array | undefined)[] = [];
  private readonly sifted: Int32Array;
  private readonly across: readonly [number, number];

  constructor(
    private readonly blocks: Blocks,
    worth: Float64Array,
    extent: readonly number[],
  ) {
    this.byWorth = Int32Array.from({ length: blocks.count }, (_, block) => block).sort((a, b) => worth[b]! - worth[a]! || a - b);
    this.sifted = new Int32Array(blocks.count);
    this.across = [Math.ceil(extent[1]! / step) + 1, Math.ceil(extent[2]! / step) + 1];
    this.from = extent.map((most, axis) => {
      const from = new Int32Array(most + 2);
      for (let block = 0; block < blocks.count; block++) from[blocks.size[axis as 0 | 1 | 2][block]! + 1]!++;
      for (let t = 0; t <= most; t++) from[t + 1]! += from[t]!;
      return from;
    }) as unknown as readonly [Int32Array, Int32Array, Int32Array];
    this.byExtent = this.from.map((from, axis) => {
      const next = from.slice();
      const list = new Int32Array(blocks.count);
      for (const block of this.byWorth) list[next[blocks.size[axis as 0 | 1 | 2][block]!]!++] = block;
      return list;
    }) as unknown as readonly [Int32Array, Int32Array, Int32Array];
  }

  /** Every block that fits within lx, ly, lz, and some that are a little larger. */
  fitting(lx: number, ly: number, lz: number): Int32Array {
    const i = Math.ceil(lx / step);
    const j = Math.ceil(ly / step);
    const k = Math.ceil(lz / step);
    const cell = (i * this.across[0] + j) * this.across[1] + k;
    return (this.cells[cell] ??= this.sift(this.coarse(i >> 2, j >> 2, k >> 2), i * step, j * step, k * step));
  }

  private coarse(i: number, j: number, k: number): Int32Array {
    const cell = (i * this.across[0] + j) * this.across[1] + k;
    return (this.coarseCells[cell] ??= this.sift(this.byWorth, (4 * i + 3) * step, (4 * j + 3) * step, (4 * k + 3) * step));
  }

  private sift(list: Int32Array, lx: number, ly: number, lz: number): Int32Array {
    const [x, y, z] = this.blocks.size;
    const { sifted } = this;
    let count = 0;
    for (let rank = 0; rank < list.length; rank++) {
      const block = list[rank]!;
      if (x[block]! <= lx && y[block]! <= ly && z[block]! <= lz) sifted[count++] = block;
    }
    return sifted.slice(0, count);
  }
}
