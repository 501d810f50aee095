import { DEFAULT_LEVEL, type EstimateWithInterval, type Interval, levelError, twoSidedDeviate } from '../interval.ts';
import { binomialRegression } from '../regression/binomial-regression.ts';
import { type Link, logit, probit, withGuessAndLapse } from '../regression/links.ts';
import { waldTest } from '../regression/wald.ts';
import { type Computed, computed, failed } from '../result.ts';
import { bestOnGrid, bestStep, type PsychometricData } from './psychometric-step.ts';

export type PsychometricOptions = {
  readonly level?: number;
  readonly shape?: 'normal' | 'logistic';
  /** Rate of successes by luck alone, and of slips whatever the margin; both fixed, 0 unless given. */
  readonly guess?: number;
  readonly lapse?: number;
};

export type PsychometricFunction =
  | {
      readonly kind: 'curve';
      /** Margin at which half the true answers turn: the judge's strictness, in the unit of the margins. */
      readonly centre: number;
      /** Fieller's interval; undefined when the slope cannot be told from 0, for then any centre would do. */
      readonly centreInterval: Interval | undefined;
      /** Change of the shape's argument per unit of margin: the judge's precision (1 / sd for the normal shape). */
      readonly slope: EstimateWithInterval;
      readonly deviance: number;
      readonly degrees: number;
    }
  | {
      /** The steepest curve fits best: the answers change sides between two margins, or at one (both then equal). */
      readonly kind: 'step';
      readonly centreBetween: readonly [number, number];
    };

/**
 * Psychometric function: success rate = guess + (1 - guess - lapse) * F(slope * (margin - centre)) with F normal
 * (Finney 1971, Probit Analysis) or logistic, by maximum likelihood (Wichmann & Hill 2001, Perception & Psychophysics
 * 63:1293-1313); centre with Fieller's interval (1954, Journal of the Royal Statistical Society B 16:175-185).
 * Errors: `no-data`, `one-category` when all answers are alike, `no-variation` when all margins are, `no-convergence`,
 * `invalid-input`.
 */
export function psychometricFunction(
  data: PsychometricData,
  { level = DEFAULT_LEVEL, shape = 'normal', guess = 0, lapse = 0 }: PsychometricOptions = {},
): Computed<PsychometricFunction> {
  const error = levelError(level);
  if (error) return error;
  if (!(guess >= 0 && lapse >= 0 && guess + lapse < 1)) {
    return failed('invalid-input', 'Guess and lapse rates must not be negative and must leave room for the curve.');
  }
  const base: Link = shape === 'normal' ? probit : logit;
  const link = withGuessAndLapse(base, guess, lapse);
  const rows = { successes: data.successes, trials: data.trials, predictors: [data.margins] };
  let fit = binomialRegression(rows, { link });
  if (!fit.ok && (fit.error.kind === 'separation' || fit.error.kind === 'no-convergence')) {
    const step = bestStep(data, guess, lapse);
    const start = bestOnGrid(data, link);
    fit = binomialRegression(rows, { link, start: start.coefficients });
    // A very steep curve of the grid can be as good as the step up to rounding.
    if (!fit.ok && step.deviance <= start.deviance + 1e-9)
      return computed({ kind: 'step', centreBetween: step.between });
  }
  if (!fit.ok) return fit;
  const slope = waldTest(fit.value, [0, 1], { level });
  if (!slope.ok) return slope;
  const [intercept = 0, gradient = 0] = fit.value.coefficients;
  if (gradient === 0) return failed('no-variation', 'The answers do not change with the margin.');
  const { deviance, degrees, covariance } = fit.value;
  return computed({
    kind: 'curve',
    centre: -intercept / gradient,
    centreInterval: fieller(intercept, gradient, covariance, level),
    slope: { estimate: gradient, lower: slope.value.lower, upper: slope.value.upper, level },
    deviance,
    degrees,
  });
}

/** All centres m at which intercept + gradient * m could be 0: a quadratic in m. */
function fieller(
  intercept: number,
  gradient: number,
  covariance: readonly (readonly number[])[],
  level: number,
): Interval | undefined {
  const z2 = twoSidedDeviate(level) ** 2;
  const a = gradient * gradient - z2 * (covariance[1]?.[1] ?? 0);
  const b = intercept * gradient - z2 * (covariance[0]?.[1] ?? 0);
  const c = intercept * intercept - z2 * (covariance[0]?.[0] ?? 0);
  if (!(a > 0)) return undefined;
  const root = Math.sqrt(Math.max(0, b * b - a * c));
  return { lower: (-b - root) / a, upper: (-b + root) / a, level };
}
