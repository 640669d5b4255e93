import type { Choice } from '../bound/index.js';
import type { FloorPlan, NumberedMove } from '../case/index.js';
import { type Step, type WorkCart, movesOf, nextKind, straightKinds, workOf } from './work-carts.js';

/**
 * Carries a choice out in one pass: each box goes straight to its place as soon as that is open; boxes that the choice sets aside wait on the floor. Where
 * every box is there once this takes exactly the moves that the choice promises; others are set down where nothing else can be done.
 */
export function straightSchedule(floor: FloorPlan, choice: Choice): NumberedMove[] {
  const work = workOf(floor, choice);
  return movesOf(floor, work, new Pass(floor, work, straightKinds(floor, choice, work), choice.aside).steps());
}

class Pass {
  private readonly made: Step[] = [];
  private readonly progress: Uint16Array;
  private readonly comeIn: Int32Array;
  private readonly comeOff: Int32Array;
  private readonly onFloor: Int32Array;
  private readonly count: Int32Array;
  /** By kind: carts that stand open and wait for a box of it. */
  private readonly waiting = new Map<number, number[]>();
  private readonly open: boolean[];

  constructor(
    floor: FloorPlan,
    private readonly work: readonly WorkCart[],
    private readonly straight: ReadonlySet<number>,
    private readonly aside: ReadonlySet<number>,
  ) {
    this.progress = new Uint16Array(work.length);
    this.open = work.map(() => false);
    this.comeIn = new Int32Array(floor.kindCount);
    this.comeOff = new Int32Array(floor.kindCount);
    this.onFloor = new Int32Array(floor.kindCount);
    this.count = new Int32Array(floor.kindCount);
    for (const { off, on } of work) {
      for (const kind of off) this.comeOff[kind]!++;
      for (const kind of on) this.comeIn[kind]!++;
    }
    for (const box of floor.loose) this.onFloor[floor.kindOf[box]!]!++;
    for (const kind of floor.kindOf) this.count[kind]!++;
  }

  /** Costless steps while there are any; else one that costs a move. */
  steps(): Step[] {
    for (let cost = 0; cost <= 2 && !this.isDone(); ) cost = this.pass(cost) ? 0 : cost + 1;
    return this.made;
  }

  /** Every step that costs nothing, or one of this cost; whether any was made. */
  private pass(cost: number): boolean {
    let isMoved = false;
    for (let cart = 0; cart < this.work.length; cart++)
      while (this.advance(cart, cost)) {
        if (cost > 0) return true;
        isMoved = true;
      }
    return isMoved;
  }

  private isDone(): boolean {
    return (
      this.comeIn.every((count) => count === 0) && this.work.every(({ gives, off }, cart) => gives || this.progress[cart]! >= off.length)
    );
  }

  private advance(cart: number, cost: number): boolean {
    const { off, on, gives } = this.work[cart]!;
    const at = this.progress[cart]!;
    if (at >= off.length) return at - off.length < on.length && this.fill(cart, cost);
    const kind = off[at]!;
    if (gives && this.comeIn.every((count) => count === 0)) return false;
    const taker = kind === 0 ? undefined : this.waiting.get(kind)?.pop();
    if (taker !== undefined) return (this.put(cart, taker, kind), true);
    const isFree = kind === 0 || this.comeIn[kind] === 0 || this.aside.has(kind) || (this.isSingle(kind) && !this.straight.has(kind));
    const needed = isFree ? 0 : this.straight.has(kind) ? 2 : 1;
    if (cost < needed) return false;
    this.put(cart, -1, kind);
    return true;
  }

  /** From the floor, where that costs no move or must be; else the cart waits. */
  private fill(cart: number, cost: number): boolean {
    const kind = nextKind(this.work[cart]!, this.progress[cart]!)!;
    const isFree = this.comeIn[kind]! > this.comeOff[kind]! || this.isSingle(kind);
    if (this.onFloor[kind]! > 0 && (isFree || cost > 0)) {
      this.waiting.set(
        kind,
        (this.waiting.get(kind) ?? []).filter((each) => each !== cart),
      );
      this.put(-1, cart, kind);
      return true;
    }
    if (this.open[cart]) return false;
    this.open[cart] = true;
    const list = this.waiting.get(kind);
    if (list) list.push(cart);
    else this.waiting.set(kind, [cart]);
    return false;
  }

  private put(from: number, to: number, kind: number): void {
    this.made.push({ from, to, kind });
    if (from < 0) this.onFloor[kind]!--;
    else {
      this.progress[from]!++;
      this.comeOff[kind]!--;
    }
    if (to < 0) return void this.onFloor[kind]!++;
    this.progress[to]!++;
    this.comeIn[kind]!--;
    this.open[to] = false;
  }

  private isSingle(kind: number): boolean {
    return this.count[kind] === 1;
  }
}
