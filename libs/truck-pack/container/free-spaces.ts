import type { Given } from './given.js';

/** Free cuboids and placed blocks, six numbers each: x0 y0 z0 x1 y1 z1. */
interface Spaces {
  spaces: Int32Array;
  spaceCount: number;
  readonly placed: Int32Array;
  /** Least extent along each axis of any box that is left. */
  readonly least: Int32Array;
}

/** Cuboids, six numbers each, in memory that grows. */
class Cuboids {
  list = new Int32Array(6 * 128);
  end = 0;

  add(a: number, b: number, c: number, A: number, B: number, C: number): void {
    if (this.end === this.list.length) {
      const longer = new Int32Array(2 * this.list.length);
      longer.set(this.list);
      this.list = longer;
    }
    const { list, end } = this;
    list[end] = a;
    list[end + 1] = b;
    list[end + 2] = c;
    list[end + 3] = A;
    list[end + 4] = B;
    list[end + 5] = C;
    this.end = end + 6;
  }

  /** Whether one of these, up to before `end`, contains the cuboid at `at` of a list. */
  contain(other: Int32Array, at: number, end: number): boolean {
    const { list } = this;
    const a = other[at]!;
    const b = other[at + 1]!;
    const c = other[at + 2]!;
    const A = other[at + 3]!;
    const B = other[at + 4]!;
    const C = other[at + 5]!;
    for (let o = 0; o < end; o += 6)
      if (a >= list[o]! && A <= list[o + 3]! && b >= list[o + 1]! && B <= list[o + 4]! && c >= list[o + 2]! && C <= list[o + 5]!)
        return true;
    return false;
  }
}

const sides = [0, 1, 2, 3, 4, 5] as const;

/** Keeps the maximal free cuboids of packings up to date; owns the memory that this takes, so that packings stay small. */
export class FreeSpaces {
  /** By side of the placed block (low x, high x, low y, high y, below, above): spaces that it left whole and that touch it there, and new ones. */
  private readonly touching = sides.map(() => new Cuboids());
  private readonly fresh = sides.map(() => new Cuboids());

  constructor(private readonly given: Given) {}

  /**
   * Every space that the block placed last (at `p` of the placed ones) reaches into gives way to what is left of it on the block's six sides. Such a
   * part meets the block's side, so only another part of that side, or a space that touches the block there, can contain it.
   * Under full support what is above the block lies within its flat top, so that the floor of every space is solid.
   */
  cut(packing: Spaces, p: number, block: number): void {
    const { spaces, spaceCount, placed, least } = packing;
    const leastX = least[0]!;
    const leastY = least[1]!;
    const leastZ = least[2]!;
    const x = placed[p]!;
    const y = placed[p + 1]!;
    const z = placed[p + 2]!;
    const X = placed[p + 3]!;
    const Y = placed[p + 4]!;
    const Z = placed[p + 5]!;
    const { hasFullSupport, blocks, room } = this.given;
    const topX = x + blocks.top[0][block]!;
    const topY = y + blocks.top[1][block]!;
    const { fresh, touching } = this;
    for (const side of sides) {
      fresh[side]!.end = 0;
      touching[side]!.end = 0;
    }
    let to = 0;
    for (let at = 0; at < 6 * spaceCount; at += 6) {
      const a = spaces[at]!;
      const b = spaces[at + 1]!;
      const c = spaces[at + 2]!;
      const A = spaces[at + 3]!;
      const B = spaces[at + 4]!;
      const C = spaces[at + 5]!;
      if (A - a < leastX || B - b < leastY || C - c < leastZ) continue;
      if (x >= A || X <= a || y >= B || Y <= b || z >= C || Z <= c) {
        if (to !== at) {
          spaces[to] = a;
          spaces[to + 1] = b;
          spaces[to + 2] = c;
          spaces[to + 3] = A;
          spaces[to + 4] = B;
          spaces[to + 5] = C;
        }
        to += 6;
        if (x > A || X < a || y > B || Y < b || z > C || Z < c) continue;
        const side = A === x ? 0 : a === X ? 1 : B === y ? 2 : b === Y ? 3 : C === z ? 4 : 5;
        touching[side]!.add(a, b, c, A, B, C);
        continue;
      }
      if (x - a >= leastX && room.takes(x - a, B - b, C - c)) fresh[0]!.add(a, b, c, x, B, C);
      if (A - X >= leastX && room.takes(A - X, B - b, C - c)) fresh[1]!.add(X, b, c, A, B, C);
      if (y - b >= leastY && room.takes(A - a, y - b, C - c)) fresh[2]!.add(a, b, c, A, y, C);
      if (B - Y >= leastY && room.takes(A - a, B - Y, C - c)) fresh[3]!.add(a, Y, c, A, B, C);
      if (z - c >= leastZ && room.takes(A - a, B - b, z - c)) fresh[4]!.add(a, b, c, A, B, z);
      if (C - Z < leastZ) continue;
      if (!hasFullSupport) {
        if (room.takes(A - a, B - b, C - Z)) fresh[5]!.add(a, b, Z, A, B, C);
      } else {
        const [a2, b2, A2, B2] = [a > x ? a : x, b > y ? b : y, A < topX ? A : topX, B < topY ? B : topY];
        if (A2 - a2 >= leastX && B2 - b2 >= leastY && room.takes(A2 - a2, B2 - b2, C - Z)) fresh[5]!.add(a2, b2, Z, A2, B2, C);
      }
    }
    for (const side of sides) to = this.keepMaximal(packing, side, to);
    packing.spaceCount = to / 6;
  }

  /** Adds to the packing's spaces, from `to` on, the new ones of a side that nothing contains; of equal ones the first. Gives the end. */
  private keepMaximal(packing: Spaces, side: number, to: number): number {
    const parts = this.fresh[side]!;
    const others = this.touching[side]!;
    const { list } = parts;
    let end = 0;
    next: for (let at = 0; at < parts.end; at += 6) {
      if (others.contain(list, at, others.end) || parts.contain(list, at, end)) continue;
      for (let later = at + 6; later < parts.end; later += 6) if (isWithin(list, at, later)) continue next;
      // What is kept moves to the front of the list: only that is compared with from then on.
      for (let each = 0; each < 6; each++) list[end + each] = list[at + each]!;
      end += 6;
    }
    if (packing.spaces.length < to + end) {
      const longer = new Int32Array(2 * (to + end));
      longer.set(packing.spaces);
      packing.spaces = longer;
    }
    for (let each = 0; each < end; each++) packing.spaces[to + each] = list[each]!;
    return to + end;
  }
}

/** Whether one cuboid of a list lies within another, and is not equal to it (an equal later one would give way to it). */
function isWithin(list: Int32Array, at: number, other: number): boolean {
  const a = list[at]! - list[other]!;
  const b = list[at + 1]! - list[other + 1]!;
  const c = list[at + 2]! - list[other + 2]!;
  const A = list[other + 3]! - list[at + 3]!;
  const B = list[other + 4]! - list[at + 4]!;
  const C = list[other + 5]! - list[at + 5]!;
  return a >= 0 && b >= 0 && c >= 0 && A >= 0 && B >= 0 && C >= 0 && a + b + c + A + B + C > 0;
}
