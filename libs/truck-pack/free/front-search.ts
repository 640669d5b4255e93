import type { Truck, Work } from '../case/index.js';
import type { RowKind } from '../rows/index.js';

/** A tower of a kind on the floor; millimetres. */
export interface FloorPlace {
  readonly kind: number;
  readonly turned: boolean;
  readonly x: number;
  readonly y: number;
}

export interface FrontLimits {
  /** Plans kept for each number of towers placed. */
  readonly width: number;
  /** What a millimetre of the furthest reach costs beside a millimetre of lost length: evens the front out. */
  readonly lean: number;
  /** How far the centre of what is left after each stop may lie from the middle, millimetres. */
  readonly mostOffsetMm?: number;
  readonly work: Work;
}

export interface FloorPlan {
  readonly places: readonly FloorPlace[];
  readonly endMm: number;
  readonly isComplete: boolean;
}

/** What has been loaded as seen from the door: from each y on, how far it reaches, and the last place in the unloading order that stands there. */
interface Front {
  readonly y: readonly number[];
  readonly x: readonly number[];
  readonly level: readonly number[];
}

interface State {
  readonly front: Front;
  readonly left: Int16Array;
  readonly needed: number;
  readonly massKg: number;
  readonly sideKgMm: number;
  /** How far loads after stops lie beyond their limit, summed. */
  readonly beyondMm: number;
  readonly placed: number;
  readonly last: FloorPlace | undefined;
  readonly before: State | undefined;
}

interface Child {
  readonly state: State;
  readonly front: Front;
  readonly place: FloorPlace;
  readonly along: number;
  readonly across: number;
  readonly loss: number;
  readonly beyondMm: number;
}

/**
 * Towers on the floor without rows: always into the deepest free stretch of the front, against either side of it, so each goes in past nothing. A beam by the number of towers placed,
 * judged by the floor behind the front less what the towers need. Shortest plans first; where none is complete, the one that got furthest.
 */
export function searchFronts(kinds: readonly RowKind[], truck: Truck, limits: FrontLimits): FloorPlan[] {
  const plans = search(kinds, truck, limits, true);
  // Lanes closed too early can leave no way on.
  return plans[0]!.isComplete ? plans : search(kinds, truck, limits, false);
}

function search(kinds: readonly RowKind[], truck: Truck, limits: FrontLimits, looksAhead: boolean): FloorPlan[] {
  const total = kinds.reduce((sum, each) => sum + each.towers.length, 0);
  let states: State[] = [
    {
      front: { y: [0, truck.innerWidthMm], x: [0], level: [0] },
      left: Int16Array.from(kinds, (each) => each.towers.length),
      needed: 0,
      massKg: 0,
      sideKgMm: 0,
      beyondMm: 0,
      placed: 0,
      last: undefined,
      before: undefined,
    },
  ];
  for (let placed = 0; placed < total && !limits.work.isOver; placed++) {
    const children = states.flatMap((state) => (limits.work.isOver ? [] : childrenOf(state, kinds, truck, limits, looksAhead)));
    if (children.length === 0) break;
    const seen = new Set<number>();
    const next: State[] = [];
    for (const child of leastLost(children, 2 * limits.width)) {
      if (next.length >= limits.width) break;
      const state = stateOf(child, kinds, truck);
      const mark = markOf(state);
      if (!seen.has(mark)) next.push(state);
      seen.add(mark);
    }
    states = next;
  }
  return states.map((state) => planOf(state, total)).sort((a, b) => a.endMm - b.endMm);
}

/** The `count` children of least loss, and those that tie with the last, in order. */
function leastLost(children: readonly Child[], count: number): readonly Child[] {
  if (children.length <= count) return [...children].sort((a, b) => a.loss - b.loss);
  const losses = Float64Array.from(children, (each) => each.loss).sort();
  const most = losses[count]!;
  return children.filter((each) => each.loss <= most).sort((a, b) => a.loss - b.loss);
}

/** A number that states with the same towers left and the same front share. */
function markOf({ left, front }: State): number {
  let mark = 2166136261;
  for (const each of left) mark = Math.imul(mark ^ each, 16777619);
  for (let index = 0; index < front.x.length; index++) {
    mark = Math.imul(mark ^ front.x[index]!, 16777619);
    mark = Math.imul(mark ^ front.y[index]!, 16777619);
  }
  return mark;
}

function childrenOf(
  state: State,
  kinds: readonly RowKind[],
  truck: Truck,
  { lean, mostOffsetMm, work }: FrontLimits,
  looksAhead: boolean,
): Child[] {
  const open = openLevel(state.left, kinds);
  const waiting = kinds.filter((kind, index) => kind.level === open && !kind.free && state.left[index]! > 0);
  const stillOpen = kinds.reduce((sum, kind, index) => sum + (kind.level === open && !kind.free ? state.left[index]! : 0), 0);
  const few = looksAhead && stillOpen <= 3;
  const widest = waiting.reduce(
    (most, kind) =>
      Math.max(
        most,
        kind.ways.reduce((least, way) => Math.min(least, way.across), Infinity),
      ),
    0,
  );
  for (let front: Front | undefined = merged(state.front, open); front; front = raised(front, open)) {
    const children: Child[] = [];
    const lowest = lowestOf(front);
    const [from, to, x, level] = [front.y[lowest]!, front.y[lowest + 1]!, front.x[lowest]!, front.level[lowest]!];
    kinds.forEach((kind, index) => {
      if (state.left[index] === 0 || (!kind.free && (kind.level < level || kind.level > open + (few ? 1 : 0)))) return;
      for (const { along, across, turned } of kind.ways) {
        if (across > to - from) continue;
        for (const y of new Set([from, to - across])) {
          // What comes off earlier closes its lane: what still comes off later must keep one that is wide enough.
          if (!kind.free && kind.level > open && openWidth(front, open, y, across) < widest) continue;
          const at = pastBlocked(truck, x, y, along, across, kind.high);
          if (at + along > truck.innerLengthMm) continue;
          const area = areaOf(front) + (at + along - x) * across;
          const closes = mostOffsetMm !== undefined && stillOpen === 1 && kind.level === open;
          const beyondMm = state.beyondMm + (closes ? Math.max(0, offsetWith(state, kind, y + across / 2, truck) - mostOffsetMm) : 0);
          const loss = area / truck.innerWidthMm - state.needed - kind.price + lean * Math.max(reach(front), at + along) + 2 * beyondMm;
          children.push({ state, front: front, place: { kind: index, turned, x: at, y }, along, across, loss, beyondMm });
        }
      }
    });
    work.add(0.1 * kinds.length + children.length);
    if (children.length > 0) return children;
  }
  return [];
}

const massOf = (kind: RowKind): number => kind.towers[0]!.massKg;

function offsetWith(state: State, kind: RowKind, middleMm: number, truck: Truck): number {
  const massKg = state.massKg + massOf(kind);
  return massKg === 0 ? 0 : Math.abs(state.sideKgMm + massOf(kind) * (middleMm - truck.innerWidthMm / 2)) / massKg;
}

/** The widest run of lanes in which the open place of the unloading order may still stand, without one that is about to be closed. */
function openWidth(front: Front, open: number, y: number, across: number): number {
  let [most, run] = [0, 0];
  front.level.forEach((level, index) => {
    const [from, to] = [front.y[index]!, front.y[index + 1]!];
    if (level > open) {
      run = 0;
    } else if (from <= y && y + across <= to) {
      most = Math.max(most, run + y - from);
      run = to - y - across;
    } else run += to - from;
    most = Math.max(most, run);
  });
  return most;
}

/** The first place in the unloading order of which something is left. */
function openLevel(left: Int16Array, kinds: readonly RowKind[]): number {
  return kinds.reduce((least, kind, index) => (left[index]! > 0 && !kind.free ? Math.min(least, kind.level) : least), Infinity);
}

const reach = (front: Front): number => front.x.reduce((far, each) => Math.max(far, each), 0);
const areaOf = (front: Front): number => front.x.reduce((sum, x, index) => sum + x * (front.y[index + 1]! - front.y[index]!), 0);

function lowestOf(front: Front): number {
  let lowest = 0;
  for (let index = 1; index < front.x.length; index++) if (front.x[index]! < front.x[lowest]!) lowest = index;
  return lowest;
}

/** The deepest stretch given up as far as its nearer neighbour; undefined where the whole front is one stretch. */
function raised(front: Front, open: number): Front | undefined {
  if (front.x.length === 1) return undefined;
  const at = lowestOf(front);
  const nearer = (front.x[at - 1] ?? Infinity) <= (front.x[at + 1] ?? Infinity) ? at - 1 : at + 1;
  const both = Math.max(front.level[at]!, front.level[nearer]!);
  const isLevel = front.x[nearer] === front.x[at];
  const x = front.x.map((each, index) => (index === at ? front.x[nearer]! : each));
  const level = isLevel ? front.level.map((each, index) => (index === at || index === nearer ? both : each)) : front.level;
  return merged({ y: front.y, x, level }, open);
}

/** Neighbouring stretches that reach equally far and are open to the same become one. */
function merged(front: Front, open: number): Front {
  const y: number[] = [];
  const x: number[] = [];
  const level: number[] = [];
  front.x.forEach((each, index) => {
    const last = Number.isFinite(open) ? Math.max(front.level[index]!, open) : 0;
    if (x.length > 0 && x.at(-1) === each && level.at(-1) === last) return;
    y.push(front.y[index]!);
    x.push(each);
    level.push(last);
  });
  y.push(front.y.at(-1)!);
  return { y, x, level };
}

function stateOf({ state, front, place, along, across, beyondMm }: Child, kinds: readonly RowKind[], truck: Truck): State {
  const kind = kinds[place.kind]!;
  const lowest = lowestOf(front);
  const [y, x, level]: [number[], number[], number[]] = [[], [], []];
  const add = (from: number, to: number, reaches: number, last: number) => {
    if (to <= from) return;
    y.push(from);
    x.push(reaches);
    level.push(last);
  };
  front.x.forEach((each, index) => {
    const [from, to] = [front.y[index]!, front.y[index + 1]!];
    if (index !== lowest) return add(from, to, each, front.level[index]!);
    add(from, place.y, each, front.level[index]!);
    add(place.y, place.y + across, place.x + along, kind.free ? front.level[index]! : Math.max(kind.level, front.level[index]!));
    add(place.y + across, to, each, front.level[index]!);
  });
  y.push(front.y.at(-1)!);
  const left = Int16Array.from(state.left);
  left[place.kind]! -= 1;
  return {
    front: { y, x, level },
    left,
    needed: state.needed + kind.price,
    massKg: state.massKg + massOf(kind),
    sideKgMm: state.sideKgMm + massOf(kind) * (place.y + across / 2 - truck.innerWidthMm / 2),
    beyondMm,
    placed: state.placed + 1,
    last: place,
    before: state,
  };
}

function planOf(state: State, total: number): FloorPlan {
  const places: FloorPlace[] = [];
  for (let at: State | undefined = state; at?.last; at = at.before) places.unshift(at.last);
  return { places, endMm: reach(state.front), isComplete: state.placed === total };
}

function pastBlocked(truck: Truck, from: number, y: number, along: number, across: number, high: number): number {
  let x = from;
  for (let moved = truck.blocked.length > 0; moved; ) {
    const hit = truck.blocked.find(
      (each) =>
        each.xMm < x + along &&
        x < each.xMm + each.lengthMm &&
        each.yMm < y + across &&
        y < each.yMm + each.widthMm &&
        each.zMm < high &&
        each.zMm + each.heightMm > 0,
    );
    moved = hit !== undefined;
    if (hit) x = hit.xMm + hit.lengthMm;
  }
  return x;
}
