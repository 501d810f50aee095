import { DEFAULT_LEVEL, type EstimateWithInterval } from '../interval.ts';
import { type Computed, computed } from '../result.ts';
import { differenceError, type Proportion } from './difference.ts';
import { wilsonContinuityInterval, wilsonInterval } from './wilson.ts';

export type NewcombeOptions = {
  readonly level?: number;
  /** Method 11 (Wilson limits with continuity correction) instead of method 10. */
  readonly continuity?: boolean;
};

/**
 * Hybrid score interval for the difference `first - second` of two independent proportions (Newcombe 1998, Statistics in
 * Medicine 17:873-890, methods 10 and 11): squares and adds the distances from each estimate to its own Wilson limits.
 * Stays within -1 to 1. Errors: `no-data` when a total is 0, `invalid-input`.
 */
export function newcombeDifference(
  first: Proportion,
  second: Proportion,
  { level = DEFAULT_LEVEL, continuity = false }: NewcombeOptions = {},
): Computed<EstimateWithInterval> {
  const error = differenceError(first, second, level);
  if (error) return error;
  const limits = continuity ? wilsonContinuityInterval : wilsonInterval;
  const a = limits(first.count, first.total, level);
  if (!a.ok) return a;
  const b = limits(second.count, second.total, level);
  if (!b.ok) return b;
  const estimate = a.value.estimate - b.value.estimate;
  const below = Math.hypot(a.value.estimate - a.value.lower, b.value.upper - b.value.estimate);
  const above = Math.hypot(a.value.upper - a.value.estimate, b.value.estimate - b.value.lower);
  return computed({ estimate, lower: Math.max(-1, estimate - below), upper: Math.min(1, estimate + above), level });
}
