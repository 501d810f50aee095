import { studentTQuantile } from '../distributions/student-t.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval } from '../interval.ts';
import { type WaldResult, waldTest } from '../regression/wald.ts';
import type { Computed } from '../result.ts';

/** A fitted logistic line: what `waldTest` asks for, with the factor on its covariance and Student's degrees of freedom. */
export type LogisticLine = {
  readonly coefficients: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly dispersion: number;
  readonly degrees: number;
};

export function waldOf(line: LogisticLine, weights: readonly number[], level = DEFAULT_LEVEL): Computed<WaldResult> {
  return waldTest(line, weights, { level, dispersion: line.dispersion, degrees: line.degrees });
}

/** The line's probability where the predictors (constant first) are `at`, its limits those of the linear predictor. */
export function probabilityAt(line: LogisticLine, at: readonly number[]): EstimateWithInterval | null {
  const wald = waldOf(line, at);
  if (!wald.ok) return null;
  const { estimate, lower, upper, level } = wald.value;
  return { estimate: logistic(estimate), lower: logistic(lower), upper: logistic(upper), level };
}

/**
 * Probability at `to` less that at `from`, its variance by the delta method (Agresti 2013, Categorical Data Analysis, 16.1),
 * within -1 to 1.
 */
export function probabilityDifference(
  line: LogisticLine,
  from: readonly number[],
  to: readonly number[],
  level = DEFAULT_LEVEL,
): EstimateWithInterval {
  const predictor = (at: readonly number[]) =>
    at.reduce((sum, value, j) => sum + value * (line.coefficients[j] ?? 0), 0);
  const first = logistic(predictor(from));
  const last = logistic(predictor(to));
  const gradient = to.map((value, j) => last * (1 - last) * value - first * (1 - first) * (from[j] ?? 0));
  let variance = 0;
  for (const [a, one] of gradient.entries()) {
    for (const [b, other] of gradient.entries()) variance += one * other * (line.covariance[a]?.[b] ?? 0);
  }
  const half = studentTQuantile((1 + level) / 2, line.degrees) * Math.sqrt(Math.max(0, variance * line.dispersion));
  const estimate = last - first;
  return { estimate, lower: Math.max(-1, estimate - half), upper: Math.min(1, estimate + half), level };
}

export function logistic(value: number): number {
  return 1 / (1 + Math.exp(-value));
}
