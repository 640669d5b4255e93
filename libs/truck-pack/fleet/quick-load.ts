import { mostPayloadKg } from '../bound/index.js';
import { type Piece, type Truck, type TruckAnswer, Work, headroomOf } from '../case/index.js';
import { type TruckRows, rowsInTruck } from '../rows/index.js';
import { truckAnswer } from '../space/index.js';
import type { Search } from './fleet-search.js';
import { type Loaded, loadAgain, textOf } from './load-again.js';
import { Waiting } from './waiting.js';

/** A load, and the pieces that stay behind. */
export interface Part {
  readonly trucks: readonly TruckAnswer[];
  readonly left: readonly Piece[];
}

/**
 * A load at any size in little time: truck after truck, the largest first, takes what it can of the first pieces in plain rows, and gives the last of them away while it is
 * outside a limit; a load is repeated in the trucks that are alike while there are pieces for it. It is what is answered where the work for anything better is not there, so it
 * may take a little longer than the clock allows, and what can be repeated is repeated however late it is.
 */
export function quickLoad(search: Search, pieces: readonly Piece[], floorOf: (piece: Piece) => number): Part {
  const { problem, work } = search;
  const size = (truck: Truck) => truck.innerLengthMm * truck.innerWidthMm;
  const late = work.unlimited(graceShare);
  const waiting = new Waiting(pieces);
  const trucks: TruckAnswer[] = [];
  let last: { readonly kind: string; readonly loaded: Loaded | undefined } | undefined;
  for (const truck of [...problem.trucks].sort((a, b) => size(b) - size(a))) {
    if (waiting.isEmpty) break;
    const kind = textOf(truck);
    const before = last?.kind === kind ? last.loaded : undefined;
    // A truck that is like one that took nothing takes nothing either.
    if (last?.kind === kind && !before) continue;
    let loaded = before && pieces.length > repeatedFrom ? loadAgain(before, truck, waiting, problem.checkAfterStops) : undefined;
    if (!loaded && trucks.length > 0 && late.isCut) continue;
    loaded ??= loadOne(search, truck, waiting, floorOf, trucks.length === 0 ? new Work() : late);
    last = { kind, loaded };
    if (!loaded) continue;
    trucks.push(truckAnswer(loaded.load, loaded.order));
    waiting.take(loaded.load.placed.map((each) => each.piece));
  }
  return { trucks, left: waiting.left };
}

/** The part of the time given after which nothing new is packed. */
const graceShare = 1.2;

/** From how many pieces on a load is repeated in the next truck where that is possible, rather than made anew, and pieces stand like beside like. */
export const repeatedFrom = 1000;

/** What one truck takes of the first pieces; undefined where that is nothing. The first truck is loaded whatever the clock says. */
function loadOne(search: Search, truck: Truck, waiting: Waiting, floorOf: (piece: Piece) => number, clock: Work): Loaded | undefined {
  const work = clock.unlimited();
  const rows = rowsOfFirst(search, work, truck, firstThatCould([truck], waiting.ableFor(truck), floorOf));
  search.work.add(300 + work.steps);
  if (!rows?.space || rows.space.placed.length === 0) return undefined;
  return { load: rows.space, order: rows.order };
}

/** As many of the first pieces as are inside every limit: all, else an eighth less, a quarter less, half. */
function rowsOfFirst({ problem, floor, random }: Search, work: Work, truck: Truck, pieces: readonly Piece[]): TruckRows | undefined {
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

/** As many of the first pieces as the floor, their masses and the trucks' volume could hold at most; one at the least. */
export function firstThatCould(trucks: readonly Truck[], pieces: Iterable<Piece>, floorOf: (piece: Piece) => number): Piece[] {
  let floorMm = trucks.reduce((sum, each) => sum + each.innerLengthMm, 0);
  let massKg = trucks.reduce((sum, each) => sum + mostPayloadKg(each), 0);
  let mm3 = trucks.reduce((sum, each) => sum + each.innerLengthMm * each.innerWidthMm * headroomOf(each), 0);
  const first: Piece[] = [];
  for (const piece of pieces) {
    floorMm -= piece.floorOnly ? floorOf(piece) : 0;
    massKg -= piece.massKg;
    mm3 -= piece.lengthMm * piece.widthMm * piece.heightMm;
    if (floorMm < 0 || massKg < 0 || mm3 < 0) return first.length === 0 ? [piece] : first;
    first.push(piece);
  }
  return first;
}
