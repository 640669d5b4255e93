import type { IntegerProgramSolver } from '#kernel';
import type { AllocationCase } from '../case/index.js';
import type { TourMoves } from './tour-case.js';

type Load = AllocationCase['loads'][number];
const nameOf = (box: Load['boxes'][number]): string => ('serial' in box ? `s ${box.serial}` : `m ${box.model}`);

/**
 * What no tour costs less than. Whatever is done between, all moves up to a show turn the first floor into one that serves it, so they are at least what that takes (`fromStart`, a bound for
 * each show); and all moves between two shows bring into place what can neither have stayed below in a load of the former, nor have stood ready beside it. The cheapest
 * counts of moves that keep all of this are a linear program of intervals, whose best solution is whole.
 */
export function tourBound(
  tour: TourMoves,
  fromStart: readonly number[],
  integerProgram: IntegerProgramSolver,
  timeLimitSeconds: number,
): number {
  const { shows } = tour;
  const rows: string[] = [];
  const between = (first: number, last: number) =>
    Array.from({ length: last - first + 1 }, (_, index) => `m${first + index}`).join('\n + ');
  shows.forEach((show, index) => {
    if (fromStart[index]! > 0) rows.push(`s${index}: ${between(0, index)} >= ${fromStart[index]}`);
    for (let before = 0; before < index; before++) {
      const least = leastBetween(tour, shows[before]!.loads, show.loads);
      if (least > 0) rows.push(`b${before}_${index}: ${between(before + 1, index)} >= ${least}`);
    }
  });
  if (rows.length === 0) return 0;
  const cost = shows.map(({ weight }, index) => `${weight} m${index}`).join('\n + ');
  const text = `Minimize\nobj: ${cost}\nSubject To\n${rows.join('\n')}\nEnd\n`;
  const answer = integerProgram.solve(text, { timeLimitSeconds, relaxed: true });
  return answer.status === 'optimal' ? answer.objective! - 1e-6 : 0;
}

/** Boxes of `next` that were neither below in a load of `now`, nor among the boxes that `now` leaves for other carts. */
function leastBetween({ floor }: TourMoves, now: readonly Load[], next: readonly Load[]): number {
  const kept = next.reduce((sum, load) => sum + Math.max(0, ...now.map((each) => alikeBelow(each, load))), 0);
  // A pinned box counts as its model: what is left of a model is no less for it.
  const modelOf = (box: Load['boxes'][number]) => ('serial' in box ? floor.boxes[box.serial] : box.model) ?? '';
  const count = (loads: readonly Load[]) => {
    const counts = new Map<string, number>();
    for (const box of loads.flatMap((each) => each.boxes)) counts.set(modelOf(box), (counts.get(modelOf(box)) ?? 0) + 1);
    return counts;
  };
  const unusable = new Set(floor.unusable);
  const stock = new Map<string, number>();
  for (const [serial, model] of Object.entries(floor.boxes)) if (!unusable.has(serial)) stock.set(model, (stock.get(model) ?? 0) + 1);
  const [used, wanted] = [count(now), count(next)];
  const beside = [...wanted].reduce((sum, [model, boxes]) => sum + Math.min(boxes, (stock.get(model) ?? 0) - (used.get(model) ?? 0)), 0);
  return [...wanted.values()].reduce((sum, each) => sum + each, 0) - kept - beside;
}

/** Boxes from the bottom up that are the same, or could be: a pinned one and one of its model. */
function alikeBelow(a: Load, b: Load): number {
  let alike = 0;
  while (alike < Math.min(a.boxes.length, b.boxes.length)) {
    const [of, other] = [a.boxes.at(-1 - alike)!, b.boxes.at(-1 - alike)!];
    if (nameOf(of) !== nameOf(other) && !('serial' in of) && !('serial' in other)) break;
    if ('serial' in of && 'serial' in other && of.serial !== other.serial) break;
    alike++;
  }
  return alike;
}
