import { normalDensity, normalQuantile } from '../distributions/normal.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, twoSidedDeviate } from '../interval.ts';
import { type Computed, computed, failed } from '../result.ts';

/** Answers of a judge to reps whose truth is known: a signal is a rep with a fault, a hit a no-rep call on one. */
export type DetectionCounts = {
  readonly hits: number;
  readonly misses: number;
  readonly falseAlarms: number;
  readonly correctRejections: number;
};

export type DetectionScores = {
  readonly hitRate: number;
  readonly falseAlarmRate: number;
  /** How far apart faulty and clean reps look to the judge, in standard deviations. */
  readonly dPrime: EstimateWithInterval;
  /** Above 0: lets faults pass rather than call them; below 0: strict. */
  readonly criterion: EstimateWithInterval;
  /** Natural logarithm of the likelihood ratio at the criterion. */
  readonly logBeta: number;
};

export type DetectionOptions = {
  readonly level?: number;
  /** Log-linear correction: half a case to hits and false alarms, one to trials. Without it rates of 0 or 1 are an error. */
  readonly logLinear?: boolean;
};

/** d', c and log beta from the two rates (Macmillan & Creelman 2005, Detection Theory; Stanislaw & Todorov 1999). */
export function detectionFromRates(
  hitRate: number,
  falseAlarmRate: number,
): Computed<{ dPrime: number; criterion: number; logBeta: number }> {
  const between = (rate: number) => rate > 0 && rate < 1;
  if (!between(hitRate) || !between(falseAlarmRate)) {
    return failed('invalid-input', 'A rate of 0 or 1 has no finite score; take the log-linear correction.');
  }
  const zHit = normalQuantile(hitRate);
  const zFalse = normalQuantile(falseAlarmRate);
  return computed({
    dPrime: zHit - zFalse,
    criterion: -(zHit + zFalse) / 2,
    logBeta: (zFalse * zFalse - zHit * zHit) / 2,
  });
}

/**
 * Signal-detection scores of a judge, by default with the log-linear correction, so that a perfect judge's scores are
 * finite (Hautus 1995, Behavior Research Methods, Instruments & Computers 27:46-51). Intervals from the large-sample
 * variance of Gourevitch & Galanter (1967, Psychometrika 32:25-33).
 * Errors: `no-data` when there were no faulty or no clean reps, `invalid-input`.
 */
export function signalDetection(
  { hits, misses, falseAlarms, correctRejections }: DetectionCounts,
  { level = DEFAULT_LEVEL, logLinear = true }: DetectionOptions = {},
): Computed<DetectionScores> {
  const error = levelError(level);
  if (error) return error;
  if (![hits, misses, falseAlarms, correctRejections].every((count) => Number.isSafeInteger(count) && count >= 0)) {
    return failed('invalid-input', 'The counts must be whole and not negative.');
  }
  const added = logLinear ? 0.5 : 0;
  const signals = hits + misses + 2 * added;
  const others = falseAlarms + correctRejections + 2 * added;
  if (hits + misses === 0 || falseAlarms + correctRejections === 0) {
    return failed('no-data', 'Both faulty and clean reps are needed.');
  }
  const hitRate = (hits + added) / signals;
  const falseAlarmRate = (falseAlarms + added) / others;
  const scores = detectionFromRates(hitRate, falseAlarmRate);
  if (!scores.ok) return scores;
  const share = (rate: number, n: number) => (rate * (1 - rate)) / (n * normalDensity(normalQuantile(rate)) ** 2);
  const standardError = Math.sqrt(share(hitRate, signals) + share(falseAlarmRate, others));
  const interval = (estimate: number, half: number) => ({
    estimate,
    lower: estimate - half,
    upper: estimate + half,
    level,
  });
  const half = twoSidedDeviate(level) * standardError;
  return computed({
    hitRate,
    falseAlarmRate,
    dPrime: interval(scores.value.dPrime, half),
    criterion: interval(scores.value.criterion, half / 2),
    logBeta: scores.value.logBeta,
  });
}
