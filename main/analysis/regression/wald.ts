import { normalCdf } from '../distributions/normal.ts';
import { studentTQuantile, studentTTwoSidedTail } from '../distributions/student-t.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, twoSidedDeviate } from '../interval.ts';
import { type Computed, computed, failed } from '../result.ts';

export type WaldResult = EstimateWithInterval & {
  readonly standardError: number;
  /** Estimate over standard error. */
  readonly statistic: number;
  /** Two-sided, for the hypothesis that the estimate's true value is 0. */
  readonly pValue: number;
};

export type WaldOptions = {
  readonly level?: number;
  /** Factor on the covariance: a quasi-binomial fit's dispersion (Wedderburn 1974, Biometrika 61:439-447). */
  readonly dispersion?: number;
  /** Student's t with these degrees of freedom instead of the normal distribution. */
  readonly degrees?: number;
};

/**
 * Estimate, Wald interval and test for a weighted sum of coefficients: `weights` [0, 1] for the second coefficient alone,
 * [1, x] for the linear predictor of a line at x. Errors: `no-variation` when the variance is not positive,
 * `invalid-input`.
 */
export function waldTest(
  fit: { readonly coefficients: readonly number[]; readonly covariance: readonly (readonly number[])[] },
  weights: readonly number[],
  { level = DEFAULT_LEVEL, dispersion = 1, degrees }: WaldOptions = {},
): Computed<WaldResult> {
  const error = levelError(level);
  if (error) return error;
  if (weights.length !== fit.coefficients.length || (degrees !== undefined && !(degrees > 0))) {
    return failed('invalid-input', 'There must be one weight a coefficient, and degrees of freedom above 0.');
  }
  let estimate = 0;
  let variance = 0;
  for (const [a, weight] of weights.entries()) {
    estimate += weight * (fit.coefficients[a] ?? 0);
    for (const [b, other] of weights.entries()) variance += weight * other * (fit.covariance[a]?.[b] ?? 0) * dispersion;
  }
  if (!(variance > 0)) return failed('no-variation', 'The estimate has no spread to judge it by.');
  const standardError = Math.sqrt(variance);
  const statistic = estimate / standardError;
  const half = standardError * (degrees ? studentTQuantile((1 + level) / 2, degrees) : twoSidedDeviate(level));
  const pValue = degrees ? studentTTwoSidedTail(statistic, degrees) : 2 * normalCdf(-Math.abs(statistic));
  return computed({
    estimate,
    standardError,
    lower: estimate - half,
    upper: estimate + half,
    level,
    statistic,
    pValue,
  });
}
