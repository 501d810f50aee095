import { sortedQuantile } from '../distributions/sample-quantile.ts';
import { DEFAULT_LEVEL, type Interval, levelError } from '../interval.ts';
import { type Computed, computed, failed } from '../result.ts';

/**
 * Percentile interval of bootstrap replicates (Efron & Tibshirani 1993, An Introduction to the Bootstrap, ch. 13):
 * their (1 - level) / 2 and (1 + level) / 2 quantiles of type 7. Error `no-data` without replicates, `invalid-input`
 * when one is not finite.
 */
export function percentileInterval(replicates: ArrayLike<number>, level = DEFAULT_LEVEL): Computed<Interval> {
  const error = levelError(level);
  if (error) return error;
  const sorted = Float64Array.from(replicates).sort();
  if (!sorted.every(Number.isFinite)) return failed('invalid-input', 'A bootstrap replicate is not a finite number.');
  const lower = sortedQuantile(sorted, (1 - level) / 2);
  const upper = sortedQuantile(sorted, (1 + level) / 2);
  if (lower === undefined || upper === undefined) return failed('no-data', 'There are no bootstrap replicates.');
  return computed({ lower, upper, level });
}
