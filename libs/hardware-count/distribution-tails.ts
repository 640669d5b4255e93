import { invariant } from '#kernel';
import { binomialTerm, poissonTerm } from './saddle-point.js';

/** Both sides of a distribution at n, each computed without subtracting from one where it is the smaller. */
export interface Tails {
  /** P(X <= n) */
  readonly atMost: number;
  /** P(X > n) */
  readonly above: number;
}

const tiny = 1e-300;
const precision = 1e-16;
const mostSteps = 10_000_000;

/** P(X <= n) and P(X > n) for X Poisson with the mean: the incomplete gamma function at n + 1 (DLMF 8.7.1, 8.9.2). */
export function poissonTails(n: number, mean: number): Tails {
  if (mean === 0) return { atMost: 1, above: 0 };
  const a = n + 1;
  if (mean < a) {
    const above = poissonTerm(a, mean) * lowerGammaSeries(a, mean);
    return { atMost: 1 - above, above };
  }
  const atMost = poissonTerm(a, mean) * a * upperGammaFraction(a, mean);
  return { atMost, above: 1 - atMost };
}

/** P(X <= n) and P(X > n) for X negative binomial: `shape` of the gamma, p = rate / (rate + exposure), q = 1 - p. */
export function negativeBinomialTails(n: number, shape: number, p: number, q: number): Tails {
  if (q === 0) return { atMost: 1, above: 0 };
  const [a, b] = [shape, n + 1];
  const term = (binomialTerm(a, b, p, q) * a * b) / (a + b);
  if (p < (a + 1) / (a + b + 2)) {
    const atMost = (term * betaFraction(a, b, p)) / a;
    return { atMost, above: 1 - atMost };
  }
  const above = (term * betaFraction(b, a, q)) / b;
  return { atMost: 1 - above, above };
}

/** 1 + x/(a+1) + x^2/((a+1)(a+2)) + ..., for x < a. */
function lowerGammaSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; k < mostSteps; k++) {
    term *= x / (a + k);
    sum += term;
    if (term < sum * precision) return sum;
  }
  throw new Error('invariant: the gamma series converges');
}

/** Gamma(a, x) x^-a e^x as a continued fraction (modified Lentz), for x >= a. */
function upperGammaFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let value = d;
  for (let k = 1; k < mostSteps; k++) {
    const numerator = -k * (k - a);
    b += 2;
    d = 1 / away(numerator * d + b);
    c = away(b + numerator / c);
    value *= d * c;
    if (Math.abs(d * c - 1) < precision * 4) return value;
  }
  throw new Error('invariant: the gamma fraction converges');
}

/** The continued fraction of the incomplete beta function (DLMF 8.17.22, modified Lentz). */
function betaFraction(a: number, b: number, x: number): number {
  invariant(x > 0 && x < 1, 'the argument of the beta function lies between 0 and 1');
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < mostSteps; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    value *= d * c;
    if (Math.abs(d * c - 1) < precision * 4) return value;
  }
  throw new Error('invariant: the beta fraction converges');
}

const away = (value: number): number => (Math.abs(value) < tiny ? tiny : value);
