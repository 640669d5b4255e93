import { type Search, searchRound } from './fleet-search.js';
import { waysIn } from './floor-bound.js';
import type { TruckRows } from './one-truck-rows.js';
import type { TruckAnswer } from './pack-answer.js';
import type { Piece } from './truck-case.js';

/**
 * A load without some of the pieces: those that weigh least for the floor that they need stay behind, as few as a halving search finds; then the heaviest of them are tried again
 * one by one. Undefined where not even a few pieces ride.
 */
export function leaveOut(
  search: Search,
  round: number,
  shake: boolean,
  seen: Map<string, TruckRows>,
): { trucks: readonly TruckAnswer[]; left: readonly Piece[] } | undefined {
  const { problem, pieces, floor, random } = search;
  const [lengthMm, widthMm] = [
    Math.max(...problem.trucks.map((each) => each.innerLengthMm)),
    Math.max(...problem.trucks.map((each) => each.innerWidthMm)),
  ];
  const worth = new Map(
    pieces.map((each) => [
      each,
      (each.massKg / Math.max(1, floor.prices.lengthOf(waysIn(each, lengthMm, widthMm)))) * (shake ? 0.85 + 0.3 * random() : 1),
    ]),
  );
  const byWorth = [...pieces].sort((a, b) => worth.get(b)! - worth.get(a)! || (a.id < b.id ? -1 : 1));
  const load = (own: readonly Piece[]) =>
    searchRound({ ...search, pieces: own, bound: { ...search.bound, trucks: problem.trucks.length } }, round, seen)?.answer;
  let [fits, most] = [0, byWorth.length];
  let best: ReturnType<typeof load>;
  while (fits < most) {
    const count = best === undefined && fits === 0 ? Math.max(1, Math.floor(0.9 * most)) : Math.ceil((fits + most) / 2);
    const answer = load(byWorth.slice(0, count));
    if (answer) [fits, best] = [count, answer];
    else most = count - 1;
    if (search.isOver()) break;
  }
  if (!best) return undefined;
  const inside = byWorth.slice(0, fits);
  const left: Piece[] = [];
  for (const piece of byWorth.slice(fits).sort((a, b) => b.massKg - a.massKg || (a.id < b.id ? -1 : 1))) {
    const answer = search.isOver() || left.length > 12 ? undefined : load([...inside, piece]);
    if (answer) {
      inside.push(piece);
      best = answer;
    } else left.push(piece);
  }
  return { trucks: best.trucks, left };
}
