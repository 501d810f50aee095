import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, proportionError } from '../interval.ts';
import { type Computed, computed } from '../result.ts';
import { wilsonInterval } from './wilson.ts';

/** Pairs by the verdict of the first and of the second of each: for two judges, both / first only / second only / neither. */
export type PairedCounts = {
  readonly both: number;
  readonly firstOnly: number;
  readonly secondOnly: number;
  readonly neither: number;
};

export type PairedDifferenceOptions = {
  readonly level?: number;
  /** Method 8 (correlation as observed) instead of method 10 (correlation with continuity correction). */
  readonly plainCorrelation?: boolean;
};

/**
 * Score interval for the difference of two paired proportions, (both + firstOnly) / n - (both + secondOnly) / n
 * (Newcombe 1998, Statistics in Medicine 17:2635-2650, methods 8 and 10): Wilson limits of the two margins joined with
 * their correlation. An empty margin has no correlation and counts as 0. Errors: `no-data` for no pairs,
 * `invalid-input`.
 */
export function pairedDifference(
  pairs: PairedCounts,
  { level = DEFAULT_LEVEL, plainCorrelation = false }: PairedDifferenceOptions = {},
): Computed<EstimateWithInterval> {
  const { both, firstOnly, secondOnly, neither } = pairs;
  const n = both + firstOnly + secondOnly + neither;
  for (const count of [both, firstOnly, secondOnly, neither]) {
    const error = proportionError(count, n);
    if (error) return error;
  }
  const error = levelError(level);
  if (error) return error;
  const first = wilsonInterval(both + firstOnly, n, level);
  const second = wilsonInterval(both + secondOnly, n, level);
  if (!first.ok) return first;
  if (!second.ok) return second;
  const estimate = (firstOnly - secondOnly) / n;
  const correlation = phi(pairs, n, plainCorrelation);
  const below1 = first.value.estimate - first.value.lower;
  const above1 = first.value.upper - first.value.estimate;
  const below2 = second.value.estimate - second.value.lower;
  const above2 = second.value.upper - second.value.estimate;
  const below = joined(below1, above2, correlation);
  const above = joined(above1, below2, correlation);
  return computed({ estimate, lower: Math.max(-1, estimate - below), upper: Math.min(1, estimate + above), level });
}

function joined(one: number, other: number, correlation: number): number {
  return Math.sqrt(Math.max(0, one * one - 2 * correlation * one * other + other * other));
}

/** Correlation of the pairs; the correction takes n/2 off a positive numerator, not below 0. */
function phi({ both, firstOnly, secondOnly, neither }: PairedCounts, n: number, plain: boolean): number {
  const margins = (both + firstOnly) * (secondOnly + neither) * (both + secondOnly) * (firstOnly + neither);
  if (margins === 0) return 0;
  const product = both * neither - firstOnly * secondOnly;
  const numerator = plain || product < 0 ? product : Math.max(0, product - n / 2);
  return numerator / Math.sqrt(margins);
}
