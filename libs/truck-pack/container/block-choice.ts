import type { Given } from './given.js';
import type { Packing } from './packing.js';
import type { Reach } from './reach.js';

/** Gap, as part of a block's extent, that still counts as touching. */
const touchGap = 0.04;
/** Keeps the bounds above what rounding can do to the values. */
const slack = 1e-9;

/**
 * Chooses the best blocks for a space. A block is worth its volume, little broken up, times the part of the space that it and what can follow it
 * use, times the fourth power of the part of its surface that touches walls or blocks. (Araya, Guerrero and Nunez 2017, parameters theirs.)
 */
export class BlockChoice {
  /** The blocks chosen last, best first. */
  best = new Int32Array(64);
  /** Their values. */
  values = new Float64Array(64);
  /** Blocks looked at so far, and those of them whose value was worked out. */
  looked = 0;
  valued = 0;
  private count = 0;
  private width = 0;
  /** Value of the last of the best where there are as many as wanted, else 0. */
  private least = 0;
  /** Volume of the space. */
  private full = 0;
  private readonly after: Int32Array;
  private near = new Int32Array(6 * 64);
  private nearEnd = 0;

  constructor(private readonly given: Given) {
    this.after = new Int32Array(given.words);
  }

  /**
   * Finds the `width` best blocks for a space of a packing, into `best`; gives how many there are. Before a value is worked out, bounds are: what is
   * kept is at most all, and a far side touches only where the block leaves no more than the gap that counts as touching. So blocks that nearly span
   * the space along an axis come first, and of the others, whose touching part is at most a half, only the worthiest few are looked at.
   */
  choose(packing: Packing, space: number, width: number): number {
    if (width > this.best.length) {
      this.best = new Int32Array(2 * width);
      this.values = new Float64Array(2 * width);
    }
    const at = 6 * space;
    const { spaces, buildable } = packing;
    const lx = spaces[at + 3]! - spaces[at]!;
    const ly = spaces[at + 4]! - spaces[at + 1]!;
    const lz = spaces[at + 5]! - spaces[at + 2]!;
    const { index, worth, face, blocks } = this.given;
    const [sx, sy, sz] = blocks.size;
    const [fx, fy, fz] = face;
    this.full = lx * ly * lz;
    this.count = 0;
    this.least = 0;
    this.width = width;
    this.lookAround(packing, at);
    for (let axis = 0; axis < 3; axis++) {
      const list = index.byExtent[axis]!;
      const from = index.from[axis]!;
      const extent = axis === 0 ? lx : axis === 1 ? ly : lz;
      for (let t = extent; t > 0 && extent - t <= touchGap * t; t--)
        for (let each = from[t]!; each < from[t + 1]!; each++) {
          const block = list[each]!;
          if (worth[block]! <= this.least) break;
          this.looked++;
          if (buildable[block] === 0) continue;
          const x = sx[block]!;
          const y = sy[block]!;
          const z = sz[block]!;
          if (x > lx || y > ly || z > lz) continue;
          const spansX = lx - x <= touchGap * x;
          const spansY = ly - y <= touchGap * y;
          if ((axis > 0 && spansX) || (axis > 1 && spansY)) continue;
          const touch = 0.5 + slack + (spansX ? fx[block]! : 0) + (spansY ? fy[block]! : 0) + (lz - z <= touchGap * z ? fz[block]! : 0);
          const most = worth[block]! * touch * touch * touch * touch;
          if (most > this.least) this.consider(packing, space, block, lx - x, ly - y, lz - z, most);
        }
    }
    const list = index.fitting(lx, ly, lz);
    for (let rank = 0; rank < list.length; rank++) {
      const block = list[rank]!;
      const most = worth[block]! * (0.0625 + slack);
      if (most <= this.least) break;
      this.looked++;
      if (buildable[block] === 0) continue;
      const x = sx[block]!;
      const y = sy[block]!;
      const z = sz[block]!;
      if (x > lx || y > ly || z > lz || lx - x <= touchGap * x || ly - y <= touchGap * y || lz - z <= touchGap * z) continue;
      this.consider(packing, space, block, lx - x, ly - y, lz - z, most);
    }
    return this.count;
  }

  /** Works out the value of a block that leaves rx, ry, rz of the space and is worth at most `most`; keeps it where it is among the best. */
  private consider(packing: Packing, space: number, block: number, rx: number, ry: number, rz: number, most: number): void {
    const { values, best, width } = this;
    const { reach, worth, blocks } = this.given;
    const x = blocks.size[0][block]!;
    const y = blocks.size[1][block]!;
    const z = blocks.size[2][block]!;
    const kept = ((x + reach[0].longest[rx]!) * (y + reach[1].longest[ry]!) * (z + reach[2].longest[rz]!)) / this.full;
    if (most * kept <= this.least || (blocks.weights && !packing.mayTake(space, block))) return;
    this.valued++;
    this.findAfter(packing, block);
    let value =
      (worth[block]! * (x + this.reachable(reach[0], rx)) * (y + this.reachable(reach[1], ry)) * (z + this.reachable(reach[2], rz))) /
      this.full;
    const touch = this.touching(packing, space, block, x, y, z);
    value *= touch * touch * touch * touch;
    if (value <= this.least) return;
    let place = this.count < width ? this.count++ : width - 1;
    while (place > 0 && values[place - 1]! < value) {
      values[place] = values[place - 1]!;
      best[place] = best[place - 1]!;
      place--;
    }
    values[place] = value;
    best[place] = block;
    if (this.count === width) this.least = values[width - 1]!;
  }

  /** Kinds that are left once the block is built. */
  private findAfter({ left, kindsLeft }: Packing, block: number): void {
    const { after } = this;
    const { first, kind, quantity } = this.given.blocks;
    for (let word = 0; word < after.length; word++) after[word] = kindsLeft[word]!;
    for (let each = first[block]!; each < first[block + 1]!; each++) {
      const which = kind[each]!;
      if (left[which] === quantity[each]) after[which >> 5]! &= ~(1 << (which & 31));
    }
  }

  /** Longest sum of box edges within `rest` that a kind still left can end. */
  private reachable({ longest, enders, words }: Reach, rest: number): number {
    const { after } = this;
    for (let t = longest[rest]!; t > 0; t = longest[t - 1]!)
      for (let word = 0; word < words; word++) if ((enders[t * words + word]! & after[word]!) !== 0) return t;
    return 0;
  }

  /** Gathers the placed blocks that a block within the space could touch, a small gap allowed. */
  private lookAround({ spaces, placed, placedCount }: Packing, at: number): void {
    if (this.near.length < 6 * placedCount) this.near = new Int32Array(12 * placedCount);
    const { near } = this;
    const gx = touchGap * (spaces[at + 3]! - spaces[at]!);
    const gy = touchGap * (spaces[at + 4]! - spaces[at + 1]!);
    const gz = touchGap * (spaces[at + 5]! - spaces[at + 2]!);
    const x = spaces[at]! - gx;
    const y = spaces[at + 1]! - gy;
    const z = spaces[at + 2]! - gz;
    const X = spaces[at + 3]! + gx;
    const Y = spaces[at + 4]! + gy;
    const Z = spaces[at + 5]! + gz;
    let end = 0;
    for (let p = 0; p < 6 * placedCount; p += 6) {
      if (placed[p]! > X || placed[p + 3]! < x || placed[p + 1]! > Y || placed[p + 4]! < y || placed[p + 2]! > Z || placed[p + 5]! < z)
        continue;
      near[end] = placed[p]!;
      near[end + 1] = placed[p + 1]!;
      near[end + 2] = placed[p + 2]!;
      near[end + 3] = placed[p + 3]!;
      near[end + 4] = placed[p + 4]!;
      near[end + 5] = placed[p + 5]!;
      end += 6;
    }
    this.nearEnd = end;
  }

  /** Part of the surface of a block of extent dx, dy, dz that touches walls or placed blocks, a small gap allowed. */
  private touching(packing: Packing, space: number, block: number, dx: number, dy: number, dz: number): number {
    const { extent } = this.given;
    const x = packing.corner(space, block, 0);
    const y = packing.corner(space, block, 1);
    const z = packing.corner(space, block, 2);
    const X = x + dx;
    const Y = y + dy;
    const Z = z + dz;
    const gx = touchGap * dx;
    const gy = touchGap * dy;
    const gz = touchGap * dz;
    const fx = dy * dz;
    const fy = dx * dz;
    const fz = dx * dy;
    let x0 = x <= gx ? fx : 0;
    let x1 = extent[0] - X <= gx ? fx : 0;
    let y0 = y <= gy ? fy : 0;
    let y1 = extent[1] - Y <= gy ? fy : 0;
    let z0 = z <= gz ? fz : 0;
    let z1 = extent[2] - Z <= gz ? fz : 0;
    const { near, nearEnd } = this;
    for (let at = 0; at < nearEnd; at += 6) {
      const px = near[at]!;
      const pX = near[at + 3]!;
      const ox = (X < pX ? X : pX) - (x > px ? x : px);
      if (ox < -gx) continue;
      const py = near[at + 1]!;
      const pY = near[at + 4]!;
      const oy = (Y < pY ? Y : pY) - (y > py ? y : py);
      if (oy < -gy) continue;
      const pz = near[at + 2]!;
      const pZ = near[at + 5]!;
      const oz = (Z < pZ ? Z : pZ) - (z > pz ? z : pz);
      if (oz < -gz) continue;
      if (ox <= 0) {
        if (oy <= 0 || oz <= 0) continue;
        if (pX <= x) x0 += oy * oz;
        else x1 += oy * oz;
      } else if (oy <= 0) {
        if (oz <= 0) continue;
        if (pY <= y) y0 += ox * oz;
        else y1 += ox * oz;
      } else if (oz <= 0) {
        if (pZ <= z) z0 += ox * oy;
        else z1 += ox * oy;
      }
    }
    const sum =
      (x0 < fx ? x0 : fx) + (x1 < fx ? x1 : fx) + (y0 < fy ? y0 : fy) + (y1 < fy ? y1 : fy) + (z0 < fz ? z0 : fz) + (z1 < fz ? z1 : fz);
    return sum / (2 * (fx + fy + fz));
  }
}
