import { mostPayloadKg } from '../bound/index.js';
import { type Piece, type Truck, type TruckAnswer, couldRide, headroomOf, waysIn } from '../case/index.js';
import { type Search, searchRound } from '../fleet/index.js';
import type { TruckRows } from '../rows/index.js';
import { truckAnswer } from '../space/index.js';
import { freeInTruck } from './one-truck-free.js';

/** A load, and the pieces that stay behind. */
interface Part {
  readonly trucks: readonly TruckAnswer[];
  readonly left: readonly Piece[];
}

/**
 * A load without some of the pieces: those that weigh least for the floor that they need stay behind, as few as a halving search finds; then the heaviest of them are tried again
 * one by one.
 */
export function leaveOut(search: Search, round: number, shake: boolean, seen: Map<string, TruckRows>): Part {
  const { problem, pieces, floor, random } = search;
  const [lengthMm, widthMm] = [
    Math.max(...problem.trucks.map((each) => each.innerLengthMm)),
    Math.max(...problem.trucks.map((each) => each.innerWidthMm)),
  ];
  const floorOf = (piece: Piece) => Math.max(1, floor.prices.lengthOf(waysIn(piece, lengthMm, widthMm)));
  const worth = new Map(pieces.map((each) => [each, (each.massKg / floorOf(each)) * (shake ? 0.85 + 0.3 * random() : 1)]));
  const byWorth = [...pieces].sort((a, b) => worth.get(b)! - worth.get(a)! || (a.id < b.id ? -1 : 1));
  const load = (own: readonly Piece[]) =>
    searchRound({ ...search, mayStop: true, pieces: own, bound: { ...search.bound, trucks: problem.trucks.length } }, round, seen)?.answer;
  const first = truckByTruck(search, byWorth, floorOf);
  if (search.isOver()) return first;
  let [fits, most] = [0, mostThatCould(problem.trucks, byWorth, floorOf)];
  let best: ReturnType<typeof load>;
  while (fits < most) {
    // Until something rides, a tenth less each time; then halves.
    const count = best === undefined ? Math.max(1, Math.floor(0.9 * most)) : Math.ceil((fits + most) / 2);
    const answer = load(byWorth.slice(0, count));
    if (answer) [fits, best] = [count, answer];
    else most = count - 1;
    if (search.isOver()) break;
  }
  if (!best) return first;
  const inside = byWorth.slice(0, fits);
  const left: Piece[] = [];
  for (const piece of byWorth.slice(fits).sort((a, b) => b.massKg - a.massKg || (a.id < b.id ? -1 : 1))) {
    const answer = search.isOver() || left.length > 12 ? undefined : load([...inside, piece]);
    if (answer) {
      inside.push(piece);
      best = answer;
    } else left.push(piece);
  }
  const massOf = (of: readonly Piece[]) => of.reduce((sum, each) => sum + each.massKg, 0);
  return massOf(left) <= massOf(first.left) ? { trucks: best.trucks, left } : first;
}

/** A quick load: each truck takes what it can of the first pieces, and gives the last of them away while it is outside a limit. */
function truckByTruck(
  { problem, floor, loaded, waived, random }: Search,
  pieces: readonly Piece[],
  floorOf: (piece: Piece) => number,
): Part {
  const trucks: TruckAnswer[] = [];
  let rest = pieces;
  for (const truck of problem.trucks) {
    const able = rest.filter((each) => couldRide(each, [truck]));
    for (let own = able.slice(0, mostThatCould([truck], able, floorOf)); own.length > 0; own = own.slice(0, Math.floor(0.8 * own.length))) {
      const { space, order, outsideKg } = freeInTruck({
        problem,
        truck,
        pieces: own,
        kept: [],
        loaded,
        waived,
        prices: floor.prices,
        beam: 1,
        random,
        shake: false,
      });
      if (!space || outsideKg > 0) continue;
      const inside = new Set(space.placed.map((each) => each.piece));
      trucks.push(truckAnswer(space, order));
      rest = rest.filter((each) => !inside.has(each));
      break;
    }
  }
  return { trucks: trucks.filter((each) => each.placements.length > 0), left: rest };
}

/** As many of the first pieces as the floor, their masses and the trucks' volume could hold at most. */
function mostThatCould(trucks: readonly Truck[], pieces: readonly Piece[], floorOf: (piece: Piece) => number): number {
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
