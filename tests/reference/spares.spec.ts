import { chooseTrunk, poissonTails, poolSpares, readSparesCase, smallestSpares, solveSpares } from '#hardware-count';

const poisson = (mean: number) => ({ kind: 'poisson' as const, mean });

/** P(X <= x) for means 0.5 1 1.5 2 2.5 3 4 5: a published cumulative Poisson table, four decimals. */
const means = [0.5, 1, 1.5, 2, 2.5, 3, 4, 5];
const table = [
  [0.6065, 0.3679, 0.2231, 0.1353, 0.0821, 0.0498, 0.0183, 0.0067],
  [0.9098, 0.7358, 0.5578, 0.406, 0.2873, 0.1991, 0.0916, 0.0404],
  [0.9856, 0.9197, 0.8088, 0.6767, 0.5438, 0.4232, 0.2381, 0.1247],
  [0.9982, 0.981, 0.9344, 0.8571, 0.7576, 0.6472, 0.4335, 0.265],
  [0.9998, 0.9963, 0.9814, 0.9473, 0.8912, 0.8153, 0.6288, 0.4405],
  [1.0, 0.9994, 0.9955, 0.9834, 0.958, 0.9161, 0.7851, 0.616],
  [1.0, 0.9999, 0.9991, 0.9955, 0.9858, 0.9665, 0.8893, 0.7622],
];

describe('spares against published tables', () => {
  it.each(table.flatMap((row, x) => row.map((wanted, index) => [x, means[index]!, wanted] as const)))(
    'P(X <= %i) with mean %s is %s',
    (x, mean, wanted) => expect(Math.abs(poissonTails(x, mean).atMost - wanted)).toBeLessThanOrEqual(0.5001e-4),
  );

  // A published Poisson table for small means.
  it.each([
    [0.1, [0.9048, 0.9953, 0.9998]],
    [0.2, [0.8187, 0.9825, 0.9989]],
    [0.3, [0.7408, 0.9631, 0.9964]],
  ])('with mean %s the first three are %s', (mean, wanted) => {
    wanted.forEach((value, x) => expect(Math.abs(poissonTails(x, mean).atMost - value)).toBeLessThanOrEqual(0.5001e-4));
  });

  // Single terms: Poisson table of the University of Massachusetts.
  it.each([
    [5, 0, 0.0067],
    [5, 4, 0.1755],
    [5, 5, 0.1755],
    [10, 9, 0.1251],
    [10, 10, 0.1251],
    [20, 19, 0.0888],
  ])('with mean %i the term of %i is %s', (mean, x, wanted) => {
    const below = x === 0 ? 0 : poissonTails(x - 1, mean).atMost;
    expect(Math.abs(poissonTails(x, mean).atMost - below - wanted)).toBeLessThanOrEqual(0.5001e-4);
  });

  // Quantiles derived from the tables above.
  it.each([
    [0, [0, 0, 0, 0]],
    [0.1, [0, 0, 1, 1]],
    [0.2, [0, 1, 1, 2]],
    [0.5, [1, 1, 2, 3]],
    [1, [2, 2, 3, 4]],
    [2, [3, 4, 5, 6]],
    [3, [4, 5, 6, 8]],
    [5, [7, 8, 9, 11]],
    [10, [13, 14, 15, 18]],
  ])('with mean %s the spares for 80, 90, 95 and 99 %% are %s', (mean, wanted) => {
    expect([0.8, 0.9, 0.95, 0.99].map((level) => smallestSpares(lossesWith(mean), level).spares)).toEqual(wanted);
  });

  it('pooling is cheaper: 12 spares in common where three separate pools need 17 (Trivedi, ch. 6, problem 2; k = 3, rate 0.002, 90 %)', () => {
    const means = [1300, 1500, 1200].map((hours) => hours * 0.002);
    const common = smallestSpares(lossesWith(means.reduce((sum, mean) => sum + mean, 0)), 0.9);
    expect(common.spares).toBe(12);
    expect(common.levelReached).toBeCloseTo(0.9362, 4);
    expect(poissonTails(11, 8).atMost).toBeCloseTo(0.8881, 4);
    const separate = cheapestSeparate(means, 0.9);
    expect(separate.total).toBe(17);
    expect(separate.level).toBeCloseTo(0.916, 3);
  });

  it('counts spares, not pieces: three spares for a mean of 3 suffice with 0.6472, where an article printed 0.4232', () => {
    expect(poissonTails(3, 3).atMost).toBeCloseTo(0.6472, 4);
    const read = readSparesCase({ lines: [{ item: 'x', installed: 1, uses: 3, lossPerUse: 1 - 1e-12, level: 0.64 }] });
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    expect(solveSpares(read.value).lines[0]!.spares).toBe(3);
  });

  it('the upper limit of the mean after 4 failures seen is 9.1535 at 95 % (worked example of Rhoden and Radke, US Army Missile Command, 1982)', () => {
    let [low, high] = [4, 40];
    for (let step = 0; step < 80; step++) {
      const middle = (low + high) / 2;
      if (poissonTails(4, middle).atMost > 0.05) low = middle;
      else high = middle;
    }
    expect(low).toBeCloseTo(9.1535, 4);
  });

  it('the choice for a whole trunk finds the split of the three pools: 6 + 6 + 5 (Trivedi, ch. 6, problem 2)', () => {
    const lines = [2.6, 3, 2.4].map((mean) => ({ losses: poisson(mean), least: 0, weight: 1 }));
    const choice = chooseTrunk(lines, 0.9);
    expect(choice).toMatchObject({ status: 'optimal', spares: [6, 6, 5], weight: 17, bound: 17, equalShareWeight: 18 });
    expect(choice.level).toBeCloseTo(0.916, 3);
    const cells = [2.6, 3, 2.4].map((mean, index) => ({ hang: `pool ${index}`, leg: 'one', pieceUses: mean }));
    expect(poolSpares(poisson, cells, 0.9)).toEqual({ level: 0.9, together: 12, byHang: 17, byLeg: 12 });
  });

  // Pieces of k alike items over the same time: the sum of Poisson processes is Poisson (Birolini, Reliability Engineering, ch. 4).
  it.each([1, 3, 12, 120])('%i alike pieces are one Poisson process of so many times the rate', (k) => {
    const rate = 0.02;
    let together = [1];
    for (let piece = 0; piece < k; piece++) together = convolved(together, rate);
    for (let n = 0, sum = 0; n <= 6; n++) {
      sum += together[n] ?? 0;
      expect(sum).toBeCloseTo(poissonTails(n, k * rate).atMost, 12);
    }
  });

  // Ten lines at 95 % are 60 % together.
  it('multiplies the levels of the lines', () => {
    expect(0.95 ** 10).toBeCloseTo(0.6, 2);
    const lines = Array.from({ length: 10 }, () => ({ losses: poisson(1), least: 3, weight: 1 }));
    expect(chooseTrunk(lines, 0.5).level).toBeCloseTo(poissonTails(3, 1).atMost ** 10, 12);
  });
});

/** Distribution of a sum with one more Poisson term, twelve places are enough here. */
function convolved(before: readonly number[], mean: number): number[] {
  const term = Array.from({ length: 12 }, (_, k) => (Math.exp(-mean) * mean ** k) / factorial(k));
  return Array.from({ length: 12 }, (_, n) => term.slice(0, n + 1).reduce((sum, p, k) => sum + p * (before[n - k] ?? 0), 0));
}

const factorial = (k: number): number => (k < 2 ? 1 : k * factorial(k - 1));

const lossesWith = (mean: number) => poisson(mean);

/** All splits of up to 20 spares a pool: the fewest whose product of levels exceeds the level wanted. */
function cheapestSeparate(means: readonly number[], level: number): { total: number; level: number } {
  let best = { total: Infinity, level: 0 };
  for (let a = 0; a < 20; a++)
    for (let b = 0; b < 20; b++)
      for (let c = 0; c < 20; c++) {
        const reached = [a, b, c].reduce((product, n, index) => product * poissonTails(n, means[index]!).atMost, 1);
        const total = a + b + c;
        if (reached > level && (total < best.total || (total === best.total && reached > best.level))) best = { total, level: reached };
      }
  return best;
}
