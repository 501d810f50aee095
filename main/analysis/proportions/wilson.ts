import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, proportionError, twoSidedDeviate } from '../interval.ts';
import { type Computed, computed } from '../result.ts';
import { scoreLimits } from './score-limits.ts';

/**
 * Score interval for one proportion (Wilson 1927, JASA 22:209-212; method 3 of Newcombe 1998, Statistics in Medicine
 * 17:857-872). The tool's default.
 *
 * 0 of n has the lower limit exactly 0 and n of n the upper limit exactly 1. Errors: `no-data` for 0 of 0,
 * `invalid-input` for anything else that is no proportion of whole counts.
 */
export function wilsonInterval(count: number, total: number, level = DEFAULT_LEVEL): Computed<EstimateWithInterval> {
  const error = proportionError(count, total) ?? levelError(level);
  if (error) return error;
  const estimate = count / total;
  return computed({ estimate, ...scoreLimits(estimate, total, twoSidedDeviate(level)), level });
}

/**
 * Score interval with continuity correction (method 4 of Newcombe 1998), for comparison and for the corrected
 * difference. Never narrower than `wilsonInterval`; same edges and errors.
 */
export function wilsonContinuityInterval(
  count: number,
  total: number,
  level = DEFAULT_LEVEL,
): Computed<EstimateWithInterval> {
  const error = proportionError(count, total) ?? levelError(level);
  if (error) return error;
  const z = twoSidedDeviate(level);
  const estimate = count / total;
  const failures = total - count;
  const square = z * z;
  const denominator = 2 * (total + square);
  // Rounding can take a root's argument a hair below 0 when z is small.
  const lowerRoot = Math.sqrt(Math.max(0, square - 2 - 1 / total + 4 * estimate * (failures + 1)));
  const upperRoot = Math.sqrt(Math.max(0, square + 2 - 1 / total + 4 * estimate * (failures - 1)));
  return computed({
    estimate,
    lower: count === 0 ? 0 : Math.max(0, (2 * count + square - 1 - z * lowerRoot) / denominator),
    upper: count === total ? 1 : Math.min(1, (2 * count + square + 1 + z * upperRoot) / denominator),
    level,
  });
}
