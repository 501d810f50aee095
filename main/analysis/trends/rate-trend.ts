import type { EstimateWithInterval } from '../interval.ts';
import type { BinomialFit } from '../regression/binomial-regression.ts';
import { logisticRegression } from '../regression/logistic-regression.ts';
import { type Computed, computed, failed } from '../result.ts';
import { cochranArmitage } from '../tests/cochran-armitage.ts';
import { type LogisticLine, probabilityAt, probabilityDifference, waldOf } from './on-probability-scale.ts';

export type FittedPoint = { readonly x: number; readonly value: number; readonly low: number; readonly high: number };

export type RateTrend = {
  readonly method: BinomialFit['method'];
  readonly first: number;
  readonly last: number;
  /** Fitted rates at the first place and at the last, and their difference. */
  readonly from: EstimateWithInterval;
  readonly to: EstimateWithInterval;
  readonly difference: EstimateWithInterval;
  /** Pearson's chi-square over its degrees of freedom, not below 1. */
  readonly dispersion: number;
  /** Slope over its standard error, and the two-sided tail of Student's t. */
  readonly statistic: number;
  readonly pValue: number;
  /** Of the Cochran-Armitage test, which takes the trials as independent; null where it has no answer. */
  readonly checkPValue: number | null;
  readonly curve: readonly FittedPoint[];
};

/** Below this many groups the spread between them has no degree of freedom worth the name. */
const FEWEST_GROUPS = 3;
const CURVE_PLACES = 61;

/**
 * Trend of a rate over time: logistic regression on the place in time, quasi-binomial (Wedderburn 1974, Biometrika
 * 61:439-447) with a dispersion never below 1, judged by Student's t with groups - 2 degrees.
 *
 * @param counts, totals one a group (a set); @param at the groups' times, any unit
 * Errors: `no-data`, `too-few-data` below three groups with trials, `no-variation` where they share one time,
 * `one-category` where every trial ended alike, and those of `logisticRegression`.
 */
export function rateTrend(
  counts: ArrayLike<number>,
  totals: ArrayLike<number>,
  at: ArrayLike<number>,
): Computed<RateTrend> {
  const used = Array.from(totals, (_, i) => i).filter((i) => (totals[i] ?? 0) > 0);
  if (used.length === 0) return failed('no-data', 'There are no trials.');
  if (used.length < FEWEST_GROUPS) return failed('too-few-data', 'A trend needs at least three groups.');
  const pick = (column: ArrayLike<number>) => used.map((i) => column[i] ?? 0);
  const [count, total, time] = [pick(counts), pick(totals), pick(at)];
  const all = total.reduce((sum, value) => sum + value, 0);
  const hits = count.reduce((sum, value) => sum + value, 0);
  if (hits === 0 || hits === all) return failed('one-category', 'Every trial ended alike, so no trend can be told.');
  // Loops, not spread arguments: twenty thousand groups are more than a call takes.
  const first = time.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
  const last = time.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  if (first === last) return failed('no-variation', 'All groups lie at the same time.');
  const share = (x: number) => (x - first) / (last - first);
  const regression = logisticRegression({ successes: count, trials: total, predictors: [time.map(share)] });
  if (!regression.ok) return regression;
  const { fit } = regression.value;
  const line: LogisticLine = {
    coefficients: fit.coefficients,
    covariance: fit.covariance,
    dispersion: Math.max(1, fit.dispersion),
    degrees: used.length - 2,
  };
  const slope = waldOf(line, [0, 1]);
  if (!slope.ok) return slope;
  const from = probabilityAt(line, [1, 0]);
  const to = probabilityAt(line, [1, 1]);
  if (from === null || to === null) return failed('no-convergence', 'The fitted line has no band.');
  const check = cochranArmitage(count, total, time.map(share));
  return computed({
    method: fit.method,
    first,
    last,
    from,
    to,
    difference: probabilityDifference(line, [1, 0], [1, 1]),
    dispersion: line.dispersion,
    statistic: slope.value.statistic,
    pValue: slope.value.pValue,
    checkPValue: check.ok ? check.value.pValue : null,
    curve: fittedCurve(line, (place) => [1, place], { from: 0, to: 1, places: CURVE_PLACES }).map((point) => ({
      ...point,
      x: first + point.x * (last - first),
    })),
  });
}

/** The line with its pointwise band at evenly spread places; `at` gives the predictors there, the constant first. */
export function fittedCurve(
  line: LogisticLine,
  at: (x: number) => readonly number[],
  { from, to, places }: { readonly from: number; readonly to: number; readonly places: number },
): FittedPoint[] {
  return Array.from({ length: places }, (_, i) => from + ((to - from) * i) / (places - 1)).flatMap((x) => {
    const rate = probabilityAt(line, at(x));
    return rate === null ? [] : [{ x, value: rate.estimate, low: rate.lower, high: rate.upper }];
  });
}
