import type { Choice } from '../bound/index.js';
import { type FloorPlan, type NumberedMove, keptBoxes } from '../case/index.js';

/** A cart with work: what comes off it, top first, then what comes onto it, bottom first. Progress counts through both. */
export interface WorkCart {
  readonly cart: number;
  readonly off: readonly number[];
  readonly on: readonly number[];
  /** It gets no load and only gives. */
  readonly gives: boolean;
  /** Carts of one class have the same kinds coming off and on; `alike` + progress tells classes and how far they are. */
  readonly alike: number;
}

/** One move between work carts, by kind. */
export interface Step {
  /** Index of the work cart that gives (-1: the floor) and that takes (-1: the floor). */
  readonly from: number;
  readonly to: number;
  readonly kind: number;
}

/** The carts of a choice on which something comes off or on. */
export function workOf(floor: FloorPlan, choice: Choice): WorkCart[] {
  const loadOf = new Map(choice.cartOf.map((cart, load) => [cart, load]));
  const classes = new Map<string, number>();
  let next = 0;
  return floor.carts.flatMap((cart, index) => {
    const load = loadOf.get(index);
    const wanted = load === undefined ? undefined : floor.loads[load]!.kinds;
    const kept = wanted ? keptBoxes(floor, cart.stack, wanted) : cart.stack.length - (choice.taken.get(index) ?? 0);
    const off = cart.stack
      .slice(kept)
      .reverse()
      .map((box) => floor.kindOf[box]!);
    const on = wanted?.slice(kept) ?? [];
    if (off.length + on.length === 0) return [];
    const gives = wanted === undefined;
    const key = `${off.join()}|${on.join()}|${gives}`;
    if (!classes.has(key)) {
      classes.set(key, next);
      next += off.length + on.length + 1;
    }
    return [{ cart: index, off, on, gives, alike: classes.get(key)! }];
  });
}

/** The kind that the cart waits for, once nothing has to come off it. */
export const nextKind = ({ off, on }: WorkCart, progress: number): number | undefined => on[progress - off.length];

/** Kinds that there are once, that come off one cart and onto another, and that the choice does not set aside. */
export function straightKinds(floor: FloorPlan, { aside }: Choice, work: readonly WorkCart[]): ReadonlySet<number> {
  const boxes = new Int32Array(floor.kindCount);
  for (const kind of floor.kindOf) boxes[kind]!++;
  const off = new Map(work.flatMap((cart) => cart.off.map((kind) => [kind, cart] as const)));
  const on = new Map(work.flatMap((cart) => cart.on.map((kind) => [kind, cart] as const)));
  return new Set(
    [...off.keys()].filter((kind) => kind > 0 && boxes[kind] === 1 && !aside.has(kind) && on.has(kind) && on.get(kind) !== off.get(kind)),
  );
}

/** Steps as moves of boxes: which box of a kind is the one on top, or the last one set down. */
export function movesOf(floor: FloorPlan, work: readonly WorkCart[], steps: readonly Step[]): NumberedMove[] {
  const stacks = floor.carts.map((cart) => [...cart.stack]);
  const onFloor: number[][] = Array.from({ length: floor.kindCount }, () => []);
  for (const box of floor.loose) onFloor[floor.kindOf[box]!]!.push(box);
  return steps.map(({ from, to, kind }) => {
    const source = from < 0 ? -1 : work[from]!.cart;
    const target = to < 0 ? -1 : work[to]!.cart;
    const box = source < 0 ? onFloor[kind]!.pop()! : stacks[source]!.pop()!;
    if (target < 0) onFloor[kind]!.push(box);
    else stacks[target]!.push(box);
    return { box, from: source, to: target };
  });
}
