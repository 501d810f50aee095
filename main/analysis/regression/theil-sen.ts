import { sampleMedian, sortedQuantile } from '../distributions/sample-quantile.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, twoSidedDeviate } from '../interval.ts';
import { type Computed, computed, failed } from '../result.ts';
import { kendallVariance } from '../tests/kendall-distribution.ts';

export type TheilSen = {
  /** In units of y per unit of x; the limits are infinite when there are too few pairs for the level. */
  readonly slope: EstimateWithInterval;
  /** Median of y - slope * x. */
  readonly intercept: number;
};

const LONGEST = 5_000;

/**
 * Theil-Sen line: the median of the slopes between all pairs with different x (Theil 1950; Sen 1968, JASA
 * 63:1379-1389), with Sen's interval from the normal approximation to Kendall's S, variance for ties, ranks rounded
 * outwards (Gilbert 1987, Statistical Methods for Environmental Pollution Monitoring, 16.4.2).
 * Errors: `too-few-data` below 2 points, `no-variation` when all x are equal, `out-of-reach` above 5,000 points (the
 * pairs grow with the square), `invalid-input`.
 */
export function theilSen(x: ArrayLike<number>, y: ArrayLike<number>, level = DEFAULT_LEVEL): Computed<TheilSen> {
  const error = levelError(level);
  if (error) return error;
  const n = x.length;
  if (y.length !== n || ![...Array.from(x), ...Array.from(y)].every(Number.isFinite)) {
    return failed('invalid-input', 'There must be one finite y for each finite x.');
  }
  if (n < 2) return failed('too-few-data', 'A line needs at least two points.');
  if (n > LONGEST) return failed('out-of-reach', 'Too many points to pair each with each.');
  const slopes: number[] = [];
  for (let i = 0; i < n; i += 1) {
    for (let j = i + 1; j < n; j += 1) {
      const run = (x[j] ?? 0) - (x[i] ?? 0);
      if (run !== 0) slopes.push(((y[j] ?? 0) - (y[i] ?? 0)) / run);
    }
  }
  const sorted = Float64Array.from(slopes).sort();
  const estimate = sortedQuantile(sorted, 0.5);
  if (estimate === undefined) return failed('no-variation', 'All points have the same x.');
  const halfWidth = twoSidedDeviate(level) * Math.sqrt(kendallVariance(y, x).variance);
  // Rank of the lower limit, counted from 1; the upper one is as far from the other end.
  const rank = Math.floor((sorted.length - halfWidth) / 2);
  const lower = sorted[rank - 1] ?? Number.NEGATIVE_INFINITY;
  const upper = sorted[sorted.length - rank] ?? Number.POSITIVE_INFINITY;
  const intercept = sampleMedian(Array.from(x, (at, i) => (y[i] ?? 0) - estimate * at)) ?? 0;
  return computed({ slope: { estimate, lower, upper, level }, intercept });
}
