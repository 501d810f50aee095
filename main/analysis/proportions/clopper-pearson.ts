import { betaQuantile } from '../distributions/beta.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, proportionError } from '../interval.ts';
import { type Computed, computed } from '../result.ts';

/**
 * Exact interval for one proportion (Clopper & Pearson 1934, Biometrika 26:404-413), by beta quantiles: never covers
 * less than the level, so it is wide. 0 of n begins at 0 and n of n ends at 1. Errors: `no-data`, `invalid-input`.
 */
export function clopperPearsonInterval(
  count: number,
  total: number,
  level = DEFAULT_LEVEL,
): Computed<EstimateWithInterval> {
  const error = proportionError(count, total) ?? levelError(level);
  if (error) return error;
  const tail = (1 - level) / 2;
  return computed({
    estimate: count / total,
    lower: count === 0 ? 0 : betaQuantile(tail, count, total - count + 1),
    upper: count === total ? 1 : betaQuantile(1 - tail, count + 1, total - count),
    level,
  });
}
