import type { Choice } from './bound-program.js';
import { type FloorPlan, keptBoxes } from './floor-plan.js';

/** A box move in small numbers: box, and the index of the cart it comes from and goes to (-1 = the floor). */
export interface NumberedMove {
  readonly box: number;
  readonly from: number;
  readonly to: number;
}

const floorPlace = -1;

/**
 * Carries a choice out: takes every move that loses nothing (straight into place; surplus to the floor; from the floor where the floor must serve
 * anyway), and where all carts wait for one another sets one box on the floor. `random` breaks ties, so that several tries differ.
 */
export function scheduleChoice(floor: FloorPlan, choice: Choice, random: () => number): NumberedMove[] {
  return new Schedule(floor, choice, random).run();
}

class Schedule {
  private readonly stacks: number[][];
  /** By cart: kinds wanted, bottom first; undefined for carts without a load. */
  private readonly wanted: (readonly number[] | undefined)[];
  /** By cart: how many boxes must still come off. */
  private readonly off: number[];
  /** By kind: boxes still to come into place, boxes still to come off, boxes on the floor. */
  private readonly comeIn: number[];
  private readonly comeOff: number[];
  private readonly onFloor: number[][];
  /** By kind: carts that wait for it next; carts that offer it on top. */
  private readonly waiting: Set<number>[];
  private readonly offering: Set<number>[];
  private readonly moves: NumberedMove[] = [];

  constructor(
    private readonly floor: FloorPlan,
    choice: Choice,
    private readonly random: () => number,
  ) {
    const kinds = floor.kindCount;
    const perKind = <T>(make: () => T) => Array.from({ length: kinds }, make);
    this.stacks = floor.carts.map((cart) => [...cart.stack]);
    this.wanted = floor.carts.map(() => undefined);
    choice.cartOf.forEach((cart, load) => (this.wanted[cart] = floor.loads[load]!.kinds));
    this.comeIn = perKind(() => 0);
    this.comeOff = perKind(() => 0);
    this.onFloor = perKind(() => []);
    this.waiting = perKind(() => new Set());
    this.offering = perKind(() => new Set());
    this.off = floor.carts.map((cart, index) => {
      const wanted = this.wanted[index];
      return wanted ? cart.stack.length - keptBoxes(floor, cart.stack, wanted) : (choice.taken.get(index) ?? 0);
    });
    floor.carts.forEach((cart, index) => {
      for (const box of cart.stack.slice(cart.stack.length - this.off[index]!)) this.comeOff[floor.kindOf[box]!]!++;
      for (const kind of this.wanted[index]?.slice(cart.stack.length - this.off[index]!) ?? []) this.comeIn[kind]!++;
    });
    for (const box of floor.loose) this.onFloor[floor.kindOf[box]!]!.push(box);
    floor.carts.forEach((_, index) => this.list(index));
  }

  run(): NumberedMove[] {
    while (this.straight() || this.fromFloor() || this.surplusToFloor() || this.breakWait());
    return this.moves;
  }

  private straight(): boolean {
    const kind = this.pickKind((each) => this.offering[each]!.size > 0 && this.waiting[each]!.size > 0);
    if (kind === 0) return false;
    const from = this.pick(this.offering[kind]!, (cart) => this.off[cart]!);
    this.move(
      from,
      this.pick(this.waiting[kind]!, (cart) => this.wanted[cart]!.length - this.stacks[cart]!.length),
    );
    return true;
  }

  private fromFloor(): boolean {
    const kind = this.pickKind(
      (each) => this.waiting[each]!.size > 0 && this.onFloor[each]!.length > 0 && this.comeIn[each]! > this.comeOff[each]!,
    );
    if (kind === 0) return false;
    this.move(
      floorPlace,
      this.pick(this.waiting[kind]!, (cart) => this.wanted[cart]!.length - this.stacks[cart]!.length),
      kind,
    );
    return true;
  }

  private surplusToFloor(): boolean {
    if (this.offering[0]!.size > 0) {
      this.move(
        this.pick(this.offering[0]!, (cart) => this.off[cart]!),
        floorPlace,
      );
      return true;
    }
    const kind = this.pickKind((each) => this.offering[each]!.size > 0 && this.comeOff[each]! > this.comeIn[each]!);
    if (kind === 0) return false;
    this.move(
      this.pick(this.offering[kind]!, (cart) => this.off[cart]!),
      floorPlace,
    );
    return true;
  }

  /** All wait for one another: the cart with the fewest boxes to come off gives its top box to the floor. */
  private breakWait(): boolean {
    const carts = new Set<number>();
    for (const each of this.offering) for (const cart of each) carts.add(cart);
    if (carts.size === 0) return this.servedFromFloor();
    this.move(
      this.pick(carts, (cart) => this.off[cart]! + (this.wanted[cart] ? 0 : 0.5)),
      floorPlace,
    );
    return true;
  }

  /** Nothing more comes off: what is left to fill is filled from the floor. */
  private servedFromFloor(): boolean {
    const kind = this.pickKind((each) => this.waiting[each]!.size > 0 && this.onFloor[each]!.length > 0);
    if (kind === 0) return false;
    this.move(
      floorPlace,
      this.pick(this.waiting[kind]!, () => 0),
      kind,
    );
    return true;
  }

  private pickKind(fits: (kind: number) => boolean): number {
    let [found, seen] = [0, 0];
    for (let kind = 1; kind < this.floor.kindCount; kind++) if (fits(kind) && this.random() * ++seen < 1) found = kind;
    return found;
  }

  /** One of the carts with the least cost, the first hundred looked at. */
  private pick(carts: ReadonlySet<number>, cost: (cart: number) => number): number {
    let [best, least, ties, looked] = [-1, Infinity, 0, 0];
    for (const cart of carts) {
      const each = cost(cart);
      if (each < least) [best, least, ties] = [cart, each, 1];
      else if (each === least && this.random() * ++ties < 1) best = cart;
      if (++looked >= 100) break;
    }
    return best;
  }

  private move(from: number, to: number, kindOnFloor = 0): void {
    const box = from === floorPlace ? this.onFloor[kindOnFloor]!.shift()! : this.stacks[from]!.at(-1)!;
    const kind = this.floor.kindOf[box]!;
    for (const cart of [from, to]) if (cart !== floorPlace) this.unlist(cart);
    if (from !== floorPlace) {
      this.stacks[from]!.pop();
      this.off[from]!--;
      this.comeOff[kind]!--;
    }
    if (to === floorPlace) this.onFloor[kind]!.push(box);
    else {
      this.stacks[to]!.push(box);
      this.comeIn[kind]!--;
    }
    for (const cart of [from, to]) if (cart !== floorPlace) this.list(cart);
    this.moves.push({ box, from, to });
  }

  private list(cart: number): void {
    const stack = this.stacks[cart]!;
    if (this.off[cart]! > 0) this.offering[this.floor.kindOf[stack.at(-1)!]!]!.add(cart);
    else if (this.wanted[cart] && stack.length < this.wanted[cart].length) this.waiting[this.wanted[cart][stack.length]!]!.add(cart);
  }

  private unlist(cart: number): void {
    const stack = this.stacks[cart]!;
    if (this.off[cart]! > 0) this.offering[this.floor.kindOf[stack.at(-1)!]!]!.delete(cart);
    else if (this.wanted[cart] && stack.length < this.wanted[cart].length) this.waiting[this.wanted[cart][stack.length]!]!.delete(cart);
  }
}
