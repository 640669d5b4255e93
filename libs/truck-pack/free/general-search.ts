import type { Piece, Truck, TruckCaseData, Work } from '../case/index.js';
import { LoadSpace, type PlacingStyle, outsideLoad } from '../space/index.js';

/** A load of several trucks, and what it leaves. */
interface Load {
  readonly spaces: readonly LoadSpace[];
  readonly left: readonly Piece[];
}

export const massOf = (pieces: readonly Piece[]): number => pieces.reduce((sum, each) => sum + each.massKg, 0);

const orders: ((a: Piece, b: Piece) => number)[] = [
  (a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm || b.heightMm - a.heightMm,
  (a, b) => b.lengthMm - a.lengthMm || b.widthMm - a.widthMm || b.heightMm - a.heightMm,
  (a, b) => b.widthMm - a.widthMm || b.lengthMm - a.lengthMm || b.heightMm - a.heightMm,
  (a, b) => b.heightMm - a.heightMm || b.lengthMm * b.widthMm - a.lengthMm * a.widthMm,
  (a, b) => b.massKg - a.massKg || b.lengthMm * b.widthMm - a.lengthMm * a.widthMm,
  (a, b) => b.lengthMm * b.widthMm * b.heightMm - a.lengthMm * a.widthMm * a.heightMm,
];

/** One load: the first tries take the plain orders, later ones disturb them; trucks are taken largest first, as few as may do. */
export function tryLoad(
  problem: TruckCaseData,
  pieces: readonly Piece[],
  attempt: number,
  random: () => number,
  best: { readonly left: number; readonly trucks: number },
  leastTrucks: number,
  work: Work,
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
    ...(attempt % 3 === 0 ? { grounded: carriersOf(pieces) } : {}),
  };
  const bySize = [...problem.trucks].sort((a, b) => capacityOf(b) - capacityOf(a) || (a.id < b.id ? -1 : 1));
  const most = problem.trucks.length;
  // Fewer trucks are tried while a load with fewer is still to be found.
  const wanted = best.left === 0 && best.trucks > 0 ? Math.max(leastTrucks, best.trucks - (attempt % 3 === 0 ? 1 : 0)) : most;
  const chosen = plain || random() < 0.6 ? bySize.slice(0, wanted) : pickSome(problem.trucks, wanted, random);
  return loadTrucks(problem, chosen, shuffled, style, random, work);
}

/** Pieces that could carry one that comes off before them: two layers of different stops take less floor than towers of one. */
function carriersOf(pieces: readonly Piece[]): ReadonlySet<Piece> {
  const carries = (under: Piece, piece: Piece) =>
    piece.firstOff < under.firstOff &&
    !piece.floorOnly &&
    piece.massKg <= (under.maxOnTopKg ?? Infinity) &&
    piece.lengthMm * piece.widthMm <= under.lengthMm * under.widthMm;
  return new Set(pieces.filter((under) => !under.floorOnly && pieces.some((piece) => carries(under, piece))));
}

const needsBalance = (problem: TruckCaseData): boolean => problem.trucks.some((truck) => truck.maxSideOffsetMm !== undefined);
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
  problem: TruckCaseData,
  trucks: readonly Truck[],
  pieces: readonly Piece[],
  style: PlacingStyle,
  random: () => number,
  work: Work,
): Load {
  const spaces: LoadSpace[] = [];
  let rest: readonly Piece[] = pieces;
  for (const truck of trucks) {
    if (work.isOver) break;
    const { space, left } = loadOne(problem, truck, rest, style, random, work);
    spaces.push(space);
    rest = left;
  }
  return { spaces, left: rest };
}

/** Fills one truck in several ways until all ride inside the limits; else the way that leaves least, and where no way is inside them a lighter load. */
function loadOne(
  problem: TruckCaseData,
  truck: Truck,
  pieces: readonly Piece[],
  style: PlacingStyle,
  random: () => number,
  work: Work,
): { space: LoadSpace; left: Piece[] } {
  for (let wanted = pieces; ; ) {
    const unwanted = pieces.filter((each) => !wanted.includes(each));
    let closest: { space: LoadSpace; left: Piece[]; outside: number } | undefined;
    for (const way of waysToFill(truck, wanted, style)) {
      const filled = fill(problem, truck, wanted, way, work);
      const outside = outsideLoad(filled.space, problem.checkAfterStops);
      if (!closest || outside < closest.outside || (outside === closest.outside && massOf(filled.left) < massOf(closest.left)))
        closest = { ...filled, outside };
      if (outside === 0 && filled.left.length === 0) break;
      if (work.isOver) break;
    }
    if (closest!.outside === 0 || closest!.space.placed.length === 0)
      return { space: closest!.space, left: [...closest!.left, ...unwanted] };
    if (work.isOver) return { space: new LoadSpace(truck, problem.minSupport, style), left: [...pieces] };
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

function fill(
  problem: TruckCaseData,
  truck: Truck,
  pieces: readonly Piece[],
  style: PlacingStyle,
  work: Work,
): { space: LoadSpace; left: Piece[] } {
  const space = new LoadSpace(truck, problem.minSupport, style);
  const left: Piece[] = [];
  // What found no floor once finds none later: the same shape is not tried twice.
  const refused = new Set<string>();
  for (const piece of pieces) {
    const shape = `${piece.lengthMm} ${piece.widthMm} ${piece.heightMm} ${piece.massKg} ${piece.mayTurn} ${piece.floorOnly}`;
    const looked = space.looked;
    if (work.isOver || (piece.floorOnly && refused.has(shape)) || !space.load(piece)) {
      refused.add(shape);
      left.push(piece);
    }
    work.add(space.looked - looked);
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
