import { outsideLoad } from './check-load.js';
import { seededRandom } from '#kernel';
import type { KeepOptions } from './kept.js';
import { LoadSpace, type Placed } from './load-space.js';
import { getOn, keptIn, loadingOrderOf } from './loading-order.js';
import { type TruckPackAnswer, truckAnswer } from './pack-answer.js';
import { boundOf } from './pack-bound.js';
import type { Piece, Truck, TruckCase } from './truck-case.js';
import type { Violation } from './violation.js';
import { verifyKept } from './verify-truck-pack.js';

export interface RowLimits extends KeepOptions {
  readonly seed: number;
  /** Orders of the pieces that are tried. */
  readonly workLimit: number;
  /** Told the part that is done, 0 to 1. */
  readonly onProgress?: (part: number) => void;
}

interface Row {
  readonly along: number;
  /** Pieces side by side from the left wall, and what stands on each. */
  readonly columns: readonly { readonly base: Turned; readonly onTop: readonly Turned[] }[];
}

interface Turned {
  readonly piece: Piece;
  readonly along: number;
  readonly across: number;
  readonly turned: boolean;
}

/**
 * Loads built by hand: rows straight across the truck from the nose, what comes off last first. A row takes pieces of one place in the unloading order, and of
 * the next only when nothing of the first is left; so every row can be unloaded before the one behind it. undefined where rows do not hold all pieces
 * inside the limits.
 */
export function solveRows(problem: TruckCase, limits: RowLimits = { seed: 1, workLimit: 1 }): TruckPackAnswer | undefined {
  const refused = verifyKept(problem, limits);
  if (refused.length > 0) return refusal(problem, limits, refused);
  const bound = boundOf(problem, problem.pieces);
  const random = seededRandom(limits.seed);
  const keeping = keepingOf(problem, limits);
  let best: TruckPackAnswer | undefined;
  for (let round = 0; round < limits.workLimit && best?.status !== 'optimal'; round++) {
    const answer = loadRows(problem, orderFor(problem, keeping, round, random), bound, keeping);
    if (answer && (!best || isShorter(answer, best))) best = answer;
    limits.onProgress?.((round + 1) / limits.workLimit);
  }
  return best && limits.waived ? { ...best, waived: limits.waived } : best;
}

/** What is kept, by truck. */
interface Keeping {
  readonly byTruck: ReadonlyMap<string, readonly Placed[]>;
  readonly ids: ReadonlySet<string>;
  readonly loaded: ReadonlySet<string>;
  readonly waived: ReadonlySet<string>;
}

function keepingOf(problem: TruckCase, { kept = [], waived = [] }: KeepOptions): Keeping {
  const pieces = new Map(problem.pieces.map((each) => [each.id, each]));
  return {
    byTruck: new Map(problem.trucks.map((truck) => [truck.id, keptIn(truck, pieces, kept)])),
    ids: new Set(kept.map((each) => each.id)),
    loaded: new Set(kept.flatMap((each) => (each.loaded ? [each.id] : []))),
    waived: new Set(waived),
  };
}

function refusal(problem: TruckCase, { waived }: KeepOptions, refused: readonly Violation[]): TruckPackAnswer {
  return {
    status: 'feasible',
    trucks: [],
    leftOver: problem.pieces.map(({ id }) => ({ id, reason: 'nothing is planned: what is kept in its place breaks a rule' })),
    bound: { trucks: 0, usedLengthMm: 0, reason: 'nothing is planned' },
    refused,
    ...(waived ? { waived } : {}),
  };
}

/** The first round takes large pieces first; each later one shuffles what one stop and one group leave open. */
function orderFor(problem: TruckCase, keeping: Keeping, round: number, random: () => number): Piece[] {
  const key = new Map(problem.pieces.map((piece) => [piece.id, round === 0 ? 0 : random()]));
  return problem.pieces
    .filter((each) => !keeping.ids.has(each.id))
    .sort(
      (a, b) =>
        b.firstOff - a.firstOff ||
        (round % 2 === 0 ? (a.group ?? '').localeCompare(b.group ?? '') : 0) ||
        key.get(a.id)! - key.get(b.id)! ||
        b.lengthMm * b.widthMm - a.lengthMm * a.widthMm ||
        (a.id < b.id ? -1 : 1),
    );
}

function loadRows(
  problem: TruckCase,
  sorted: readonly Piece[],
  bound: TruckPackAnswer['bound'],
  keeping: Keeping,
): TruckPackAnswer | undefined {
  const holds = (truck: Truck) => Number(keeping.byTruck.get(truck.id)!.length > 0);
  const inOrder = [...problem.trucks].sort((a, b) => holds(b) - holds(a));
  const least = inOrder.filter(holds).length;
  for (let count = Math.max(1, bound.trucks, least); count <= inOrder.length; count++) {
    const spaces = fillTrucks(problem, inOrder.slice(0, count), sorted, keeping);
    if (!spaces) continue;
    const orders = spaces
      .filter((space) => space.placed.length > 0)
      .map((space) => [space, loadingOrderOf(space.placed, keeping.loaded)] as const);
    if (orders.some(([, order]) => order === undefined)) continue;
    const trucks = orders.map(([space, order]) => truckAnswer(space, order));
    const isLeast = trucks.length <= bound.trucks && usedLength(trucks) <= bound.usedLengthMm;
    return { status: isLeast ? 'optimal' : 'feasible', trucks, leftOver: [], bound };
  }
  return undefined;
}

const usedLength = (trucks: TruckPackAnswer['trucks']): number => trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);

const isShorter = (a: TruckPackAnswer, b: TruckPackAnswer): boolean =>
  a.trucks.length < b.trucks.length || (a.trucks.length === b.trucks.length && usedLength(a.trucks) < usedLength(b.trucks));

function fillTrucks(problem: TruckCase, trucks: readonly Truck[], sorted: readonly Piece[], keeping: Keeping): LoadSpace[] | undefined {
  const spaces: LoadSpace[] = [];
  let rest = sorted;
  for (const truck of trucks) {
    const best = fillTruck(problem, truck, rest, keeping);
    if (!best) return undefined;
    spaces.push(best);
    const inside = new Set(best.placed.map((each) => each.piece));
    rest = rest.filter((piece) => !inside.has(piece));
  }
  return rest.length === 0 ? spaces : undefined;
}

/** As many rows as the truck takes; where an axle asks for it the whole load starts further from the nose, or the last rows stay behind. */
function fillTruck(problem: TruckCase, truck: Truck, pieces: readonly Piece[], keeping: Keeping): LoadSpace | undefined {
  const rows = rowsFor(truck, pieces);
  for (let count = rows.length; count >= (keeping.byTruck.get(truck.id)!.length > 0 || pieces.length === 0 ? 0 : 1); count--) {
    const length = rows.slice(0, count).reduce((sum, row) => sum + row.along, 0);
    const spare = truck.innerLengthMm - length;
    if (spare < 0) continue;
    for (const startMm of [0, 0.15, 0.3, 0.5, 0.75, 1].map((part) => Math.floor(spare * part))) {
      for (const centred of [false, true]) {
        const space = place(problem, truck, rows.slice(0, count), startMm, centred, keeping);
        if (space && outsideLoad(space, problem.checkAfterStops) === 0) return space;
      }
    }
  }
  return undefined;
}

function rowsFor(truck: Truck, pieces: readonly Piece[]): Row[] {
  const rows: Row[] = [];
  let rest = [...pieces];
  let length = 0;
  while (rest.length > 0) {
    const row = bestRow(truck, rest);
    if (!row || length + row.along > truck.innerLengthMm) break;
    rows.push(row);
    length += row.along;
    const taken = new Set(row.columns.flatMap(({ base, onTop }) => [base.piece, ...onTop.map((each) => each.piece)]));
    rest = rest.filter((piece) => !taken.has(piece));
  }
  return rows;
}

const waysOf = (piece: Piece): Turned[] => [
  { piece, along: piece.lengthMm, across: piece.widthMm, turned: false },
  ...(piece.mayTurn && piece.lengthMm !== piece.widthMm ? [{ piece, along: piece.widthMm, across: piece.lengthMm, turned: true }] : []),
];

/** The fuller of the rows that begin with the next piece in either turn. */
function bestRow(truck: Truck, rest: readonly Piece[]): Row | undefined {
  let best: { row: Row; fill: number } | undefined;
  for (const first of waysOf(rest[0]!)) {
    if (first.across > truck.innerWidthMm) continue;
    const row = buildRow(truck, first, rest);
    const area = row.columns.reduce(
      (sum, { base, onTop }) => sum + base.along * base.across + onTop.reduce((more, each) => more + each.along * each.across, 0),
      0,
    );
    const fill = area / (row.along * truck.innerWidthMm);
    if (!best || fill > best.fill) best = { row, fill };
  }
  return best?.row;
}

function buildRow(truck: Truck, first: Turned, rest: readonly Piece[]): Row {
  const columns = [{ base: first, onTop: [] as Turned[] }];
  const taken = new Set([first.piece]);
  let width = first.across;
  for (;;) {
    const next = rest
      .filter((piece) => !taken.has(piece) && isNext(piece, rest, taken))
      .flatMap(waysOf)
      .filter((way) => way.along <= first.along && way.across + width <= truck.innerWidthMm)
      .sort((a, b) => b.piece.firstOff - a.piece.firstOff || b.along - a.along || a.across - b.across)[0];
    if (!next) break;
    columns.push({ base: next, onTop: [] });
    taken.add(next.piece);
    width += next.across;
  }
  for (const column of columns) stackOn(truck, column, rest, taken);
  return { along: first.along, columns };
}

/** Nothing that comes off later is left outside: only then may a piece stand this deep. */
const isNext = (piece: Piece, rest: readonly Piece[], taken: ReadonlySet<Piece>): boolean =>
  !rest.some((other) => other.firstOff > piece.firstOff && !taken.has(other));

function stackOn(truck: Truck, column: { base: Turned; onTop: Turned[] }, rest: readonly Piece[], taken: Set<Piece>): void {
  const height = Math.min(truck.innerHeightMm, truck.doorHeightMm ?? Infinity);
  for (;;) {
    const tower = [column.base, ...column.onTop];
    const under = tower.at(-1)!;
    const z = tower.reduce((sum, each) => sum + each.piece.heightMm, 0);
    const next = rest
      .filter(
        (piece) =>
          !taken.has(piece) &&
          !piece.floorOnly &&
          piece.firstOff <= under.piece.firstOff &&
          isNext(piece, rest, taken) &&
          z + piece.heightMm <= height &&
          bears(tower, piece),
      )
      .flatMap(waysOf)
      .filter((way) => way.along <= under.along && way.across <= under.across)
      .sort((a, b) => b.piece.firstOff - a.piece.firstOff || b.along * b.across - a.along * a.across)[0];
    if (!next) return;
    column.onTop.push(next);
    taken.add(next.piece);
  }
}

/** Every piece of the tower may carry what would stand above it. */
function bears(tower: readonly Turned[], piece: Piece): boolean {
  return tower.every(({ piece: under }, index) => {
    const above = tower.slice(index + 1).reduce((sum, each) => sum + each.piece.massKg, 0) + piece.massKg;
    return under.maxOnTopKg === undefined || above <= under.maxOnTopKg;
  });
}

/** Puts the rows in, each against the wall that levels the load, or in the middle where that does not do; undefined where a blocked place is in the way. */
function place(
  problem: TruckCase,
  truck: Truck,
  rows: readonly Row[],
  startMm: number,
  centred: boolean,
  keeping: Keeping,
): LoadSpace | undefined {
  const space = new LoadSpace(truck, problem.minSupport, { nearNose: 0, balance: 0, centred: false, startMm: 0 });
  const kept = keeping.byTruck.get(truck.id)!;
  for (const each of kept) if (!space.putAt(each)) return undefined;
  const free = (each: Placed) => kept.every((fixed) => getOn(each, fixed, keeping.waived, keeping.loaded.has(fixed.piece.id)));
  let x = startMm;
  for (const row of rows) {
    x = past(kept, x, row.along);
    if (x + row.along > truck.innerLengthMm) return undefined;
    const gap = truck.innerWidthMm - row.columns.reduce((sum, { base }) => sum + base.across, 0);
    const sides = (centred ? [Math.floor(gap / 2)] : [0, gap]).map((fromLeftMm) => placedRow(row, x, fromLeftMm));
    const tilt = (placed: readonly Placed[]) =>
      Math.abs(
        space.sideMomentKgMm +
          placed.reduce((sum, each) => sum + each.piece.massKg * (each.y + each.across / 2 - truck.innerWidthMm / 2), 0),
      );
    const better = sides.reduce((a, b) => (tilt(b) < tilt(a) ? b : a));
    for (const each of better) if (!free(each) || !space.putAt(each)) return undefined;
    x += row.along;
  }
  return space;
}

/** The first place from x on where a row does not reach over anything kept. */
function past(kept: readonly Placed[], from: number, along: number): number {
  const over = kept.filter((each) => each.x < from + along && from < each.x + each.along);
  return over.length === 0 ? from : past(kept, Math.max(...over.map((each) => each.x + each.along)), along);
}

function placedRow(row: Row, x: number, fromLeftMm: number): Placed[] {
  const placed: Placed[] = [];
  let y = fromLeftMm;
  for (const { base, onTop } of row.columns) {
    let z = 0;
    for (const each of [base, ...onTop]) {
      placed.push({ piece: each.piece, x, y, z, along: each.along, across: each.across, high: each.piece.heightMm, turned: each.turned });
      z += each.piece.heightMm;
    }
    y += base.across;
  }
  return placed;
}
