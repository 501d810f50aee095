import { DEFAULT_LEVEL, type EstimateWithInterval, twoSidedDeviate } from '../interval.ts';
import { type Computed, computed } from '../result.ts';
import { differenceError, type Proportion } from './difference.ts';

/**
 * Adjusted Wald interval for the difference `first - second` of two independent proportions, one success and one failure
 * added to each (Agresti & Caffo 2000, The American Statistician 54:280-288). `estimate` is the plain difference; limits
 * beyond -1 or 1 are cut off. Errors: `no-data` when a total is 0, `invalid-input`.
 */
export function agrestiCaffoDifference(
  first: Proportion,
  second: Proportion,
  level = DEFAULT_LEVEL,
): Computed<EstimateWithInterval> {
  const error = differenceError(first, second, level);
  if (error) return error;
  const z = twoSidedDeviate(level);
  const a = (first.count + 1) / (first.total + 2);
  const b = (second.count + 1) / (second.total + 2);
  const half = z * Math.sqrt((a * (1 - a)) / (first.total + 2) + (b * (1 - b)) / (second.total + 2));
  return computed({
    estimate: first.count / first.total - second.count / second.total,
    lower: Math.max(-1, a - b - half),
    upper: Math.min(1, a - b + half),
    level,
  });
}
