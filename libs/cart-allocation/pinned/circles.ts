import type { Progress, SafeMoves } from './progress.js';

/** Boxes looked at for one bound; on a floor so large the circles found by then have to do. */
const mostLooked = 5_000_000;

/**
 * Boxes that have still to be set aside, at the least: circles of boxes that wait for one another, no two of which the same box opens. In a state in which no
 * safe move is left every load waits for its next box, so for each box that lies above that one, so for the loads that these go to. A shortest circle of
 * loads costs one box; all boxes that could open it are then let go for nothing, safe moves are made, and so on to the end.
 */
export class Circles {
  private readonly aside: Uint8Array;
  private readonly from: Int32Array;
  private readonly by: Int32Array;
  private readonly queue: Int32Array;
  /** Boxes looked at. */
  looked = 0;

  constructor(private readonly safe: SafeMoves) {
    this.aside = new Uint8Array(safe.isAside.length);
    this.from = new Int32Array(safe.on.length);
    this.by = new Int32Array(safe.on.length);
    this.queue = new Int32Array(safe.on.length);
  }

  /** For a state without safe moves. Circles beyond `enough` are not looked for. */
  atLeast(progress: Progress, enough: number): number {
    const { safe, aside } = this;
    const relaxed = { lifted: progress.lifted.slice(), placed: progress.placed.slice() };
    aside.set(safe.isAside);
    let count = 0;
    const most = this.looked + mostLooked;
    while (count < enough && this.looked < most) {
      const circle = this.shortest(relaxed);
      if (circle.length === 0) break;
      count++;
      for (const mover of circle) aside[mover] = 1;
      for (const mover of circle) safe.closeAfter(safe.stackOf[mover]!, relaxed, aside);
    }
    return count;
  }

  /** The boxes that open a shortest circle. */
  private shortest(progress: Progress): number[] {
    let best: number[] = [];
    for (let load = 0; load < this.safe.on.length; load++) {
      if (progress.placed[load]! >= this.safe.on[load]!.length) continue;
      const circle = this.through(load, progress, best.length === 0 ? Infinity : best.length);
      if (circle && (best.length === 0 || circle.length < best.length)) best = circle;
      if (best.length === 2) break;
    }
    return best;
  }

  /** Breadth first from the load over boxes that lie above what a load waits for. */
  private through(source: number, progress: Progress, below: number): number[] | undefined {
    const { safe, from, by, queue, aside } = this;
    const { lifted, placed } = progress;
    from.fill(-1);
    queue[0] = source;
    let [head, tail, levelEnd, depth] = [0, 1, 1, 1];
    while (head < tail && depth < below) {
      const load = queue[head++]!;
      const isOpen = safe.isOpen(load, progress);
      const next = safe.on[load]![placed[load]!]!;
      const stack = isOpen ? safe.stackOf[next]! : safe.after[load]!;
      const end = isOpen ? safe.depthOf[next]! : safe.off[stack]!.length;
      const off = safe.off[stack]!;
      this.looked += end - lifted[stack]!;
      for (let at = lifted[stack]!; at < end; at++) {
        const mover = off[at]!;
        if (mover < 0 || aside[mover] === 1) continue;
        const to = safe.loadOf[mover]!;
        if (from[to]! >= 0 || (safe.placeOf[mover] === placed[to] && safe.isOpen(to, progress))) continue;
        from[to] = load;
        by[to] = mover;
        if (to === source) return this.traced(source);
        queue[tail++] = to;
      }
      if (head === levelEnd) [levelEnd, depth] = [tail, depth + 1];
    }
    return undefined;
  }

  private traced(source: number): number[] {
    const circle = [this.by[source]!];
    for (let load = this.from[source]!; load !== source; load = this.from[load]!) circle.push(this.by[load]!);
    return circle;
  }
}
