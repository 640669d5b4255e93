import type { WorkBudget } from '#kernel';
import { type FloorPlan, type NumberedMove, cartKey, keptBoxes, loadKey, mayCarry } from '../case/index.js';
import { pinnedWorkOf, searchPinned } from '../pinned/index.js';

export interface SearchAnswer {
  /** No plan has fewer moves than this. */
  readonly bound: number;
  readonly found: { readonly cartOf: readonly number[]; readonly moves: readonly NumberedMove[] } | undefined;
}

/**
 * Looks for a plan of `from`, `from` + 1, ... up to `below` - 1 moves: for every way to give loads their carts, depth first with the bound F + O - D of
 * what is left, states remembered by the kinds that stand where. Only moves that can be part of a shortest plan are tried: into the next right place of a
 * cart whose stack is right so far, or to the floor; a box on any other cart would stand in the way of something and is never better than on the floor.
 * A unit of work: a cart looked at in a state.
 */
export function searchExactly(floor: FloorPlan, from: number, below: number, budget: WorkBudget): SearchAnswer {
  for (let target = from; target < below; target++) {
    const outcome = searchTarget(floor, target, budget);
    if (outcome === 'stopped') return { bound: target, found: undefined };
    if (outcome !== undefined) return { bound: target, found: outcome };
  }
  return { bound: below, found: undefined };
}

type Found = { cartOf: readonly number[]; moves: readonly NumberedMove[] };

function searchTarget(floor: FloorPlan, target: number, budget: WorkBudget): Found | 'stopped' | undefined {
  let stopped = false;
  let found: Found | undefined;
  forEachChoice(floor, target, budget, (cartOf) => {
    const moves = searchChoice(floor, cartOf, target, budget);
    stopped = moves === 'stopped';
    if (moves !== 'stopped' && moves) found = { cartOf: [...cartOf], moves };
    return stopped || found !== undefined;
  });
  return stopped || (!found && budget.isSpent()) ? 'stopped' : found;
}

/** A plan of at most `target` moves with these carts: by the search for pinned boxes where none that moves can stand for another, else depth first. */
function searchChoice(
  floor: FloorPlan,
  cartOf: readonly number[],
  target: number,
  budget: WorkBudget,
): readonly NumberedMove[] | 'stopped' | undefined {
  const pinned = pinnedWorkOf(floor, cartOf);
  if (pinned) {
    budget.spend(floor.carts.length);
    const { bound, moves } = searchPinned(floor, pinned, target + 1, budget);
    return moves ?? (bound <= target ? 'stopped' : undefined);
  }
  const search = new FixedSearch(floor, cartOf, budget);
  const moves = search.run(target);
  return search.stopped ? 'stopped' : moves;
}

/** Every way to give loads their carts that differs in kinds, in which no more than the target comes in or comes off for nothing; stops when `visit` says so or time is up. */
function forEachChoice(floor: FloorPlan, target: number, budget: WorkBudget, visit: (cartOf: readonly number[]) => boolean): boolean {
  const cartKeys = floor.carts.map((cart) => cartKey(floor, cart));
  const loadKeys = floor.loads.map(loadKey);
  const order = floor.loads
    .map((_, index) => index)
    .sort((a, b) => (loadKeys[a]! < loadKeys[b]! ? -1 : loadKeys[a]! > loadKeys[b]! ? 1 : a - b));
  const cartOf = new Array<number>(floor.loads.length).fill(-1);
  const used = new Set<number>();
  const step = (at: number, moves: number): boolean => {
    if (!budget.spend(floor.carts.length)) return true;
    if (at === order.length) return visit(cartOf);
    const load = order[at]!;
    const tried = new Set<string>();
    const options = floor.carts
      .map((cart, index) => ({
        index,
        kept: mayCarry(cart, floor.loads[load]!) ? keptBoxes(floor, cart.stack, floor.loads[load]!.kinds) : -1,
        height: cart.stack.length,
      }))
      .filter(({ kept, index }) => kept >= 0 && !used.has(index))
      .sort((a, b) => a.height - 2 * a.kept - (b.height - 2 * b.kept) || a.index - b.index);
    // Equal loads take their carts in one order only.
    const least = at > 0 && loadKeys[order[at - 1]!] === loadKeys[load] ? cartKeys[cartOf[order[at - 1]!]!]! : '';
    for (const { index, kept } of options) {
      const key = cartKeys[index]!;
      const useless = floor.carts[index]!.stack.slice(kept).filter((box) => floor.kindOf[box] === 0).length;
      const total = moves + floor.loads[load]!.kinds.length - kept + useless;
      if (tried.has(key) || key < least || total > target) continue;
      tried.add(key);
      used.add(index);
      cartOf[load] = index;
      const done = step(at + 1, total);
      used.delete(index);
      if (done) return true;
    }
    return false;
  };
  return step(0, 0);
}

/** Depth-first search for a plan within a number of moves when every load has its cart. */
class FixedSearch {
  stopped = false;
  private readonly stacks: number[][];
  private readonly wanted: (readonly number[] | undefined)[];
  private readonly right: number[];
  private readonly onFloor: number[][];
  private readonly comeIn: number[];
  private readonly comeOff: number[];
  private readonly dead = new Map<string, number>();
  private readonly moves: NumberedMove[] = [];

  constructor(
    private readonly floor: FloorPlan,
    cartOf: readonly number[],
    private readonly budget: WorkBudget,
  ) {
    this.stacks = floor.carts.map((cart) => [...cart.stack]);
    this.wanted = floor.carts.map(() => undefined);
    cartOf.forEach((cart, load) => (this.wanted[cart] = floor.loads[load]!.kinds));
    this.right = floor.carts.map((cart, index) =>
      this.wanted[index] ? keptBoxes(floor, cart.stack, this.wanted[index]) : cart.stack.length,
    );
    this.onFloor = Array.from({ length: floor.kindCount }, () => []);
    for (const box of floor.loose) this.onFloor[floor.kindOf[box]!]!.push(box);
    this.comeIn = new Array<number>(floor.kindCount).fill(0);
    this.comeOff = new Array<number>(floor.kindCount).fill(0);
    floor.carts.forEach((cart, index) => {
      for (const box of cart.stack.slice(this.right[index])) this.comeOff[floor.kindOf[box]!]!++;
      for (const kind of this.wanted[index]?.slice(this.right[index]) ?? []) this.comeIn[kind]!++;
    });
  }

  run(target: number): NumberedMove[] | undefined {
    return this.look(target) ? [...this.moves] : undefined;
  }

  private look(left: number): boolean {
    if (this.stopped || !this.budget.spend(this.stacks.length)) {
      this.stopped = true;
      return false;
    }
    const least = this.leastLeft();
    if (least === 0) return true;
    if (least > left) return false;
    const sure = this.sureMove();
    if (sure) return this.attempt(sure, left);
    const key = this.key();
    if ((this.dead.get(key) ?? -1) >= left) return false;
    for (const move of this.candidates()) if (this.attempt(move, left)) return true;
    if (!this.stopped) this.dead.set(key, left);
    return false;
  }

  private attempt(move: NumberedMove, left: number): boolean {
    this.apply(move);
    if (this.look(left - 1)) return true;
    this.undo(move);
    return false;
  }

  /** F + O - D of the chosen carts, and what has to be lifted away above boxes that only other carts can give. */
  private leastLeft(): number {
    let least = 0;
    for (let kind = 0; kind < this.comeIn.length; kind++) least += Math.max(this.comeIn[kind]!, this.comeOff[kind]!);
    return least + (least === 0 ? 0 : this.digging());
  }

  private digging(): number {
    let most = 0;
    this.comeIn.forEach((_, kind) => {
      if (!this.isShort(kind)) return;
      let shallowest = Infinity;
      this.stacks.forEach((stack, cart) => {
        if (this.wanted[cart]) return;
        let above = 0;
        for (let at = stack.length - 1; at >= 0 && above < shallowest; at--) {
          const each = this.floor.kindOf[stack[at]!]!;
          if (each === kind) shallowest = above;
          // A box that some cart wants beyond what comes off anyway may go straight there: it costs nothing to lift it away.
          else if (each === 0 || this.comeIn[each]! <= this.comeOff[each]!) above++;
        }
      });
      if (shallowest !== Infinity) most = Math.max(most, shallowest);
    });
    return most;
  }

  /** More boxes of the kind are wanted than come off chosen carts or stand on the floor: some other cart must give them. */
  private isShort(kind: number): boolean {
    return kind > 0 && this.comeIn[kind]! > this.comeOff[kind]! + this.onFloor[kind]!.length;
  }

  /**
   * A move that some shortest plan makes now: useless boxes off a chosen cart; and, while no other cart has to give anything, a kind of which no more
   * comes off goes into its places from the floor.
   */
  private sureMove(): NumberedMove | undefined {
    const anyShort = this.comeIn.some((_, kind) => this.isShort(kind));
    for (let cart = 0; cart < this.stacks.length; cart++) {
      const wanted = this.wanted[cart];
      if (!wanted) continue;
      const stack = this.stacks[cart]!;
      if (stack.length > this.right[cart]!) {
        const box = stack.at(-1)!;
        if (this.floor.kindOf[box] === 0 || this.comeIn[this.floor.kindOf[box]!] === 0) return { box, from: cart, to: -1 };
      } else if (!anyShort && stack.length < wanted.length) {
        const kind = wanted[stack.length]!;
        if (this.comeOff[kind] === 0 && this.onFloor[kind]!.length >= this.comeIn[kind]!)
          return { box: this.onFloor[kind]!.at(-1)!, from: -1, to: cart };
      }
    }
    return undefined;
  }

  private candidates(): NumberedMove[] {
    const { kindOf } = this.floor;
    const straight: NumberedMove[] = [];
    const aside: NumberedMove[] = [];
    const ready = this.stacks.flatMap((stack, cart) =>
      this.wanted[cart] && stack.length === this.right[cart] && stack.length < this.wanted[cart].length ? [cart] : [],
    );
    for (const to of ready) {
      const kind = this.wanted[to]![this.stacks[to]!.length]!;
      if (this.onFloor[kind]!.length > 0) aside.push({ box: this.onFloor[kind]!.at(-1)!, from: -1, to });
    }
    const seen = new Set<string>();
    this.stacks.forEach((stack, from) => {
      if (stack.length === 0 || (this.wanted[from] && stack.length === this.right[from])) return;
      if (!this.wanted[from]) {
        // Carts without a load that stand alike offer the same.
        const alike = stack.map((box) => kindOf[box]).join();
        if (seen.has(alike) || !this.offersShort(stack)) return;
        seen.add(alike);
      }
      const box = stack.at(-1)!;
      for (const to of ready) if (kindOf[box] === this.wanted[to]![this.stacks[to]!.length]) straight.push({ box, from, to });
      aside.push({ box, from, to: -1 });
    });
    return [...straight, ...aside];
  }

  /** Whether a cart without a load holds anything that is still wanted somewhere. */
  private offersShort(stack: readonly number[]): boolean {
    return stack.some((box) => this.comeIn[this.floor.kindOf[box]!]! > 0 && this.floor.kindOf[box] !== 0);
  }

  private apply({ box, from, to }: NumberedMove): void {
    const kind = this.floor.kindOf[box]!;
    if (from < 0) this.onFloor[kind]!.pop();
    else {
      this.stacks[from]!.pop();
      if (this.wanted[from]) this.comeOff[kind]!--;
      else this.right[from]!--;
    }
    if (to < 0) this.onFloor[kind]!.push(box);
    else {
      this.stacks[to]!.push(box);
      this.right[to]!++;
      this.comeIn[kind]!--;
    }
    this.moves.push({ box, from, to });
  }

  private undo({ box, from, to }: NumberedMove): void {
    const kind = this.floor.kindOf[box]!;
    this.moves.pop();
    if (to < 0) this.onFloor[kind]!.pop();
    else {
      this.stacks[to]!.pop();
      this.right[to]!--;
      this.comeIn[kind]!++;
    }
    if (from < 0) this.onFloor[kind]!.push(box);
    else {
      this.stacks[from]!.push(box);
      if (this.wanted[from]) this.comeOff[kind]!++;
      else this.right[from]!++;
    }
  }

  private key(): string {
    const { kindOf } = this.floor;
    let key = '';
    for (const stack of this.stacks) {
      for (const box of stack) key += String.fromCharCode(32 + kindOf[box]!);
      key += '|';
    }
    return key;
  }
}
