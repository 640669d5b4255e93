/**
 * Fewest days that open sets still need, by two arguments: sets that share no day need one each; and weights on the sets that sum to at most one on
 * every day sum to at most the days needed (weak duality of the linear program). `open`: the days of each set that may still be chosen.
 */
export function daysNeeded(open: readonly (readonly number[])[], dayCount: number): number {
  const sorted = [...open].sort((a, b) => a.length - b.length);
  return Math.max(countApart(sorted, dayCount), Math.ceil(sumOfWeights(sorted, dayCount) - 1e-6));
}

function countApart(sorted: readonly (readonly number[])[], dayCount: number): number {
  const used = new Uint8Array(dayCount);
  let count = 0;
  for (const days of sorted) {
    if (days.some((each) => used[each] === 1)) continue;
    for (const each of days) used[each] = 1;
    count++;
  }
  return count;
}

/** Each set begins with the share of its busiest day, and is raised as far as its days have room. */
function sumOfWeights(sorted: readonly (readonly number[])[], dayCount: number): number {
  const sets = new Int32Array(dayCount);
  for (const days of sorted) for (const day of days) sets[day]!++;
  const room = new Float64Array(dayCount).fill(1);
  let sum = 0;
  const raise = (days: readonly number[], weight: number): void => {
    for (const day of days) room[day]! -= weight;
    sum += weight;
  };
  for (const days of sorted) raise(days, 1 / days.reduce((most, day) => Math.max(most, sets[day]!), 1));
  for (const days of sorted)
    raise(
      days,
      Math.max(
        0,
        days.reduce((least, day) => Math.min(least, room[day]!), 1),
      ),
    );
  return sum;
}
