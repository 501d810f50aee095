import { DEFAULT_LEVEL, type EstimateWithInterval } from '../interval.ts';
import { logisticRegression } from '../regression/logistic-regression.ts';
import { waldTest } from '../regression/wald.ts';
import { type Computed, computed, failed } from '../result.ts';

/** How one set began, and the no-reps of the attempts after its first quarter. */
export type SetStart = {
  /** First quarter's clean cycle over that of the rest, less 1; below zero is faster. */
  readonly change: number;
  readonly noRepsAfter: number;
  readonly attemptsAfter: number;
};

export type FastStarts = {
  /** Odds of a no-rep after a start a tenth quicker, over those after one as quick as the rest. */
  readonly oddsRatio: EstimateWithInterval;
  readonly pValue: number;
};

/** Fewer sets than this say nothing of what follows a fast start. */
const FEWEST_STARTS = 5;

/**
 * Whether no-reps follow the fast start, over sets: logistic regression of the no-reps after the first quarter on how much
 * quicker that was than the rest; quasi-binomial with a dispersion never below 1, Student's t with sets - 2 degrees.
 * Errors: `too-few-data` below five sets with attempts after their first quarter, `one-category`, `no-variation` where all
 * began alike, `out-of-reach` where the data bound the odds ratio on neither side, those of `logisticRegression`.
 */
export function fastStarts(starts: readonly SetStart[], level = DEFAULT_LEVEL): Computed<FastStarts> {
  const used = starts.filter((start) => start.attemptsAfter > 0);
  if (used.length < FEWEST_STARTS) return failed('too-few-data', 'There are fewer than five sets to learn from.');
  const noReps = used.reduce((sum, start) => sum + start.noRepsAfter, 0);
  const attempts = used.reduce((sum, start) => sum + start.attemptsAfter, 0);
  if (noReps === 0 || noReps === attempts) return failed('one-category', 'Every attempt ended alike.');
  const regression = logisticRegression({
    successes: used.map((start) => start.noRepsAfter),
    trials: used.map((start) => start.attemptsAfter),
    predictors: [used.map((start) => -10 * start.change)],
  });
  if (!regression.ok) return regression;
  const { fit } = regression.value;
  const slope = waldTest(fit, [0, 1], { level, dispersion: Math.max(1, fit.dispersion), degrees: used.length - 2 });
  if (!slope.ok) return slope;
  const [estimate, lower, upper] = [slope.value.estimate, slope.value.lower, slope.value.upper].map(Math.exp);
  if (estimate === undefined || lower === undefined || upper === undefined || !Number.isFinite(upper)) {
    return failed('out-of-reach', 'The data bound the odds ratio on neither side.');
  }
  return computed({ oddsRatio: { estimate, lower, upper, level }, pValue: slope.value.pValue });
}
