import { type Mask, addTo, has, listOf, makeMask } from './masks.js';

/** Sets of days of which one each must be chosen. */
export interface Cover {
  readonly dayCount: number;
  readonly rows: readonly Mask[];
  /** The days of each set. */
  readonly days: readonly (readonly number[])[];
  /** Weights on the sets, kept from one question to the next: any weights give a bound, good ones a good one. */
  readonly weights: Float64Array;
  /** Counted work: a step looks at one day of one set. */
  steps: number;
}

export function makeCover(rows: readonly Mask[], dayCount: number): Cover {
  const none = makeMask(dayCount);
  const days = rows.map((row) => listOf(row, none));
  return { dayCount, rows, days, weights: Float64Array.from(days, (each) => 1 / Math.max(1, each.length)), steps: 0 };
}

const slack = 1e-6;

/**
 * Days that no choice of at most `most` days serves the open sets with, on top of those that are barred; undefined: there is no such choice at all.
 *
 * Weights on the sets, relaxed (Lagrange; Held and Karp's ascent): every choice has at least L = (sum of the weights) + (sum over the days of what is left
 * of 1 after the weights of their sets, where that is negative) days, and one more by what is left where a day with something left is taken.
 */
export function barMore(cover: Cover, open: readonly number[], barred: Mask, most: number, rounds: number): Mask | undefined {
  const { days, weights, dayCount } = cover;
  const shut = barred.slice();
  const room = new Float64Array(dayCount);
  let [best, scale, sinceBetter] = [Number.NEGATIVE_INFINITY, 1, 0];
  for (let round = 0; round <= rounds; round++) {
    const least = spread(cover, open, shut, room);
    if (least > most + slack) return undefined;
    for (let day = 0; day < dayCount; day++) if (room[day]! > 0 && least + room[day]! > most + slack) addTo(shut, day);
    if (least > best + 1e-4) [best, sinceBetter] = [least, 0];
    else if (++sinceBetter === 4) [scale, sinceBetter] = [scale / 2, 0];
    let length = 0;
    const slopes = open.map((row) => {
      let slope = 1;
      for (const day of days[row]!) if (room[day]! < 0 && !has(shut, day)) slope--;
      length += slope * slope;
      return slope;
    });
    if (length === 0) break;
    const step = (scale * (most + 0.5 - least)) / length;
    open.forEach((row, index) => (weights[row] = Math.max(0, weights[row]! + step * slopes[index]!)));
  }
  return open.some((row) => days[row]!.every((day) => has(shut, day))) ? undefined : shut;
}

/** What every day has left of 1 after the weights of its open sets, into `room`; gives the bound. */
function spread(cover: Cover, open: readonly number[], shut: Mask, room: Float64Array): number {
  room.fill(1);
  let least = 0;
  for (const row of open) {
    const weight = cover.weights[row]!;
    const days = cover.days[row]!;
    least += weight;
    cover.steps += days.length;
    for (const day of days) room[day]! -= weight;
  }
  for (let day = 0; day < cover.dayCount; day++) if (room[day]! < 0 && !has(shut, day)) least += room[day]!;
  return least;
}

/** The fewest days that the open sets need by their weights, after so many rounds. */
export function daysAtLeast(cover: Cover, rounds: number, most: number): number {
  const open = cover.rows.map((_, row) => row);
  const none = makeMask(cover.dayCount);
  let least = 0;
  // As a question: is there a choice of this many days?
  while (least < most && barMore(cover, open, none, least, rounds) === undefined) least++;
  return least;
}

/** The days that are not barred of the open set that has fewest of them. */
export function smallestSet(cover: Cover, open: readonly number[], barred: Mask): number[] {
  return open.map((row) => listOf(cover.rows[row]!, barred)).reduce((a, b) => (b.length < a.length ? b : a));
}
