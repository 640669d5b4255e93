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

/** Balance of the whole and of every part below a joint, with a level force at the foot of the last box. */
function solved(lift: Lift, all: readonly Part[], load: number | null, name: string, push = 0): Moment {
  const weight = weightOf(all);
  const foot = all.at(-1)!.foot;
  const along = Math.hypot(weight, push);
  // Both chains lie along what balances weight and push together.
  const [ux, uz] = [-push / along, weight / along];
  const [a, b] = lift.holes.map((hole) => turned(all[0]!.deg, -hole.behindMm, hole.aboveMm)) as [
    readonly [number, number],
    readonly [number, number],
  ];
  const arm = ([x, z]: readonly [number, number]) => x * uz - z * ux;
  // Counter-clockwise moments about the origin: of the weights, of the push, and of the chains.
  const others = momentOf(all, 0) - foot[1] * push;
  const first = (-others - arm(b) * along) / (arm(a) - arm(b));
  const joints = all.slice(1).map((part, index) => {
    const below = all.slice(index + 1);
    const [w, moment] = [weightOf(below), momentOf(below, part.x) - (foot[1] - part.z) * push];
    const link = moment / part.lever;
    const [lx, lz] = turned(part.deg, 0, link);
    const [px, pz] = [-lx - push, w - lz];
    return { link, pin: (Math.hypot(px, pz) / 2) * Math.sign(pz) };
  });
  return {
    load,
    name,
    picksN: [first, along - first],
    linksN: joints.map((each) => each.link),
    pinsN: joints.map((each) => each.pin),
    inclineDeg: (Math.atan2(Math.abs(push), weight) * 180) / Math.PI,
  };
}

/** Every moment of the lift, load by load, and the hang at trim; written from the balance of forces alone. */
export function liftedMoments(lift: Lift): readonly Moment[] {
  const open = (position: number) => lift.boxes[position - 1]!.splayDeg;
  const all = lift.loads.flatMap((_, index) => momentsOfLoad(lift, index));
  return [...all, solved(lift, parts(lift, lift.boxes.length, lift.trimDeg, open, 0), null, 'at trim')];
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
  const isHinged = index === 0 ? lift.gridJoint === 'in the air' : lift.cartJoints === 'swung back and driven down';
  if (isHinged) {
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
  const lever = all.at(-1)!.foot[1] - pivot.z;
  return [solved(lift, all, index, 'swung back', momentOf(all.slice(first), pivot.x) / lever)];
}
