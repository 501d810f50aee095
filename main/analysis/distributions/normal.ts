import erfc from '@stdlib/math-base-special-erfc';
import erfcinv from '@stdlib/math-base-special-erfcinv';

/** P(Z <= z) of the standard normal distribution; keeps its relative accuracy in the lower tail. */
export function normalCdf(z: number): number {
  return 0.5 * erfc(-z / Math.SQRT2);
}

/** z with P(Z <= z) = probability; -Infinity at 0 and Infinity at 1. */
export function normalQuantile(probability: number): number {
  // Adding 0 turns the median's -0 into 0.
  return -Math.SQRT2 * erfcinv(2 * probability) + 0;
}

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}
