import type { WorkBudget } from '#kernel';
import type { Choice } from '../bound/index.js';
import type { FloorPlan, NumberedMove } from '../case/index.js';
import { type Step, type WorkCart, movesOf, nextKind, straightKinds, workOf } from './work-carts.js';

interface State {
  readonly progress: Uint16Array;
  readonly comeIn: Int32Array;
  readonly comeOff: Int32Array;
  readonly onFloor: Int32Array;
  readonly loss: number;
  readonly worth: number;
  readonly parent: State | undefined;
  /** Index of the work cart that gives (-1: the floor) and that takes (-1: the floor). */
  readonly from: number;
  readonly to: number;
  readonly kind: number;
}

interface Child {
  readonly parent: State;
  readonly from: number;
  readonly to: number;
  readonly kind: number;
  readonly loss: number;
  readonly worth: number;
}

/**
 * Carries a choice out by beam search: after every move the `width` states go on that have lost the fewest moves, and among them those whose
 * carts are the nearest to standing open; a box that the choice does not set aside goes straight. `random` breaks ties; once the budget is spent the rest
 * is done without a search. A unit of work: a cart looked at in a state.
 */
export function beamSchedule(floor: FloorPlan, choice: Choice, width: number, random: () => number, budget: WorkBudget): NumberedMove[] {
  const work = workOf(floor, choice);
  const straight = straightKinds(floor, choice, work);
  let states: State[] = [firstState(floor, work)];
  for (;;) {
    const done = states.find((state) => isDone(work, state));
    if (done) return movesOf(floor, work, stepsTo(done));
    if (!budget.spend(states.length * work.length)) return movesOf(floor, work, [...stepsTo(states[0]!), ...restOf(work, states[0]!)]);
    const next = nextStates(work, straight, states, width, random);
    if (next.length === 0) return movesOf(floor, work, [...stepsTo(states[0]!), ...restOf(work, states[0]!)]);
    states = next;
  }
}

function stepsTo(last: State): Step[] {
  const steps: Step[] = [];
  for (let state: State | undefined = last; state?.parent; state = state.parent) steps.push(state);
  return steps.reverse();
}

/** The rest without looking for the best of it: straight where a place waits, else to the floor; then from the floor. */
function restOf(work: readonly WorkCart[], { progress: from, onFloor: floor, comeIn: wanted }: State): Step[] {
  const progress = from.slice();
  const onFloor = floor.slice();
  const comeIn = wanted.slice();
  const steps: Step[] = [];
  /** By kind: carts that wait for a box of it. */
  const waiting = new Map<number, number[]>();
  const wait = (cart: number) => {
    const kind = nextKind(work[cart]!, progress[cart]!);
    if (kind === undefined || progress[cart]! < work[cart]!.off.length) return;
    if (onFloor[kind]! > 0) take(-1, cart, kind);
    else if (waiting.has(kind)) waiting.get(kind)!.push(cart);
    else waiting.set(kind, [cart]);
  };
  const take = (giver: number, cart: number, kind: number) => {
    steps.push({ from: giver, to: cart, kind });
    if (giver < 0) onFloor[kind]!--;
    comeIn[kind]!--;
    progress[cart]!++;
    wait(cart);
  };
  work.forEach((_, cart) => wait(cart));
  work.forEach(({ off, gives }, cart) => {
    // One that stood open from the start waits already.
    const wasOpen = progress[cart]! >= off.length;
    while (progress[cart]! < off.length && (!gives || comeIn.some((count) => count > 0))) {
      const kind = off[progress[cart]!]!;
      progress[cart]!++;
      const taker = waiting.get(kind)?.pop();
      if (taker !== undefined) take(cart, taker, kind);
      else {
        steps.push({ from: cart, to: -1, kind });
        onFloor[kind]!++;
      }
    }
    if (!gives && !wasOpen) wait(cart);
  });
  return steps;
}

function firstState(floor: FloorPlan, work: readonly WorkCart[]): State {
  const comeIn = new Int32Array(floor.kindCount);
  const comeOff = new Int32Array(floor.kindCount);
  const onFloor = new Int32Array(floor.kindCount);
  for (const { off, on } of work) {
    for (const kind of off) comeOff[kind]!++;
    for (const kind of on) comeIn[kind]!++;
  }
  for (const box of floor.loose) onFloor[floor.kindOf[box]!]!++;
  const progress = new Uint16Array(work.length);
  return { progress, comeIn, comeOff, onFloor, loss: 0, worth: 0, parent: undefined, from: -1, to: -1, kind: 0 };
}

/** Every place is filled and nothing stands on a wanted load; what a giving cart still holds may stay there. */
const isDone = (work: readonly WorkCart[], { comeIn, progress }: State): boolean =>
  comeIn.every((count) => count === 0) && work.every(({ gives, off }, index) => gives || progress[index]! >= off.length);

function nextStates(
  work: readonly WorkCart[],
  straight: ReadonlySet<number>,
  states: readonly State[],
  width: number,
  random: () => number,
): State[] {
  const children = states.flatMap((state) => childrenOf(work, straight, state, random));
  children.sort((a, b) => a.loss - b.loss || b.worth - a.worth);
  const seen = new Set<string>();
  const kept: State[] = [];
  for (const child of children) {
    if (kept.length >= width) break;
    const state = stateOf(child);
    const key = keyOf(work, state);
    if (seen.has(key)) continue;
    seen.add(key);
    kept.push(state);
  }
  return kept;
}

/** Carts of one class that have come equally far are alike: what counts is how many. */
function keyOf(work: readonly WorkCart[], { progress }: State): string {
  const steps = new Array<number>(work.length);
  for (let index = 0; index < work.length; index++) steps[index] = work[index]!.alike + progress[index]!;
  steps.sort((a, b) => a - b);
  return steps.join();
}

function childrenOf(work: readonly WorkCart[], straight: ReadonlySet<number>, state: State, random: () => number): Child[] {
  const { progress, comeIn, comeOff, onFloor } = state;
  const givers = new Map<number, number>();
  const takers = new Map<number, number>();
  const takersOf = new Map<number, number[]>();
  for (let index = 0; index < work.length; index++) {
    const { off, on, alike } = work[index]!;
    const at = progress[index]!;
    const signature = alike + at;
    if (at < off.length) {
      if (!givers.has(signature)) givers.set(signature, index);
    } else if (at - off.length < on.length && !takers.has(signature)) {
      takers.set(signature, index);
      const kind = on[at - off.length]!;
      const alikes = takersOf.get(kind);
      if (alikes) alikes.push(index);
      else takersOf.set(kind, [index]);
    }
  }
  const children: Child[] = [];
  const add = (from: number, to: number, kind: number, extra: number, worth: number) => {
    children.push({ parent: state, from, to, kind, loss: state.loss + extra, worth: state.worth + worth + random() * 0.3 });
  };
  for (const giver of givers.values()) {
    const { off, on } = work[giver]!;
    const at = progress[giver]!;
    const kind = off[at]!;
    // A box of no use goes to the floor: nothing better can come of it later.
    if (kind === 0) return [{ parent: state, from: giver, to: -1, kind, loss: state.loss, worth: state.worth }];
    // The nearer a cart is to standing open, the more its next step is worth: one place for each box that it then takes.
    const nearer = on.length / (off.length - at);
    if (!straight.has(kind)) add(giver, -1, kind, comeOff[kind]! > comeIn[kind]! ? 0 : 1, nearer);
    for (const taker of takersOf.get(kind) ?? []) add(giver, taker, kind, 0, nearer + placesAfter(work[taker]!, progress[taker]!));
  }
  for (const taker of takers.values()) {
    const kind = nextKind(work[taker]!, progress[taker]!)!;
    if (onFloor[kind] === 0) continue;
    add(-1, taker, kind, comeIn[kind]! > comeOff[kind]! ? 0 : 1, placesAfter(work[taker]!, progress[taker]!) - 0.1);
  }
  return children;
}

/** Places that taking the next box opens, less the one that it uses: above a box of another kind a whole run of places waits. */
function placesAfter({ off, on }: WorkCart, progress: number): number {
  const at = progress - off.length;
  const next = on[at + 1];
  if (next === undefined || next === on[at]) return -1;
  let run = 0;
  for (let index = at + 1; index < on.length && on[index] === next; index++) run++;
  return run - 1;
}

function stateOf({ parent, from, to, kind, loss, worth }: Child): State {
  const progress = parent.progress.slice();
  const comeIn = parent.comeIn.slice();
  const comeOff = parent.comeOff.slice();
  const onFloor = parent.onFloor.slice();
  if (from >= 0) {
    progress[from]!++;
    comeOff[kind]!--;
  } else onFloor[kind]!--;
  if (to >= 0) {
    progress[to]!++;
    comeIn[kind]!--;
  } else onFloor[kind]!++;
  return { progress, comeIn, comeOff, onFloor, loss, worth, parent, from, to, kind };
}
