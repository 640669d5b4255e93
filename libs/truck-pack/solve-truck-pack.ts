import { seededRandom } from '#kernel';
import { outsideLoad } from './check-load.js';
import { LoadSpace, type PlacingStyle } from './load-space.js';
import { type TruckPackAnswer, truckAnswer, usedLengthMm } from './pack-answer.js';
import { boundOf } from './pack-bound.js';
import type { Piece, Truck, TruckCase } from './truck-case.js';

export interface PackLimits {
  readonly seed: number;
  /** Most tries; equal seed and work limit give the equal load. */
  readonly workLimit: number;
  readonly timeLimitSeconds: number;
  /** Milliseconds of any clock that does not go back. */
  readonly now: () => number;
}

interface Load {
  readonly spaces: readonly LoadSpace[];
  readonly left: readonly Piece[];
  readonly leftKg: number;
  readonly lengthMm: number;
}

/**
 * Loads the pieces in falling order of `firstOff`, many times with other orders and styles of placing, and keeps the best: least mass left over, fewest trucks, least
 * length. A load outside an axle, share or balance limit is moved back, mirrored or lightened until it is inside.
 */
export function solveTruckPack(problem: TruckCase, limits: PackLimits): TruckPackAnswer {
  const deadline = limits.now() + limits.timeLimitSeconds * 1000;
  const impossible = new Map(
    problem.pieces.flatMap((piece) =>
      problem.trucks.some((truck) => couldRide(piece, truck)) ? [] : [[piece.id, tooLargeReason(piece)] as const],
    ),
  );
  const pieces = problem.pieces.filter((piece) => !impossible.has(piece.id));
  const bound = boundOf(problem, pieces);
  const random = seededRandom(limits.seed);
  let best: Load = { spaces: [], left: pieces, leftKg: massOf(pieces), lengthMm: 0 };
  for (let attempt = 0; attempt < limits.workLimit; attempt++) {
    if (attempt > 0 && limits.now() >= deadline) break;
    const load = tryLoad(problem, pieces, attempt, random, best, bound.trucks);
    if (isBetter(load, best)) best = load;
    if (isOptimal(best, bound)) break;
  }
  const complete = best.left.length === 0;
  return {
    status: complete && isOptimal(best, bound) ? 'optimal' : 'feasible',
    trucks: best.spaces.filter((space) => space.placed.length > 0).map((space) => truckAnswer(space)),
    leftOver: problem.pieces.flatMap((piece) => {
      const reason =
        impossible.get(piece.id) ??
        (best.left.includes(piece) ? 'no place was found for it beside the others inside the limits' : undefined);
      return reason === undefined ? [] : [{ id: piece.id, reason }];
    }),
    bound: complete ? bound : { trucks: 0, usedLengthMm: 0, reason: 'not all pieces ride: no bound is claimed' },
  };
}

const massOf = (pieces: readonly Piece[]): number => pieces.reduce((sum, each) => sum + each.massKg, 0);
const trucksUsed = (load: Load): number => load.spaces.filter((space) => space.placed.length > 0).length;

function isBetter(a: Load, b: Load): boolean {
  if (Math.abs(a.leftKg - b.leftKg) > 1e-6) return a.leftKg < b.leftKg;
  if (a.left.length !== b.left.length) return a.left.length < b.left.length;
  if (trucksUsed(a) !== trucksUsed(b)) return trucksUsed(a) < trucksUsed(b);
  return a.lengthMm < b.lengthMm;
}

const isOptimal = (load: Load, bound: { trucks: number; usedLengthMm: number }): boolean =>
  load.left.length === 0 && trucksUsed(load) <= bound.trucks && load.lengthMm <= bound.usedLengthMm;

function couldRide(piece: Piece, truck: Truck): boolean {
  const height = Math.min(truck.innerHeightMm, truck.doorHeightMm ?? Infinity);
  const fits = (along: number, across: number) => along <= truck.innerLengthMm && across <= truck.innerWidthMm;
  return (
    piece.heightMm <= height &&
    piece.massKg <= (truck.payloadKg ?? Infinity) &&
    (fits(piece.lengthMm, piece.widthMm) || (piece.mayTurn && fits(piece.widthMm, piece.lengthMm)))
  );
}

const tooLargeReason = (piece: Piece): string =>
  `larger or heavier than any truck takes: ${piece.lengthMm} x ${piece.widthMm} x ${piece.heightMm} mm, ${piece.massKg} kg`;

const orders: ((a: Piece, b: Piece) => number)[] = [
  (a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm || b.heightMm - a.heightMm,
  (a, b) => b.lengthMm - a.lengthMm || b.widthMm - a.widthMm || b.heightMm - a.heightMm,
  (a, b) => b.widthMm - a.widthMm || b.lengthMm - a.lengthMm || b.heightMm - a.heightMm,
  (a, b) => b.heightMm - a.heightMm || b.lengthMm * b.widthMm - a.lengthMm * a.widthMm,
  (a, b) => b.massKg - a.massKg || b.lengthMm * b.widthMm - a.lengthMm * a.widthMm,
  (a, b) => b.lengthMm * b.widthMm * b.heightMm - a.lengthMm * a.widthMm * a.heightMm,
];

/** One load: the first tries take the plain orders, later ones disturb them; trucks are taken largest first, as few as may do. */
function tryLoad(
  problem: TruckCase,
  pieces: readonly Piece[],
  attempt: number,
  random: () => number,
  best: Load,
  leastTrucks: number,
): Load {
  const plain = attempt < orders.length * 2;
  const order = orders[attempt % orders.length]!;
  const noise = plain ? 0 : random() * 0.3;
  const key = new Map(pieces.map((piece) => [piece, noise === 0 ? 0 : random()]));
  const sorted = [...pieces].sort(
    (a, b) =>
      b.firstOff - a.firstOff ||
      Number(b.floorOnly) - Number(a.floorOnly) ||
      (noise > 0 && random() < noise ? key.get(a)! - key.get(b)! : 0) ||
      order(a, b) ||
      (a.id < b.id ? -1 : 1),
  );
  const shuffled = noise > 0 ? disturb(sorted, random) : sorted;
  const style: PlacingStyle = {
    nearNose: attempt % 2 === 0 ? 0 : 0.5 + random(),
    balance: needsBalance(problem) ? [0.5, 2, 6][attempt % 3]! : 0,
    centred: false,
    startMm: 0,
  };
  const bySize = [...problem.trucks].sort((a, b) => capacityOf(b) - capacityOf(a) || (a.id < b.id ? -1 : 1));
  const most = problem.trucks.length;
  // Fewer trucks are tried while a load with fewer is still to be found.
  const wanted =
    best.left.length === 0 && best.spaces.length > 0 ? Math.max(leastTrucks, trucksUsed(best) - (attempt % 3 === 0 ? 1 : 0)) : most;
  const chosen = plain || random() < 0.6 ? bySize.slice(0, wanted) : pickSome(problem.trucks, wanted, random);
  return loadTrucks(problem, chosen, shuffled, style, random);
}

const needsBalance = (problem: TruckCase): boolean => problem.trucks.some((truck) => truck.maxSideOffsetMm !== undefined);
const capacityOf = (truck: Truck): number => truck.innerLengthMm * truck.innerWidthMm * truck.innerHeightMm;

function pickSome<T>(values: readonly T[], count: number, random: () => number): T[] {
  const keyed = values.map((value) => [random(), value] as const).sort(([a], [b]) => a - b);
  return keyed.slice(0, count).map(([, value]) => value);
}

/** Swaps a few neighbours with the same place in the unloading order. */
function disturb(sorted: readonly Piece[], random: () => number): Piece[] {
  const pieces = [...sorted];
  const swaps = 1 + Math.floor(random() * Math.max(2, pieces.length / 6));
  for (let swap = 0; swap < swaps; swap++) {
    const a = Math.floor(random() * pieces.length);
    const b = Math.min(pieces.length - 1, a + 1 + Math.floor(random() * 6));
    if (pieces[a]?.firstOff === pieces[b]?.firstOff) [pieces[a], pieces[b]] = [pieces[b]!, pieces[a]!];
  }
  return pieces;
}

function loadTrucks(
  problem: TruckCase,
  trucks: readonly Truck[],
  pieces: readonly Piece[],
  style: PlacingStyle,
  random: () => number,
): Load {
  const spaces: LoadSpace[] = [];
  let rest: readonly Piece[] = pieces;
  for (const truck of trucks) {
    const { space, left } = loadOne(problem, truck, rest, style, random);
    spaces.push(space);
    rest = left;
  }
  return { spaces, left: rest, leftKg: massOf(rest), lengthMm: spaces.reduce((sum, space) => sum + usedLengthMm(space.placed), 0) };
}

/** Fills one truck in several ways until all ride inside the limits; else the way that leaves least, and where no way is inside them a lighter load. */
function loadOne(
  problem: TruckCase,
  truck: Truck,
  pieces: readonly Piece[],
  style: PlacingStyle,
  random: () => number,
): { space: LoadSpace; left: Piece[] } {
  for (let wanted = pieces; ; ) {
    const unwanted = pieces.filter((each) => !wanted.includes(each));
    let closest: { space: LoadSpace; left: Piece[]; outside: number } | undefined;
    for (const way of waysToFill(truck, wanted, style)) {
      const filled = fill(problem, truck, wanted, way);
      const outside = outsideLoad(filled.space, problem.checkAfterStops);
      if (!closest || outside < closest.outside || (outside === closest.outside && massOf(filled.left) < massOf(closest.left)))
        closest = { ...filled, outside };
      if (outside === 0 && filled.left.length === 0) break;
    }
    if (closest!.outside === 0 || closest!.space.placed.length === 0)
      return { space: closest!.space, left: [...closest!.left, ...unwanted] };
    wanted = lightened(closest!.space, wanted, random);
  }
}

function* waysToFill(truck: Truck, pieces: readonly Piece[], style: PlacingStyle): Generator<PlacingStyle> {
  const balances: Pick<PlacingStyle, 'balance' | 'centred'>[] =
    truck.maxSideOffsetMm === undefined
      ? [{ balance: 0, centred: false }]
      : [style.balance, 1, 4].map((balance) => ({ balance, centred: false })).concat({ balance: 6, centred: true });
  for (const startMm of startsOf(truck, pieces)) for (const balance of balances) yield { ...style, ...balance, startMm };
}

/** Distances from the nose worth starting at: none, and steps back where there is an axle to think of. */
function startsOf(truck: Truck, pieces: readonly Piece[]): number[] {
  if (!truck.semiTrailer && !truck.rigid) return [0];
  const floorMm2 = pieces.reduce((sum, each) => sum + each.lengthMm * each.widthMm, 0);
  const spare = Math.max(0, truck.innerLengthMm - (0.5 * floorMm2) / truck.innerWidthMm);
  return [0, 0.06, 0.12, 0.2, 0.3, 0.45, 0.6, 0.8].map((part) => Math.round(part * spare));
}

function fill(problem: TruckCase, truck: Truck, pieces: readonly Piece[], style: PlacingStyle): { space: LoadSpace; left: Piece[] } {
  const space = new LoadSpace(truck, problem.minSupport, style);
  const left: Piece[] = [];
  // What found no floor once finds none later: the same shape is not tried twice.
  const refused = new Set<string>();
  for (const piece of pieces) {
    const shape = `${piece.lengthMm} ${piece.widthMm} ${piece.heightMm} ${piece.massKg} ${piece.mayTurn} ${piece.floorOnly}`;
    if ((piece.floorOnly && refused.has(shape)) || !space.load(piece)) {
      refused.add(shape);
      left.push(piece);
    }
  }
  return { space, left };
}

/** Without one of the pieces that were loaded: a light one, one of several so that tries differ. */
function lightened(space: LoadSpace, wanted: readonly Piece[], random: () => number): Piece[] {
  const byMass = [...space.placed].map((each) => each.piece).sort((a, b) => a.massKg - b.massKg || (a.id < b.id ? -1 : 1));
  const out = byMass[Math.floor(random() * random() * byMass.length)]!;
  const loaded = new Set(space.placed.map((each) => each.piece));
  return wanted.filter((each) => each !== out && loaded.has(each));
}
