import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, proportionError, twoSidedDeviate } from '../interval.ts';
import { type Computed, computed } from '../result.ts';

/**
 * Adjusted Wald interval for one proportion (Agresti & Coull 1998, The American Statistician 52:119-126), with the
 * level's own z^2 / 2 added to both counts (not the rounded 2). Limits beyond 0 or 1 are cut off there. It always holds
 * Wilson's interval within it. `estimate` is the plain count / total. Errors: `no-data`, `invalid-input`.
 */
export function agrestiCoullInterval(
  count: number,
  total: number,
  level = DEFAULT_LEVEL,
): Computed<EstimateWithInterval> {
  const error = proportionError(count, total) ?? levelError(level);
  if (error) return error;
  const z = twoSidedDeviate(level);
  const adjustedTotal = total + z * z;
  const centre = (count + (z * z) / 2) / adjustedTotal;
  const half = z * Math.sqrt((centre * (1 - centre)) / adjustedTotal);
  return computed({
    estimate: count / total,
    lower: Math.max(0, centre - half),
    upper: Math.min(1, centre + half),
    level,
  });
}
