import gammainc from '@stdlib/math-base-special-gammainc';
import gammaincinv from '@stdlib/math-base-special-gammaincinv';

/** P(X > x) of a chi-square variable with `degrees` degrees of freedom: a test's p-value. */
export function chiSquareUpperTail(x: number, degrees: number): number {
  return x <= 0 ? 1 : gammainc(x / 2, degrees / 2, true, true);
}

/** x with P(X <= x) = probability, 0 <= probability < 1. */
export function chiSquareQuantile(probability: number, degrees: number): number {
  return 2 * gammaincinv(probability, degrees / 2);
}
