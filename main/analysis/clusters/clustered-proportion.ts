import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, twoSidedDeviate } from '../interval.ts';
import { sampleSizeTwoProportions } from '../power/two-proportions.ts';
import { scoreLimits } from '../proportions/score-limits.ts';
import { type Computed, computed, failed } from '../result.ts';

/** Counts out of totals, one of each a cluster (a set); clusters of nothing do not count. */
export type ClusteredCounts = { readonly counts: ArrayLike<number>; readonly totals: ArrayLike<number> };

export type ClusteredProportion = EstimateWithInterval & {
  readonly total: number;
  readonly clusters: number;
  /** Variance between clusters over the binomial one; at least 1, and 1 where it cannot be told. */
  readonly designEffect: number;
};

/**
 * A proportion over clusters: Wilson's interval with the sample divided by its design effect, found from the variance of the
 * clusters' ratio (Rao & Scott 1992, Biometrics 48:577-585). Never narrower than the interval of independent trials.
 * Errors: `no-data`, `invalid-input`.
 */
export function clusteredProportion(
  { counts, totals }: ClusteredCounts,
  level = DEFAULT_LEVEL,
): Computed<ClusteredProportion> {
  const error = levelError(level);
  if (error) return error;
  let count = 0;
  let total = 0;
  let clusters = 0;
  for (let i = 0; i < counts.length; i += 1) {
    const one = counts[i] ?? Number.NaN;
    const all = totals[i] ?? Number.NaN;
    if (!(one >= 0 && one <= all && Number.isFinite(all))) {
      return failed('invalid-input', `Cluster ${i + 1} holds ${one} of ${all}.`);
    }
    count += one;
    total += all;
    if (all > 0) clusters += 1;
  }
  if (total === 0) return failed('no-data', 'There is nothing to take a proportion of.');
  const estimate = count / total;
  const designEffect = effectOfDesign({ counts, totals }, estimate, total, clusters);
  const limits = scoreLimits(estimate, total / designEffect, twoSidedDeviate(level));
  return computed({ estimate, ...limits, level, total, clusters, designEffect });
}

function effectOfDesign({ counts, totals }: ClusteredCounts, rate: number, total: number, clusters: number): number {
  if (clusters < 2 || rate === 0 || rate === 1) return 1;
  let squares = 0;
  for (let i = 0; i < counts.length; i += 1) squares += ((counts[i] ?? 0) - rate * (totals[i] ?? 0)) ** 2;
  const variance = ((clusters / (clusters - 1)) * squares) / (total * total);
  return Math.max(1, (variance * total) / (rate * (1 - rate)));
}

/**
 * Difference `first - second` of two proportions over clusters: Newcombe's hybrid score interval (1998, Statistics in
 * Medicine 17:873-890, method 10) from the limits of `clusteredProportion`.
 */
export function clusteredDifference(first: ClusteredProportion, second: ClusteredProportion): EstimateWithInterval {
  const estimate = first.estimate - second.estimate;
  const below = Math.hypot(first.estimate - first.lower, second.upper - second.estimate);
  const above = Math.hypot(first.upper - first.estimate, second.estimate - second.lower);
  return {
    estimate,
    lower: Math.max(-1, estimate - below),
    upper: Math.min(1, estimate + above),
    level: first.level,
  };
}

/**
 * Trials to add to the second group before rates like those seen could be told apart (power 80 %, two-sided 5 %), as
 * `repsStillNeeded` with both groups divided by their design effects. Errors: `no-variation` where the rates are equal,
 * `out-of-reach` where no number, or none below a million, would do.
 */
export function clusteredStillNeeded(first: ClusteredProportion, second: ClusteredProportion): Computed<number> {
  const each = sampleSizeTwoProportions(first.estimate, second.estimate);
  if (!each.ok) return each;
  const room = 2 / each.value - first.designEffect / first.total;
  if (room <= 0) return failed('out-of-reach', 'The first group is too small for any number in the second.');
  const needed = Math.ceil(second.designEffect / room - second.total - 1e-9);
  if (needed > 1_000_000) return failed('out-of-reach', 'More than a million trials would be needed.');
  return computed(Math.max(0, needed));
}
