import betainc from '@stdlib/math-base-special-betainc';
import betaincinv from '@stdlib/math-base-special-betaincinv';

/** P(X <= x) of a Beta(a, b) variable, a > 0, b > 0: the regularised incomplete beta function. */
export function betaCdf(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  return betainc(x, a, b);
}

/** P(X > x) of a Beta(a, b) variable, without the cancellation of 1 - cdf. */
export function betaUpperTail(x: number, a: number, b: number): number {
  if (x <= 0) return 1;
  if (x >= 1) return 0;
  return betainc(x, a, b, true, true);
}

/** x with P(X <= x) = probability for a Beta(a, b) variable, a > 0, b > 0, 0 <= probability <= 1. */
export function betaQuantile(probability: number, a: number, b: number): number {
  if (probability <= 0) return 0;
  if (probability >= 1) return 1;
  return betaincinv(probability, a, b);
}
