import { type Computed, computed } from '../result.ts';
import { type BinomialFit, binomialRegression } from './binomial-regression.ts';
import { clusterRobustCovariance } from './cluster-robust.ts';
import type { BinomialData } from './design.ts';
import { firthLogistic } from './firth.ts';

export type LogisticRegression = {
  readonly fit: BinomialFit;
  /** The fit's own covariance, or the cluster-robust one where clusters were given. */
  readonly covariance: readonly (readonly number[])[];
  /** Number of clusters; Student's t with one degree fewer is then the distribution to judge by. */
  readonly clusters?: number;
};

/**
 * Logistic regression as the reports use it: maximum likelihood, and Firth's penalised likelihood instead when the data
 * are separated or every trial ended alike (`fit.method` says which); with `clusters` the covariance is robust to rows
 * of one cluster hanging together. Errors: as `firthLogistic` and `clusterRobustCovariance`.
 */
export function logisticRegression(
  data: BinomialData,
  clusters?: ArrayLike<number | string>,
): Computed<LogisticRegression> {
  const plain = binomialRegression(data);
  const infinite = !plain.ok && (plain.error.kind === 'separation' || plain.error.kind === 'one-category');
  const fit = infinite ? firthLogistic(data) : plain;
  if (!fit.ok) return fit;
  if (!clusters) return computed({ fit: fit.value, covariance: fit.value.covariance });
  const robust = clusterRobustCovariance(fit.value, data.predictors, clusters);
  if (!robust.ok) return robust;
  return computed({ fit: fit.value, covariance: robust.value.covariance, clusters: robust.value.clusters });
}
