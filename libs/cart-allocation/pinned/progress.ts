import type { PinnedWork } from './pinned-work.js';

/** How far stacks and loads have come: by stack, boxes lifted off; by load, boxes in place. */
export interface Progress {
  readonly lifted: Uint16Array;
  readonly placed: Uint16Array;
}

/** One box moved: from the stack (-1: the floor) to the load (-1: the floor). */
export interface PinnedStep {
  readonly stack: number;
  readonly load: number;
  /** Index in what comes onto the load; -1 where it goes to the floor. */
  readonly place: number;
}

/** The work in flat numbers, and the moves that nothing can be better than. */
export class SafeMoves {
  readonly off: readonly Int32Array[];
  readonly on: readonly Int32Array[];
  readonly after: Int32Array;
  /** By stack: the load on its cart; -1: none. */
  readonly opens: Int32Array;
  readonly stackOf: Int32Array;
  readonly depthOf: Int32Array;
  readonly loadOf: Int32Array;
  readonly placeOf: Int32Array;
  readonly isAside: Uint8Array;
  private readonly pending: number[] = [];

  constructor(work: PinnedWork) {
    this.off = work.stacks.map(({ off }) => Int32Array.from(off));
    this.on = work.loads.map(({ on }) => Int32Array.from(on));
    this.after = Int32Array.from(work.loads, ({ after }) => after);
    this.opens = new Int32Array(work.stacks.length).fill(-1);
    this.after.forEach((stack, load) => stack >= 0 && (this.opens[stack] = load));
    this.stackOf = Int32Array.from(work.movers, ({ stack }) => stack);
    this.depthOf = Int32Array.from(work.movers, ({ depth }) => depth);
    this.loadOf = Int32Array.from(work.movers, ({ load }) => load);
    this.placeOf = Int32Array.from(work.movers, ({ place }) => place);
    this.isAside = Uint8Array.from(work.movers, ({ isAside }) => Number(isAside));
  }

  begin(): Progress {
    return { lifted: new Uint16Array(this.off.length), placed: new Uint16Array(this.on.length) };
  }

  isOpen(load: number, { lifted }: Progress): boolean {
    const stack = this.after[load]!;
    return stack < 0 || lifted[stack]! >= this.off[stack]!.length;
  }

  /** Whether the mover's place is the next one of a load that stands open. */
  isNext(mover: number, progress: Progress): boolean {
    const load = this.loadOf[mover]!;
    return progress.placed[load] === this.placeOf[mover] && this.isOpen(load, progress);
  }

  /** Every place is filled, and nothing stands on a load's cart that is to come off. */
  isDone(progress: Progress): boolean {
    for (let load = 0; load < this.on.length; load++)
      if (progress.placed[load]! < this.on[load]!.length || !this.isOpen(load, progress)) return false;
    return true;
  }

  /**
   * How many boxes come off the stack until one goes straight into its place or the cart under it is free for a load, and how many of them are set aside
   * that need not be. undefined: neither comes.
   */
  nextEvent(stack: number, progress: Progress): { readonly until: number; readonly aside: number } | undefined {
    const off = this.off[stack]!;
    let until = progress.lifted[stack]!;
    if (until >= off.length) return undefined;
    let aside = 0;
    for (; until < off.length; until++) {
      const mover = off[until]!;
      if (mover < 0) continue;
      if (this.isNext(mover, progress)) return { until, aside };
      if (this.isAside[mover] === 0) aside++;
    }
    return this.opens[stack]! < 0 ? undefined : { until, aside };
  }

  /**
   * Every move that a shortest plan may make at once: a box straight into its place or from the floor into it, a box that has no place, or that has to
   * be set aside anyway (`aside`: in this state of a relaxation), off its stack.
   */
  closeAll(progress: Progress, aside: Uint8Array = this.isAside, note?: PinnedStep[]): void {
    for (let load = 0; load < this.on.length; load++) this.pending.push(load);
    for (let stack = 0; stack < this.off.length; stack++) this.lift(stack, progress, aside, note);
    this.settle(progress, aside, note);
  }

  /** The same after boxes were lifted off one stack. */
  closeAfter(stack: number, progress: Progress, aside: Uint8Array = this.isAside, note?: PinnedStep[]): void {
    this.lift(stack, progress, aside, note);
    this.settle(progress, aside, note);
  }

  private settle(progress: Progress, aside: Uint8Array, note?: PinnedStep[]): void {
    for (let load = this.pending.pop(); load !== undefined; load = this.pending.pop()) this.fill(load, progress, aside, note);
  }

  private fill(load: number, progress: Progress, aside: Uint8Array, note?: PinnedStep[]): void {
    if (!this.isOpen(load, progress)) return;
    const { lifted, placed } = progress;
    const on = this.on[load]!;
    while (placed[load]! < on.length) {
      const mover = on[placed[load]!]!;
      if (mover >= 0) {
        const stack = this.stackOf[mover]!;
        const above = this.depthOf[mover]! - lifted[stack]!;
        if (above > 0) return;
        // On top: it goes straight, and the stack goes on.
        if (above === 0) return this.lift(stack, progress, aside, note);
      }
      note?.push({ stack: -1, load, place: placed[load]! });
      placed[load]!++;
    }
  }

  private lift(stack: number, progress: Progress, aside: Uint8Array, note?: PinnedStep[]): void {
    const { lifted, placed } = progress;
    const off = this.off[stack]!;
    while (lifted[stack]! < off.length) {
      const mover = off[lifted[stack]!]!;
      if (mover >= 0 && this.isNext(mover, progress)) {
        const load = this.loadOf[mover]!;
        note?.push({ stack, load, place: placed[load]! });
        placed[load]!++;
        this.pending.push(load);
      } else if (mover < 0 || aside[mover] === 1) note?.push({ stack, load: -1, place: -1 });
      else return;
      lifted[stack]!++;
    }
    const load = this.opens[stack]!;
    if (load >= 0) this.pending.push(load);
  }
}
