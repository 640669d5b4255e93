import type { Piece, Truck } from '../case/index.js';

/** A piece in its place: corner nearest nose, left wall and floor, and its size as placed. */
export interface Placed {
  readonly piece: Piece;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly along: number;
  readonly across: number;
  readonly high: number;
  readonly turned: boolean;
}

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

interface Obstacle extends Spot {
  readonly along: number;
  readonly across: number;
  readonly high: number;
}

export interface PlacingStyle {
  /** How much a place further from the nose costs, against the far end of the piece. */
  readonly nearNose: number;
  /** Prefer the lighter side. */
  readonly balance: number;
  /** Also look at places away from the walls that level the load. */
  readonly centred: boolean;
  /** Free space that is left ahead of the nose, millimetres: moves the load back where the axles ask for it. */
  readonly startMm: number;
  /** Pieces that stand on the floor although they may ride, so that what comes off before them rides on them. */
  readonly grounded?: ReadonlySet<Piece>;
}

/**
 * The inside of one truck while it is loaded. A piece goes straight in from the door along its lane until it stands against something, so what
 * is loaded later never stands behind what was loaded before: loaded in falling order of `firstOff`, nothing is in the way of what is needed earlier.
 */
export class LoadSpace {
  readonly placed: Placed[] = [];
  massKg = 0;
  momentKgMm = 0;
  sideMomentKgMm = 0;
  private readonly blocked: Obstacle[];
  private readonly bearing = new Map<Placed, number>();
  private readonly tops = new Set<number>();
  private hanging = false;
  /** Steps of work that looking for places took. */
  looked = 0;

  constructor(
    readonly truck: Truck,
    private readonly minSupport: number,
    private readonly style: PlacingStyle,
  ) {
    this.blocked = truck.blocked.map((each) => ({
      x: each.xMm,
      y: each.yMm,
      z: each.zMm,
      along: each.lengthMm,
      across: each.widthMm,
      high: each.heightMm,
    }));
  }

  /** Puts the piece in its best place; false when it has none or the payload is used up. */
  load(piece: Piece): boolean {
    if (this.truck.payloadKg !== undefined && this.massKg + piece.massKg > this.truck.payloadKg + 1e-6) return false;
    const best = this.bestPlace(piece);
    if (!best) return false;
    this.put(best);
    return true;
  }

  /** Puts a piece in a place that the caller has chosen; false where something blocked is in the way or it is higher than the door. */
  putAt(placed: Placed): boolean {
    if (placed.z + placed.high > this.lowestHeight()) return false;
    if (this.pastBlocked(placed.x, placed.y, placed.z, placed.along, placed.across, placed.high) !== placed.x) return false;
    this.put(placed);
    return true;
  }

  private put(placed: Placed): void {
    for (const [under, kg] of this.shares(placed, placed.piece.massKg)) this.bear(under, kg);
    this.placed.push(placed);
    this.hanging ||= placed.z > 0;
    this.tops.add(placed.z + placed.high);
    this.massKg += placed.piece.massKg;
    this.momentKgMm += placed.piece.massKg * (placed.x + placed.along / 2);
    this.sideMomentKgMm += placed.piece.massKg * (placed.y + placed.across / 2 - this.truck.innerWidthMm / 2);
  }

  private bestPlace(piece: Piece): Placed | undefined {
    let best: Placed | undefined;
    let least = Infinity;
    const turns = piece.mayTurn && piece.lengthMm !== piece.widthMm ? [false, true] : [false];
    for (const turned of turns) {
      const [along, across] = turned ? [piece.widthMm, piece.lengthMm] : [piece.lengthMm, piece.widthMm];
      const high = piece.heightMm;
      if (along > this.truck.innerLengthMm || across > this.truck.innerWidthMm || high > this.lowestHeight()) continue;
      const levels = piece.floorOnly || this.style.grounded?.has(piece) ? [0] : [0, ...this.tops];
      for (const z of levels) {
        if (z + high > this.lowestHeight()) continue;
        for (const y of this.sides(across, piece.massKg)) {
          this.looked += 0.05 + 0.02 * this.placed.length;
          for (const x of this.stops(y, z, along, across, high)) {
            const placed: Placed = { piece, x, y, z, along, across, high, turned };
            const cost = this.cost(placed);
            if (cost < least && this.stands(placed)) [best, least] = [placed, cost];
          }
        }
      }
    }
    return best;
  }

  private cost({ x, y, z, along, across, piece }: Placed): number {
    const side = this.sideMomentKgMm + piece.massKg * (y + across / 2 - this.truck.innerWidthMm / 2);
    const off = this.massKg + piece.massKg > 0 ? Math.abs(side) / (this.massKg + piece.massKg) : 0;
    const wall = Math.min(y, this.truck.innerWidthMm - y - across);
    return x + along + this.style.nearNose * x + this.style.balance * off + 1e-3 * wall - 1e-4 * z;
  }

  private lowestHeight(): number {
    return Math.min(this.truck.innerHeightMm, this.truck.doorHeightMm ?? Infinity);
  }

  /** Sideways places worth a look: against a wall, beside something that stands, and where balance is asked for also where it is best. */
  private sides(across: number, massKg: number): Set<number> {
    const width = this.truck.innerWidthMm;
    const sides = new Set([0, width - across]);
    if (this.style.centred && massKg > 0) {
      const level = Math.round(width / 2 - this.sideMomentKgMm / massKg - across / 2);
      sides.add(Math.floor((width - across) / 2)).add(Math.min(width - across, Math.max(0, level)));
    }
    for (const each of [...this.placed.slice(-120), ...this.blocked]) {
      for (const y of [each.y + each.across, each.y - across, each.y, each.y + each.across - across])
        if (y >= 0 && y + across <= width) sides.add(y);
    }
    return sides;
  }

  /** Distances from the nose at which a piece in this lane can stop: against what stands in the lane; on top also flush with what it stands on. */
  private stops(y: number, z: number, along: number, across: number, high: number): number[] {
    let against = this.style.startMm;
    for (const each of this.placed)
      if (overlaps(each.y, each.across, y, across) && overlaps(each.z, each.high, z, high))
        against = Math.max(against, each.x + each.along);
    const stops = [against];
    if (z > 0) {
      for (const each of this.placed) {
        if (each.z + each.high !== z || !overlaps(each.y, each.across, y, across)) continue;
        for (const x of [each.x, each.x + each.along - along]) if (x > against) stops.push(x);
      }
    }
    return stops.map((x) => this.pastBlocked(x, y, z, along, across, high)).filter((x) => x + along <= this.truck.innerLengthMm);
  }

  private pastBlocked(from: number, y: number, z: number, along: number, across: number, high: number): number {
    let x = from;
    for (let moved = true; moved; ) {
      moved = false;
      for (const each of this.blocked) {
        if (!overlaps(each.x, each.along, x, along) || !overlaps(each.y, each.across, y, across) || !overlaps(each.z, each.high, z, high))
          continue;
        x = each.x + each.along;
        moved = true;
      }
    }
    return x;
  }

  /** Enough of the base on the floor or on tops at that height, and nothing under it asked to bear too much. */
  private stands(placed: Placed): boolean {
    // What comes under an overhang at its height would carry a part of it, though it went in later.
    const top = placed.z + placed.high;
    if (this.hanging && this.placed.some((each) => each.z === top && contact(each, placed) > 0)) return false;
    if (placed.z === 0) return true;
    let supported = 0;
    for (const each of this.placed) if (each.z + each.high === placed.z) supported += contact(each, placed);
    if (supported < this.minSupport * placed.along * placed.across - 1e-6) return false;
    if (supported === 0) return false;
    return this.bears(this.shares(placed, placed.piece.massKg));
  }

  /** What stands below takes the mass in proportion to contact area. */
  private shares(placed: Placed, massKg: number): [Placed, number][] {
    if (placed.z === 0) return [];
    const under = this.placed.filter((each) => each.z + each.high === placed.z && contact(each, placed) > 0);
    const total = under.reduce((sum, each) => sum + contact(each, placed), 0);
    return under.map((each) => [each, (massKg * contact(each, placed)) / total]);
  }

  private bears(shares: readonly [Placed, number][]): boolean {
    const extra = new Map<Placed, number>();
    const pass = (under: Placed, kg: number): boolean => {
      extra.set(under, (extra.get(under) ?? 0) + kg);
      if (under.piece.maxOnTopKg !== undefined && (this.bearing.get(under) ?? 0) + extra.get(under)! > under.piece.maxOnTopKg + 1e-6)
        return false;
      return this.shares(under, kg).every(([below, part]) => pass(below, part));
    };
    return shares.every(([under, kg]) => pass(under, kg));
  }

  private bear(under: Placed, kg: number): void {
    this.bearing.set(under, (this.bearing.get(under) ?? 0) + kg);
    for (const [below, part] of this.shares(under, kg)) this.bear(below, part);
  }
}

const overlaps = (a: number, lengthA: number, b: number, lengthB: number): boolean => a < b + lengthB && b < a + lengthA;

function contact(a: Obstacle, b: Obstacle): number {
  const along = Math.min(a.x + a.along, b.x + b.along) - Math.max(a.x, b.x);
  const across = Math.min(a.y + a.across, b.y + b.across) - Math.max(a.y, b.y);
  return along > 0 && across > 0 ? along * across : 0;
}
