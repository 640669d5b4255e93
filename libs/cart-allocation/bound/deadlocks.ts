import { type FloorPlan, keptBoxes } from '../case/index.js';
import type { Choice } from './choice.js';
import { addTo } from './promising-pairs.js';

/** Boxes in a circle: each has to wait for the one before, so at least one of them has to be set aside. */
export interface Deadlock {
  /** Kinds, each that of one box only. */
  readonly kinds: readonly number[];
  /** It holds only while this load is on this cart, ... */
  readonly onlyIf: readonly Pairing[];
  /** ... and while this load is not on this cart, where a box of the circle would be kept, or set aside in any case. */
  readonly unless: readonly Pairing[];
}

export interface Pairing {
  readonly cart: number;
  readonly load: number;
}

/** A box that there is once, that comes off one cart and into a place on another. */
interface Mover {
  readonly kind: number;
  readonly cart: number;
  /** Height in its stack. */
  readonly height: number;
  readonly load: number;
  /** Place in its load, from the bottom. */
  readonly place: number;
  /** Its load stands on its own cart: it is set aside in any case. */
  readonly turned: boolean;
}

/** `lift`: a waits to be lifted until b is gone from above it. `place`: its place until b stands below it. `clear`: its place until b is off that cart. */
interface Edge {
  readonly to: number;
  readonly because: 'lift' | 'place' | 'clear';
}

const mostSources = 250;

/**
 * What waits for what among boxes that there is once, when each goes straight from where it stands to its place (blocks world: Gupta and Nau 1992; a shortest
 * plan is a smallest set of boxes to set aside that hits every circle: Slaney and Thiebaux, Artificial Intelligence 125, 2001).
 */
export class Waiting {
  private readonly movers: readonly Mover[];
  private readonly edges: readonly (readonly Edge[])[];
  private readonly indexOf: ReadonlyMap<number, number>;

  constructor(floor: FloorPlan, choice: Choice, single: ReadonlySet<number>) {
    this.movers = moversOf(floor, choice, single);
    this.indexOf = new Map(this.movers.map((each, index) => [each.kind, index]));
    this.edges = edgesOf(choice, this.movers);
  }

  /** Circles that none of the kinds set aside opens, short ones first found; none: everything else can go straight. */
  deadlocks(aside: ReadonlySet<number>): Deadlock[] {
    const isAside = this.movers.map((each) => each.turned || aside.has(each.kind));
    const found = new Map<string, Deadlock>();
    const step = Math.max(1, Math.ceil(this.movers.length / mostSources));
    for (let offset = 0; offset < step && found.size === 0; offset++)
      for (let source = offset; source < this.movers.length; source += step) {
        if (isAside[source]) continue;
        const circle = this.shortestCircle(source, isAside);
        if (circle)
          found.set(
            circle
              .map((each) => each.at)
              .sort((a, b) => a - b)
              .join(),
            this.deadlockOf(circle, isAside),
          );
      }
    return [...found.values()];
  }

  /** Breadth first; a box set aside that waited only for its place (`late`) holds up only what is to stand on it. */
  private shortestCircle(source: number, isAside: readonly boolean[]): { at: number; edge: Edge }[] | undefined {
    const count = this.movers.length;
    const from = new Int32Array(2 * count).fill(-1);
    const by = new Array<Edge | undefined>(2 * count);
    const queue = [source];
    from[source] = source;
    for (let head = 0; head < queue.length; head++) {
      const node = queue[head]!;
      const at = node % count;
      for (const edge of this.edges[at]!) {
        if (node >= count && edge.because !== 'place') continue;
        const late = isAside[edge.to] && edge.because !== 'lift';
        const next = late ? edge.to + count : edge.to;
        if (next === source) return traced(node, edge, source, from, by, count);
        if (from[next]! >= 0) continue;
        from[next] = node;
        by[next] = edge;
        queue.push(next);
      }
    }
    return undefined;
  }

  private deadlockOf(circle: readonly { at: number; edge: Edge }[], isAside: readonly boolean[]): Deadlock {
    const onlyIf = new Map<string, Pairing>();
    const unless = new Map<string, Pairing>();
    const kinds = new Set<number>();
    circle.forEach(({ at, edge }, index) => {
      const before = circle[(index + circle.length - 1) % circle.length]!.edge.because;
      const [mover, next] = [this.movers[at]!, this.movers[edge.to]!];
      // Setting a box aside opens the circle where the box waits for its place and something waits for it to be lifted.
      if (before !== 'lift' && edge.because !== 'place' && !isAside[at]) kinds.add(mover.kind);
      if (edge.because === 'clear') onlyIf.set(`${mover.cart}/${next.load}`, { cart: mover.cart, load: next.load });
      unless.set(`${mover.cart}/${mover.load}`, { cart: mover.cart, load: mover.load });
    });
    return { kinds: [...kinds], onlyIf: [...onlyIf.values()], unless: [...unless.values()] };
  }

  /** Kinds that open every circle: those of `start`, and more, box by box, where they do not suffice; circles met on the way join the list. */
  asideFor(deadlocks: Deadlock[], start: ReadonlySet<number>): ReadonlySet<number> {
    const aside = new Set(start);
    const open = (each: Deadlock) => this.holds(each) && !each.kinds.some((kind) => aside.has(kind));
    for (let left = deadlocks.filter(open); ; left = left.filter(open)) {
      if (left.length === 0) {
        const more = this.deadlocks(aside);
        if (more.length === 0) return aside;
        deadlocks.push(...more);
        left = more;
      }
      const hits = new Map<number, number>();
      for (const { kinds } of left) for (const kind of kinds) hits.set(kind, (hits.get(kind) ?? 0) + 1 / kinds.length);
      let best = -1;
      for (const [kind, weight] of hits)
        if (best < 0 || weight > hits.get(best)! || (weight === hits.get(best) && kind < best)) best = kind;
      aside.add(best);
    }
  }

  /** Whether its boxes all move under this choice. */
  private holds({ kinds }: Deadlock): boolean {
    return kinds.every((kind) => this.indexOf.has(kind));
  }
}

function traced(
  last: number,
  edge: Edge,
  source: number,
  from: Int32Array,
  by: readonly (Edge | undefined)[],
  count: number,
): { at: number; edge: Edge }[] {
  const circle = [{ at: last % count, edge }];
  for (let node = last; node !== source; node = from[node]!) circle.unshift({ at: from[node]! % count, edge: by[node]! });
  return circle;
}

function moversOf(floor: FloorPlan, { cartOf, taken }: Choice, single: ReadonlySet<number>): Mover[] {
  const loadOn = new Map(cartOf.map((cart, load) => [cart, load]));
  const placeOf = new Map<number, { load: number; place: number }>();
  floor.loads.forEach(({ kinds }, load) => {
    const kept = keptBoxes(floor, floor.carts[cartOf[load]!]!.stack, kinds);
    for (let place = kept; place < kinds.length; place++) if (single.has(kinds[place]!)) placeOf.set(kinds[place]!, { load, place });
  });
  return floor.carts.flatMap(({ stack }, cart) => {
    const load = loadOn.get(cart);
    const kept = load === undefined ? stack.length - (taken.get(cart) ?? 0) : keptBoxes(floor, stack, floor.loads[load]!.kinds);
    return stack.slice(kept).flatMap((box, index): Mover[] => {
      const kind = floor.kindOf[box]!;
      const to = placeOf.get(kind);
      return to ? [{ kind, cart, height: kept + index, ...to, turned: to.load === load }] : [];
    });
  });
}

function edgesOf({ cartOf }: Choice, movers: readonly Mover[]): Edge[][] {
  const byCart = new Map<number, number[]>();
  const byLoad = new Map<number, number[]>();
  const loadOn = new Map(cartOf.map((cart, load) => [cart, load]));
  movers.forEach((each, index) => {
    addTo(byCart, each.cart, index);
    addTo(byLoad, each.load, index);
  });
  return movers.map((mover, index) => {
    const edges: Edge[] = [];
    for (const to of byCart.get(mover.cart)!) if (movers[to]!.height < mover.height) edges.push({ to, because: 'lift' });
    for (const to of byLoad.get(mover.load)!) if (movers[to]!.place > mover.place) edges.push({ to, because: 'place' });
    const load = loadOn.get(mover.cart);
    for (const to of load === undefined ? [] : (byLoad.get(load) ?? [])) if (to !== index) edges.push({ to, because: 'clear' });
    return edges;
  });
}
