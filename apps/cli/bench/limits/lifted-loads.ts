/** A hang on two picks with the way it is lifted, as plain figures: what the algebra below needs and nothing of the product's own. */
export interface Lift {
  readonly gravityMps2: number;
  readonly grid: { readonly massKg: number; readonly cgBehindMm: number; readonly cgAboveMm: number };
  readonly holes: readonly [Hole, Hole];
  readonly boxes: readonly {
    readonly massKg: number;
    readonly frontHeightMm: number;
    readonly cgBehindMm: number;
    readonly cgBelowMm: number;
    readonly rearLeverMm: number;
    readonly splayDeg: number;
  }[];
  /** Position 0: at the grid. */
  readonly extras: readonly { readonly position: number; readonly massKg: number }[];
  readonly loads: readonly { readonly first: number; readonly last: number }[];
  readonly baseKg: number;
  readonly closedDeg: number;
  readonly liftDeg: number;
  readonly trimDeg: number;
  readonly gridJoint: 'on the ground' | 'in the air';
  readonly cartJoints: 'swung back and driven down' | 'on the floor at matched tilt' | 'box by box';
  /** From a place on a box's front to an anchor in the side plane; `chainMm`: above the grid. Left out where the hang has no line. */
  readonly line?: {
    readonly position: number;
    readonly belowMm: number;
    readonly newtons: number;
    readonly anchor: readonly [number, number];
    readonly chainMm: number;
  };
}
interface Hole {
  readonly behindMm: number;
  readonly aboveMm: number;
}

/** The forces of one moment: along the chains, in the rear links (pulled positive), on each front pin (pushed negative). */
export interface Moment {
  /** Counted from 0; null at trim. */
  readonly load: number | null;
  readonly name: string;
  readonly comesDown: boolean;
  readonly picksN: readonly number[];
  readonly linksN: readonly number[];
  readonly pinsN: readonly number[];
  /** Chains from the vertical, by size. */
  readonly inclineDeg: number;
}

interface Part {
  readonly x: number;
  readonly z: number;
  readonly deg: number;
  readonly lever: number;
  readonly weights: readonly (readonly [newtons: number, x: number, z: number])[];
  readonly foot: readonly [number, number];
}

const turned = (deg: number, forward: number, up: number): readonly [number, number] => {
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  return [forward * c + up * s, up * c - forward * s];
};

/** Grid and boxes down to `last`, one below the other; from `from` on they begin at an angle of their own. */
function parts(
  lift: Lift,
  last: number,
  tilt: number,
  splay: (position: number) => number,
  base: number,
  from?: readonly [number, number],
): Part[] {
  const g = lift.gravityMps2;
  const hung = (position: number) => lift.extras.filter((each) => each.position === position).reduce((sum, each) => sum + each.massKg, 0);
  const [gx, gz] = turned(tilt, -lift.grid.cgBehindMm, lift.grid.cgAboveMm);
  const all: Part[] = [{ x: 0, z: 0, deg: tilt, lever: NaN, weights: [[(lift.grid.massKg + hung(0)) * g, gx, gz]], foot: [0, 0] }];
  let [x, z, deg] = [0, 0, tilt];
  for (let position = 1; position <= last; position++) {
    const box = lift.boxes[position - 1]!;
    deg = from && position === from[0] ? from[1] : deg + splay(position);
    const [cx, cz] = turned(deg, -box.cgBehindMm, -box.cgBelowMm);
    const [fx, fz] = turned(deg, 0, -box.frontHeightMm);
    const kg = box.massKg + hung(position) + (position === last ? base : 0);
    all.push({ x, z, deg, lever: box.rearLeverMm, weights: [[kg * g, x + cx, z + cz]], foot: [x + fx, z + fz] });
    [x, z] = [x + fx, z + fz];
  }
  return all;
}

const weightOf = (all: readonly Part[]): number => all.flatMap((each) => each.weights).reduce((sum, [n]) => sum + n, 0);
const momentOf = (all: readonly Part[], about: number): number =>
  all.flatMap((each) => each.weights).reduce((sum, [n, x]) => sum - n * (x - about), 0);

/** A force on a body at a place: forward and up. */
interface Push {
  readonly on: number;
  readonly at: readonly [number, number];
  readonly by: readonly [number, number];
}

/** Balance of the whole and of every part below a joint, with a force on one of its bodies. */
function solved(lift: Lift, all: readonly Part[], load: number | null, name: string, push?: Push): Moment {
  const weight = weightOf(all);
  const [bx, bz] = push?.by ?? [0, 0];
  const [ax, az] = push?.at ?? [0, 0];
  const along = Math.hypot(weight - bz, bx);
  // Both chains lie along what balances weight and push together.
  const [ux, uz] = [-bx / along, (weight - bz) / along];
  const [a, b] = lift.holes.map((hole) => turned(all[0]!.deg, -hole.behindMm, hole.aboveMm)) as [
    readonly [number, number],
    readonly [number, number],
  ];
  const arm = ([x, z]: readonly [number, number]) => x * uz - z * ux;
  // Counter-clockwise moments about the origin: of the weights, of the push, and of the chains.
  const others = momentOf(all, 0) + ax * bz - az * bx;
  const first = (-others - arm(b) * along) / (arm(a) - arm(b));
  const joints = all.slice(1).map((part, index) => {
    const below = all.slice(index + 1);
    const [fx, fz] = push && push.on >= index + 1 ? push.by : [0, 0];
    const link = (momentOf(below, part.x) + (ax - part.x) * fz - (az - part.z) * fx) / part.lever;
    const [lx, lz] = turned(part.deg, 0, link);
    const [px, pz] = [-lx - fx, weightOf(below) - lz - fz];
    return { link, pin: (Math.hypot(px, pz) / 2) * Math.sign(pz) };
  });
  return {
    load,
    name,
    comesDown: false,
    picksN: [first, along - first],
    linksN: joints.map((each) => each.link),
    pinsN: joints.map((each) => each.pin),
    inclineDeg: (Math.atan2(Math.abs(bx), weight - bz) * 180) / Math.PI,
  };
}

/** Every moment of the lift, load by load, the hang at trim and with its line, and links drawn coming down; from the balance of forces and of energy alone. */
export function liftedMoments(lift: Lift): readonly Moment[] {
  const open = (position: number) => lift.boxes[position - 1]!.splayDeg;
  const all = lift.loads.flatMap((_, index) => momentsOfLoad(lift, index));
  const trim = parts(lift, lift.boxes.length, lift.trimDeg, open, 0);
  return [
    ...all,
    solved(lift, trim, null, 'at trim'),
    ...(lift.line ? [pulledAside(lift, trim, 0.5, 'line half taken up'), pulledAside(lift, trim, 1, 'line taken up')] : []),
    ...lift.loads.flatMap((_, index) => (isHinged(lift, index) ? [kicked(lift, index)] : [])),
  ];
}

/** At rest: without its line, and with it where it has one. */
export const atRest = (moments: readonly Moment[]): readonly Moment[] =>
  moments.filter(({ name }) => name === 'at trim' || name === 'line taken up');

const isHinged = (lift: Lift, index: number): boolean =>
  index === 0 ? lift.gridJoint === 'in the air' : lift.cartJoints === 'swung back and driven down';

/** The line turns the chains, which carries the hang aside, which turns the line: gone through until nothing moves. */
function pulledAside(lift: Lift, all: readonly Part[], share: number, name: string): Moment {
  const { position, belowMm, newtons, anchor, chainMm } = lift.line!;
  const part = all[position]!;
  const [dx, dz] = turned(part.deg, 0, -belowMm);
  const at = [part.x + dx, part.z + dz] as const;
  let [x, z] = [0, 0];
  let push: Push = { on: position, at, by: [0, 0] };
  for (let round = 0; round < 500; round++) {
    const [lx, lz] = [anchor[0] - at[0] - x, anchor[1] - at[1] - z];
    const long = Math.hypot(lx, lz);
    push = { on: position, at, by: [(share * newtons * lx) / long, (share * newtons * lz) / long] };
    const up = weightOf(all) - push.by[1];
    const chain = Math.hypot(push.by[0], up);
    [x, z] = [(chainMm * push.by[0]) / chain, chainMm * (1 - up / chain)];
  }
  return solved(lift, all, null, name, push);
}

/** The link of a load's joint drawn while it hangs: let go at rest it swings through below its pins, every part pulling more by its depth. */
function kicked(lift: Lift, index: number): Moment {
  const { first, last } = lift.loads[index]!;
  const touching = (position: number) => (position > 1 && position === first ? lift.closedDeg : lift.boxes[position - 1]!.splayDeg);
  const ofLoad = (deg?: number) => {
    const all = parts(lift, last, lift.liftDeg, touching, lift.baseKg, deg === undefined ? undefined : [first, deg]);
    const { x, z } = all[first]!;
    return { all, masses: all.slice(first).flatMap((each) => each.weights.map(([n, ax, az]) => ({ n, x: ax - x, z: az - z }))) };
  };
  const sum = (of: readonly { n: number; x: number; z: number }[], value: (each: { n: number; x: number; z: number }) => number) =>
    of.reduce((total, each) => total + value(each), 0);
  const held = ofLoad().masses;
  const level = ofLoad(0).masses;
  const free = ofLoad(
    (Math.atan2(
      sum(level, (each) => each.n * each.x),
      -sum(level, (each) => each.n * each.z),
    ) *
      180) /
      Math.PI,
  );
  // What its centre falls (weight times height) becomes its turning: times two over the moment of inertia, in weights.
  const fallen = sum(held, (each) => each.n * each.z) - sum(free.masses, (each) => each.n * each.z);
  const turning = (2 * fallen) / sum(free.masses, (each) => each.n * (each.x ** 2 + each.z ** 2));
  const heavier = free.masses.map((each) => each.n * turning * -each.z);
  const swinging: Lift = {
    ...lift,
    boxes: lift.boxes.map((box, at) =>
      at + 1 >= first && at + 1 <= last ? { ...box, massKg: box.massKg + heavier[at + 1 - first]! / lift.gravityMps2 } : box,
    ),
  };
  return { ...hinged(swinging, index, 'rear link drawn', touching), comesDown: true };
}

function momentsOfLoad(lift: Lift, index: number): Moment[] {
  const { first, last } = lift.loads[index]!;
  const { liftDeg, closedDeg, baseKg } = lift;
  const open = (position: number) => lift.boxes[position - 1]!.splayDeg;
  // The angle between grid and top box is that of the grid from the first moment.
  const closed = (position: number) => (position > 1 && position >= first ? closedDeg : open(position));
  const touching = (position: number) => (position > 1 && position === first ? closedDeg : open(position));
  const rigid = (name: string, splay: (position: number) => number, base: number, tilt = liftDeg, to = last) =>
    solved(lift, parts(lift, to, tilt, splay, base), index, name);
  const opened = rigid('opened and locked', open, baseKg);
  const baseOff = rigid('base off', open, 0);
  if (isHinged(lift, index)) {
    const [swung] = swungBack(lift, parts(lift, last, liftDeg, touching, baseKg), index, first);
    return [
      hinged(lift, index, 'front pins only', closed),
      hinged(lift, index, 'opened on front pins', touching),
      swung!,
      ...(index > 0 ? [rigid('driven down', open, 0, liftDeg, first - 1)] : []),
      rigid('linked and closed', touching, baseKg),
      opened,
      ...(index === lift.loads.length - 1 ? [baseOff] : []),
    ];
  }
  if (index > 0 && lift.cartJoints === 'box by box')
    return Array.from({ length: last - first + 1 }, (_, more) => rigid('box joined', open, 0, liftDeg, first + more));
  const above = Array.from({ length: first - 1 }, (_, at) => open(at + 1)).reduce((sum, each) => sum + each, 0);
  // The box that is joined stands as the cart does: level.
  const matched = index === 0 ? liftDeg : -(above + closedDeg);
  return [rigid('linked and closed', closed, baseKg, matched), opened, baseOff];
}

/** Below its hinge the load turns until its weight stands under the pins. */
function hinged(lift: Lift, index: number, name: string, splay: (position: number) => number): Moment {
  const { first, last } = lift.loads[index]!;
  const level = parts(lift, last, lift.liftDeg, splay, lift.baseKg, [first, 0]);
  const [pivot, below] = [level[first]!, level.slice(first)];
  const weights = below.flatMap((each) => each.weights);
  const total = weights.reduce((sum, [n]) => sum + n, 0);
  const x = weights.reduce((sum, [n, at]) => sum + n * (at - pivot.x), 0) / total;
  const z = weights.reduce((sum, [n, , at]) => sum + n * (at - pivot.z), 0) / total;
  const deg = (Math.atan2(x, -z) * 180) / Math.PI;
  return solved(lift, parts(lift, last, lift.liftDeg, splay, lift.baseKg, [first, deg]), index, name);
}

/** Held aside at its foot so that the link of its joint carries nothing. */
function swungBack(lift: Lift, all: readonly Part[], index: number, first: number): Moment[] {
  const pivot = all[first]!;
  const { foot } = all.at(-1)!;
  const level = momentOf(all.slice(first), pivot.x) / (foot[1] - pivot.z);
  return [solved(lift, all, index, 'swung back', { on: all.length - 1, at: foot, by: [level, 0] })];
}
