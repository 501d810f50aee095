import type { EstimateWithInterval } from '../interval.ts';
import type { BinomialFit } from '../regression/binomial-regression.ts';
import { clusterRobustCovariance } from '../regression/cluster-robust.ts';
import { logisticRegression } from '../regression/logistic-regression.ts';
import { type Computed, computed, failed } from '../result.ts';
import { type LogisticLine, logistic, probabilityAt, probabilityDifference, waldOf } from './on-probability-scale.ts';
import { type FittedPoint, fittedCurve } from './rate-trend.ts';

/**
 * Rows of counts out of totals (above 0) at places `x` of a scale, each of one cluster; `beside`: a second predictor to hold.
 */
export type DependenceRows = {
  readonly x: ArrayLike<number>;
  readonly counts: ArrayLike<number>;
  readonly totals: ArrayLike<number>;
  readonly clusters: ArrayLike<number>;
  readonly beside?: ArrayLike<number>;
};

export type Dependence = {
  readonly method: BinomialFit['method'];
  readonly clusters: number;
  readonly from: EstimateWithInterval;
  readonly to: EstimateWithInterval;
  readonly difference: EstimateWithInterval;
  /** Odds at `toX` over those at `fromX`, with its 95 % interval, and the bounds of the 90 % one. */
  readonly oddsRatio: EstimateWithInterval;
  readonly oddsRatio90: { readonly lower: number; readonly upper: number };
  /** Slope over its standard error. */
  readonly statistic: number;
  readonly pValue: number;
  readonly curve: readonly FittedPoint[];
};

/** A covariance from fewer clusters is too small to trust, Student's t or not. */
const FEWEST_CLUSTERS = 5;
const CURVE_PLACES = 41;

/**
 * How a rate goes with a scale: logistic regression, covariance robust to the rows of one cluster hanging together (Liang &
 * Zeger 1986), Student's t with clusters - 1 degrees. A second predictor is held at its mean. Rows at one place are
 * pooled for the fit, which leaves the estimate as it is and makes a million attempts cheap.
 * Errors: `no-data`, `too-few-data` below five clusters, `no-variation`, `one-category`, those of `logisticRegression`.
 */
export function clusteredDependence(
  rows: DependenceRows,
  range: { readonly fromX: number; readonly toX: number; readonly curveFrom: number; readonly curveTo: number },
): Computed<Dependence> {
  const pooled = rows.beside === undefined ? pool(rows) : rows;
  const checked = check(pooled);
  if (checked) return checked;
  const columns = (of: DependenceRows) => (of.beside === undefined ? [of.x] : [of.x, of.beside]);
  const regression = logisticRegression({
    successes: pooled.counts,
    trials: pooled.totals,
    predictors: columns(pooled),
  });
  if (!regression.ok) return regression;
  const { fit } = regression.value;
  const scored = { ...fit, scores: scoresOf(rows, fit.coefficients) };
  const robust = clusterRobustCovariance(scored, columns(rows), rows.clusters);
  if (!robust.ok) return robust;
  const { covariance, clusters } = robust.value;
  if (clusters < FEWEST_CLUSTERS) return failed('too-few-data', 'The spread between clusters needs at least five.');
  const line: LogisticLine = { coefficients: fit.coefficients, covariance, dispersion: 1, degrees: clusters - 1 };
  const held = rows.beside === undefined ? [] : [meanOf(rows.beside, rows.totals)];
  const at = (x: number) => [1, x, ...held];
  const { fromX, toX } = range;
  const slopeAlone = [0, toX - fromX, ...held.map(() => 0)];
  const slope = waldOf(line, slopeAlone);
  const wide = waldOf(line, slopeAlone, 0.9);
  const from = probabilityAt(line, at(fromX));
  const to = probabilityAt(line, at(toX));
  if (!slope.ok) return slope;
  if (!wide.ok || from === null || to === null) return failed('no-convergence', 'The fitted line has no band.');
  const odds = slope.value;
  if (![odds.lower, odds.upper].map(Math.exp).every(Number.isFinite)) {
    return failed('out-of-reach', 'The data bound the odds ratio on neither side.');
  }
  return computed({
    method: fit.method,
    clusters,
    from,
    to,
    difference: probabilityDifference(line, at(fromX), at(toX)),
    oddsRatio: {
      estimate: Math.exp(odds.estimate),
      lower: Math.exp(odds.lower),
      upper: Math.exp(odds.upper),
      level: odds.level,
    },
    oddsRatio90: { lower: Math.exp(wide.value.lower), upper: Math.exp(wide.value.upper) },
    statistic: odds.statistic,
    pValue: odds.pValue,
    curve: fittedCurve(line, at, { from: range.curveFrom, to: range.curveTo, places: CURVE_PLACES }),
  });
}

function check({ x, counts, totals }: DependenceRows): Computed<never> | undefined {
  let count = 0;
  let total = 0;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < totals.length; i += 1) {
    const size = totals[i] ?? 0;
    if (size === 0) continue;
    count += counts[i] ?? 0;
    total += size;
    least = Math.min(least, x[i] ?? 0);
    most = Math.max(most, x[i] ?? 0);
  }
  if (total === 0) return failed('no-data', 'There are no trials.');
  if (count === 0 || count === total) return failed('one-category', 'Every trial ended alike.');
  return least === most ? failed('no-variation', 'All trials lie at one place of the scale.') : undefined;
}

/** Rows at the same place together: the likelihood depends on nothing else. */
function pool({ x, counts, totals, clusters }: DependenceRows): DependenceRows {
  const places = new Map<number, { count: number; total: number }>();
  for (let i = 0; i < totals.length; i += 1) {
    const at = x[i] ?? 0;
    let place = places.get(at);
    if (place === undefined) {
      place = { count: 0, total: 0 };
      places.set(at, place);
    }
    place.count += counts[i] ?? 0;
    place.total += totals[i] ?? 0;
  }
  const sums = [...places.values()];
  return { x: [...places.keys()], counts: sums.map((s) => s.count), totals: sums.map((s) => s.total), clusters };
}

function scoresOf({ x, counts, totals, beside }: DependenceRows, coefficients: readonly number[]): Float64Array {
  const [constant = 0, slope = 0, other = 0] = coefficients;
  const scores = new Float64Array(totals.length);
  for (let i = 0; i < scores.length; i += 1) {
    const predictor = constant + slope * (x[i] ?? 0) + other * (beside?.[i] ?? 0);
    scores[i] = (counts[i] ?? 0) - (totals[i] ?? 0) * logistic(predictor);
  }
  return scores;
}

function meanOf(values: ArrayLike<number>, weights: ArrayLike<number>): number {
  let sum = 0;
  let all = 0;
  for (let i = 0; i < values.length; i += 1) {
    sum += (values[i] ?? 0) * (weights[i] ?? 0);
    all += weights[i] ?? 0;
  }
  return sum / all;
}
