import gammaln from '@stdlib/math-base-special-gammaln';

/** Natural logarithm of the gamma function, x > 0. */
export function logGamma(x: number): number {
  return gammaln(x);
}

/** Natural logarithm of the beta function, a > 0 and b > 0. */
export function logBeta(a: number, b: number): number {
  return gammaln(a) + gammaln(b) - gammaln(a + b);
}

/** Natural logarithm of the binomial coefficient "n over k", 0 <= k <= n. */
export function logChoose(n: number, k: number): number {
  return gammaln(n + 1) - gammaln(k + 1) - gammaln(n - k + 1);
}
