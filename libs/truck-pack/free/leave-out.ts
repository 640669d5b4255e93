import { type Piece, sharesInTowers, waysIn } from '../case/index.js';
import { type Part, type Search, firstThatCould, quickLoad, searchRound } from '../fleet/index.js';
import type { TruckRows } from '../rows/index.js';

/** Floor that each piece needs by itself, millimetres of the longest and widest truck's length. */
export function floorOfPieces({ problem, floor }: Search): (piece: Piece) => number {
  const [lengthMm, widthMm] = [
    Math.max(...problem.trucks.map((each) => each.innerLengthMm)),
    Math.max(...problem.trucks.map((each) => each.innerWidthMm)),
  ];
  const shareOf = sharesInTowers(problem);
  const known = new Map<Piece, number>();
  return (piece) => {
    let mm = known.get(piece);
    if (mm === undefined) known.set(piece, (mm = Math.max(1, floor.prices.lengthOf(waysIn(piece, lengthMm, widthMm)) || shareOf(piece))));
    return mm;
  };
}

/**
 * A load without some of the pieces: those that weigh least for the floor that they need stay behind, as few as a halving search finds; then the heaviest of them are tried again
 * one by one.
 */
export function leaveOut(search: Search, round: number, shake: boolean, seen: Map<string, TruckRows>): Part {
  const { problem, pieces, random, work } = search;
  const floorOf = floorOfPieces(search);
  const worth = new Map(pieces.map((each) => [each, (each.massKg / floorOf(each)) * (shake ? 0.85 + 0.3 * random() : 1)]));
  const byWorth = [...pieces].sort((a, b) => worth.get(b)! - worth.get(a)! || (a.id < b.id ? -1 : 1));
  const load = (own: readonly Piece[]) =>
    searchRound({ ...search, pieces: own, bound: { ...search.bound, trucks: problem.trucks.length } }, round, seen)?.answer;
  const first = quickLoad(search, byWorth, floorOf);
  let [fits, most] = [0, firstThatCould(problem.trucks, byWorth, floorOf).length];
  let best: ReturnType<typeof load>;
  while (fits < most && !work.isOver) {
    // Until something rides, a tenth less each time; then halves.
    const count = best === undefined ? Math.max(1, Math.floor(0.9 * most)) : Math.ceil((fits + most) / 2);
    const answer = load(byWorth.slice(0, count));
    if (answer) [fits, best] = [count, answer];
    else most = count - 1;
  }
  if (!best) return first;
  const inside = byWorth.slice(0, fits);
  const left: Piece[] = [];
  for (const piece of byWorth.slice(fits).sort((a, b) => b.massKg - a.massKg || (a.id < b.id ? -1 : 1))) {
    const answer = work.isOver || left.length > 12 ? undefined : load([...inside, piece]);
    if (answer) {
      inside.push(piece);
      best = answer;
    } else left.push(piece);
  }
  const massOf = (of: readonly Piece[]) => of.reduce((sum, each) => sum + each.massKg, 0);
  return massOf(left) <= massOf(first.left) ? { trucks: best.trucks, left } : first;
}
