/**
 * Probability terms without loss of digits at large arguments (Loader, "Fast and accurate computation of binomial
 * probabilities", 2000): the deviance and the error of Stirling's formula are taken apart, so nothing large cancels.
 */

const halfLogTwoPi = 0.9189385332046727;

/** Natural logarithm of the gamma function for x >= 1 (Lanczos, g = 7, nine terms; about 15 digits). */
function logGamma(x: number): number {
  const terms = [
    676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905, -0.13857109526572012,
    9.9843695780195716e-6, 1.5056327351493116e-7,
  ];
  const z = x - 1;
  const sum = terms.reduce((total, term, index) => total + term / (z + index + 1), 0.99999999999980993);
  const t = z + 7.5;
  return halfLogTwoPi + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** ln(n!) minus Stirling's formula, for real n > 0. */
function stirlingError(n: number): number {
  if (n <= 15) return logGamma(n + 1) - (n + 0.5) * Math.log(n) + n - halfLogTwoPi;
  const square = n * n;
  return (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - 1 / 1188 / square) / square) / square) / square) / n;
}

/** x ln(x / m) + m - x, exact also where x is close to m. */
function deviance(x: number, m: number): number {
  if (Math.abs(x - m) >= 0.1 * (x + m)) return x * Math.log(x / m) + m - x;
  const v = (x - m) / (x + m);
  let sum = (x - m) * v;
  let term = 2 * x * v;
  for (let k = 1; k < 1000; k++) {
    term *= v * v;
    const next = sum + term / (2 * k + 1);
    if (next === sum) break;
    sum = next;
  }
  return sum;
}

/** m^x e^-m / Gamma(x + 1) for real x >= 0 and m > 0. */
export function poissonTerm(x: number, m: number): number {
  if (x === 0) return Math.exp(-m);
  return Math.exp(-stirlingError(x) - deviance(x, m)) / Math.sqrt(2 * Math.PI * x);
}

/** Gamma(a + b + 1) / (Gamma(a + 1) Gamma(b + 1)) p^a q^b for real a, b > 0 and p + q = 1. */
export function binomialTerm(a: number, b: number, p: number, q: number): number {
  const n = a + b;
  const exponent = stirlingError(n) - stirlingError(a) - stirlingError(b) - deviance(a, n * p) - deviance(b, n * q);
  return Math.exp(exponent) * Math.sqrt(n / (2 * Math.PI * a * b));
}
