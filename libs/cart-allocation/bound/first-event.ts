import type { FloorPlan } from '../case/index.js';

/** What a load on a cart means for the places of each kind. */
export interface Opening {
  /** By kind: places that take boxes from the start. */
  readonly open: ReadonlyMap<number, number>;
  /** By kind: boxes of that kind that must have gone elsewhere before the first place for it opens that was not open from the start. */
  readonly later: ReadonlyMap<number, number>;
}

/**
 * When places open. A cart on which nothing has to come off is open up to its first lock: a place for a box that there is once and that
 * stands on a cart. A lock is undone when its box comes, after all that stands above that box has gone; any other cart opens when all that must
 * come off it has gone. Until the first later place for a kind opens, boxes of that kind go straight only into places open from the start.
 */
export class Openings {
  /** By kind that there is once and that stands on a cart: that cart, and the kinds above it. */
  private readonly locks: ReadonlyMap<number, { readonly cart: number; readonly above: readonly number[] }>;

  constructor(
    private readonly floor: FloorPlan,
    readonly single: ReadonlySet<number>,
  ) {
    const locks = new Map<number, { cart: number; above: readonly number[] }>();
    floor.carts.forEach(({ stack }, cart) =>
      stack.forEach((box, at) => {
        const kind = floor.kindOf[box]!;
        if (single.has(kind)) locks.set(kind, { cart, above: stack.slice(at + 1).map((each) => floor.kindOf[each]!) });
      }),
    );
    this.locks = locks;
  }

  /** A load whose kinds `on` still come onto a cart that stands like `cart`, after the kinds `off` have come off. */
  of(cart: number, off: readonly number[], on: readonly number[]): Opening {
    const open = new Map<number, number>();
    const later = new Map<number, number>();
    const gone = tally(off);
    let isOpen = off.length === 0;
    const undone = new Set<number>();
    for (const kind of on) {
      if (isOpen) open.set(kind, (open.get(kind) ?? 0) + 1);
      else if (!later.has(kind)) later.set(kind, gone.get(kind) ?? 0);
      const lock = this.locks.get(kind);
      if (!lock) continue;
      isOpen = false;
      // What lies above two locks of one cart, or above a lock of this cart, has been counted already.
      if (undone.has(lock.cart) || this.standsAlike(lock.cart, cart)) continue;
      undone.add(lock.cart);
      for (const [each, count] of tally(lock.above)) gone.set(each, (gone.get(each) ?? 0) + count);
    }
    return { open, later };
  }

  private standsAlike(a: number, b: number): boolean {
    return a === b || this.floor.carts[a]!.stack.join() === this.floor.carts[b]!.stack.join();
  }
}

/** Kinds of which there is one box only: pinned serials, and models with a single box that may be used. */
export function singleKinds(floor: FloorPlan): ReadonlySet<number> {
  const counts = tally(floor.kindOf);
  return new Set([...counts].filter(([kind, count]) => kind !== 0 && count === 1).map(([kind]) => kind));
}

export function tally(kinds: readonly number[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const kind of kinds) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return counts;
}
