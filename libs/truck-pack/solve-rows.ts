import { outsideLoad } from './check-load.js';
import { seededRandom } from '#kernel';
import { LoadSpace, type Placed } from './load-space.js';
import { type TruckPackAnswer, truckAnswer } from './pack-answer.js';
import { boundOf } from './pack-bound.js';
import type { Piece, Truck, TruckCase } from './truck-case.js';

export interface RowLimits {
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
  const bound = boundOf(problem, problem.pieces);
  const random = seededRandom(limits.seed);
  let best: TruckPackAnswer | undefined;
  for (let round = 0; round < limits.workLimit && best?.status !== 'optimal'; round++) {
    const answer = loadRows(problem, orderFor(problem, round, random), bound);
    if (answer && (!best || isShorter(answer, best))) best = answer;
    limits.onProgress?.((round + 1) / limits.workLimit);
  }
  return best;
}

/** The first round takes large pieces first; each later one shuffles what one stop and one group leave open. */
function orderFor(problem: TruckCase, round: number, random: () => number): Piece[] {
  const key = new Map(problem.pieces.map((piece) => [piece.id, round === 0 ? 0 : random()]));
  return [...problem.pieces].sort(
    (a, b) =>
      b.firstOff - a.firstOff ||
      (round % 2 === 0 ? (a.group ?? '').localeCompare(b.group ?? '') : 0) ||
      key.get(a.id)! - key.get(b.id)! ||
      b.lengthMm * b.widthMm - a.lengthMm * a.widthMm ||
      (a.id < b.id ? -1 : 1),
  );
}

function loadRows(problem: TruckCase, sorted: readonly Piece[], bound: TruckPackAnswer['bound']): TruckPackAnswer | undefined {
  for (let count = Math.max(1, bound.trucks); count <= problem.trucks.length; count++) {
    const spaces = fillTrucks(problem, problem.trucks.slice(0, count), sorted);
    if (!spaces) continue;
    const trucks = spaces.filter((space) => space.placed.length > 0).map(truckAnswer);
    const isLeast = trucks.length <= bound.trucks && usedLength(trucks) <= bound.usedLengthMm;
    return { status: isLeast ? 'optimal' : 'feasible', trucks, leftOver: [], bound };
  }
  return undefined;
}

const usedLength = (trucks: TruckPackAnswer['trucks']): number => trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);

const isShorter = (a: TruckPackAnswer, b: TruckPackAnswer): boolean =>
  a.trucks.length < b.trucks.length || (a.trucks.length === b.trucks.length && usedLength(a.trucks) < usedLength(b.trucks));

function fillTrucks(problem: TruckCase, trucks: readonly Truck[], sorted: readonly Piece[]): LoadSpace[] | undefined {
  const spaces: LoadSpace[] = [];
  let rest = sorted;
  for (const truck of trucks) {
    const best = fillTruck(problem, truck, rest);
    if (!best) return undefined;
    spaces.push(best);
    const inside = new Set(best.placed.map((each) => each.piece));
    rest = rest.filter((piece) => !inside.has(piece));
  }
  return rest.length === 0 ? spaces : undefined;
}

/** As many rows as the truck takes; where an axle asks for it the whole load starts further from the nose, or the last rows stay behind. */
function fillTruck(problem: TruckCase, truck: Truck, pieces: readonly Piece[]): LoadSpace | undefined {
  const rows = rowsFor(truck, pieces);
  for (let count = rows.length; count >= 1; count--) {
    const length = rows.slice(0, count).reduce((sum, row) => sum + row.along, 0);
    const spare = truck.innerLengthMm - length;
    if (spare < 0) continue;
    for (const startMm of [0, 0.15, 0.3, 0.5, 0.75, 1].map((part) => Math.floor(spare * part))) {
      for (const centred of [false, true]) {
        const space = place(problem, truck, rows.slice(0, count), startMm, centred);
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
function place(problem: TruckCase, truck: Truck, rows: readonly Row[], startMm: number, centred: boolean): LoadSpace | undefined {
  const space = new LoadSpace(truck, problem.minSupport, { nearNose: 0, balance: 0, centred: false, startMm: 0 });
  let x = startMm;
  for (const row of rows) {
    const gap = truck.innerWidthMm - row.columns.reduce((sum, { base }) => sum + base.across, 0);
    const sides = (centred ? [Math.floor(gap / 2)] : [0, gap]).map((fromLeftMm) => placedRow(row, x, fromLeftMm));
    const tilt = (placed: readonly Placed[]) =>
      Math.abs(
        space.sideMomentKgMm +
          placed.reduce((sum, each) => sum + each.piece.massKg * (each.y + each.across / 2 - truck.innerWidthMm / 2), 0),
      );
    const better = sides.reduce((a, b) => (tilt(b) < tilt(a) ? b : a));
    for (const each of better) if (!space.putAt(each)) return undefined;
    x += row.along;
  }
  return space;
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
