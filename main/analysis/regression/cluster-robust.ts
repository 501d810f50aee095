import { sandwich } from '../numeric/positive-definite.ts';
import { type Computed, computed, failed } from '../result.ts';
import type { BinomialFit } from './binomial-regression.ts';

export type ClusterRobust = {
  readonly covariance: readonly (readonly number[])[];
  readonly clusters: number;
};

export type ClusterRobustOptions = {
  /** Times G / (G - 1) for G clusters; false gives the plain estimator of 1986. */
  readonly smallSample?: boolean;
};

/**
 * Covariance of a fit's coefficients that stays right when the rows of one cluster (the attempts of one set) hang
 * together (Liang & Zeger 1986, Biometrika 73:13-22, working independence): inverse information times the summed outer
 * products of the clusters' scores times inverse information.
 *
 * @param predictors the columns the fit was made with
 * @param clusters the cluster of each row
 * @returns the covariance and the number of clusters with data; with few of them (below about 40) use Student's t with
 * clusters - 1 degrees of freedom. Errors: `too-few-data` when there are not more clusters than coefficients,
 * `invalid-input`.
 */
export function clusterRobustCovariance(
  fit: BinomialFit,
  predictors: readonly ArrayLike<number>[],
  clusters: ArrayLike<number | string>,
  { smallSample = true }: ClusterRobustOptions = {},
): Computed<ClusterRobust> {
  const size = fit.coefficients.length;
  const intercept = size === predictors.length + 1;
  if ((!intercept && size !== predictors.length) || clusters.length !== fit.scores.length) {
    return failed('invalid-input', 'The columns and clusters are not those of the fit.');
  }
  const sums = new Map<number | string, Float64Array>();
  const shift = intercept ? 1 : 0;
  let current: number | string | undefined;
  let sum: Float64Array = new Float64Array(size);
  for (let i = 0; i < fit.scores.length; i += 1) {
    const cluster = clusters[i] ?? '';
    // Rows of one cluster mostly stand together, so that few of a million rows need looking up.
    if (cluster !== current) {
      current = cluster;
      sum = sums.get(cluster) ?? new Float64Array(size);
      sums.set(cluster, sum);
    }
    const score = fit.scores[i] ?? 0;
    if (intercept) sum[0] = (sum[0] ?? 0) + score;
    for (let j = 0; j < predictors.length; j += 1) {
      sum[j + shift] = (sum[j + shift] ?? 0) + score * (predictors[j]?.[i] ?? 0);
    }
  }
  const count = sums.size;
  if (count <= size) return failed('too-few-data', 'There must be more clusters than coefficients.');
  const middle = fit.coefficients.map(() => new Array<number>(size).fill(0));
  for (const sum of sums.values()) {
    for (let a = 0; a < size; a += 1) {
      const row = middle[a];
      for (let b = 0; row !== undefined && b < size; b += 1) row[b] = (row[b] ?? 0) + (sum[a] ?? 0) * (sum[b] ?? 0);
    }
  }
  const factor = smallSample ? count / (count - 1) : 1;
  const covariance = sandwich(fit.covariance, middle).map((row) => row.map((value) => value * factor));
  return computed({ covariance, clusters: count });
}
