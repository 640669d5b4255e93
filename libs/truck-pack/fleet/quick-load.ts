import { mostPayloadKg } from '../bound/index.js';
import { type Piece, type Truck, type TruckAnswer, Work, couldRide, headroomOf } from '../case/index.js';
import { type TruckRows, rowsInTruck } from '../rows/index.js';
import { truckAnswer } from '../space/index.js';
import type { Search } from './fleet-search.js';
import { type Loaded, alikeKeys, loadAgain } from './load-again.js';

/** A load, and the pieces that stay behind. */
export interface Part {
  readonly trucks: readonly TruckAnswer[];
  readonly left: readonly Piece[];
}

/**
 * A load at any size in little time: truck after truck, the largest first, takes what it can of the first pieces in plain rows, and gives the last of them away while it is
 * outside a limit. Only the clock cuts it short: it is what is answered where the work for anything better is not there.
 */
export function quickLoad(search: Search, pieces: readonly Piece[], floorOf: (piece: Piece) => number): Part {
  const trucks: TruckAnswer[] = [];
  let rest = pieces;
  const keys = pieces.length > repeatedFrom ? alikeKeys(pieces) : undefined;
  let last: Loaded | undefined;
  const size = (truck: Truck) => truck.innerLengthMm * truck.innerWidthMm;
  for (const truck of [...search.problem.trucks].sort((a, b) => size(b) - size(a))) {
    if (rest.length === 0 || (trucks.length > 0 && search.work.isCut)) break;
    last = last && keys && loadAgain(last, truck, rest, keys);
    last ??= loadOne(search, truck, rest, floorOf, trucks.length === 0);
    if (!last) continue;
    trucks.push(last.answer);
    const inside = new Set(last.pieces);
    rest = rest.filter((each) => !inside.has(each));
  }
  return { trucks, left: rest };
}

/** From how many pieces on a load is repeated in the next truck where that is possible, rather than made anew. */
const repeatedFrom = 1000;

/** What one truck takes of the first pieces; undefined where that is nothing. */
function loadOne(
  search: Search,
  truck: Truck,
  rest: readonly Piece[],
  floorOf: (piece: Piece) => number,
  isFirst: boolean,
): Loaded | undefined {
  const able = rest.filter((each) => couldRide(each, [truck]));
  // The first truck is loaded whatever the clock says.
  const work = isFirst ? new Work() : search.work.unlimited();
  const rows = rowsOfFirst({ ...search, work }, truck, able.slice(0, mostThatCould([truck], able, floorOf)));
  search.work.add(300 + work.steps);
  if (!rows?.space || rows.space.placed.length === 0) return undefined;
  return { truck, answer: truckAnswer(rows.space, rows.order), pieces: rows.space.placed.map((each) => each.piece) };
}

/** As many of the first pieces as are inside every limit: all, else an eighth less, a quarter less, half. */
function rowsOfFirst({ problem, floor, work, random }: Search, truck: Truck, pieces: readonly Piece[]): TruckRows | undefined {
  const fixed = { problem, truck, kept: [], loaded: new Set<string>(), waived: new Set<string>(), prices: floor.prices };
  const plain = { beam: 1, isGreedy: true, nodes: lanesTried, work, random, shake: false };
  let less = 1 / 8;
  for (let own = pieces; own.length > 0 && !work.isCut; less = Math.min(3 / 4, 2 * less)) {
    const rows = rowsInTruck({ ...fixed, ...plain, pieces: own });
    if (rows.space && rows.outsideKg === 0) return rows;
    own = own.slice(0, Math.floor((1 - less) * own.length));
  }
  return undefined;
}

/** Few, for this has to be quick. */
const lanesTried = 60;

/** As many of the first pieces as the floor, their masses and the trucks' volume could hold at most. */
export function mostThatCould(trucks: readonly Truck[], pieces: readonly Piece[], floorOf: (piece: Piece) => number): number {
  let floorMm = trucks.reduce((sum, each) => sum + each.innerLengthMm, 0);
  let massKg = trucks.reduce((sum, each) => sum + mostPayloadKg(each), 0);
  let mm3 = trucks.reduce((sum, each) => sum + each.innerLengthMm * each.innerWidthMm * headroomOf(each), 0);
  for (const [index, piece] of pieces.entries()) {
    floorMm -= piece.floorOnly ? floorOf(piece) : 0;
    massKg -= piece.massKg;
    mm3 -= piece.lengthMm * piece.widthMm * piece.heightMm;
    if (floorMm < 0 || massKg < 0 || mm3 < 0) return Math.max(1, index);
  }
  return pieces.length;
}
