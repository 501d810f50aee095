import type { Estimate } from '../../../shared-types/contract/reports.ts';
import type { Why } from '../../../shared-types/contract/review/figures.ts';
import type { EstimateWithInterval } from '../../analysis/interval.ts';
import { wilsonInterval } from '../../analysis/proportions/wilson.ts';
import type { ComputationErrorKind, Computed } from '../../analysis/result.ts';

export function asEstimate(given: EstimateWithInterval, times = 1): Estimate {
  return { value: given.estimate * times, low: given.lower * times, high: given.upper * times };
}

export function estimateOrNull(given: Computed<EstimateWithInterval>, times = 1): Estimate | null {
  return given.ok ? asEstimate(given.value, times) : null;
}

/** No-reps of attempts with Wilson's interval; null without an attempt. */
export function rateOf(noReps: number, attempts: number): Estimate | null {
  return estimateOrNull(wilsonInterval(noReps, attempts));
}

/** Why a sum has no answer, in the words of the contract. */
export function whyNot(kind: ComputationErrorKind, counts: { readonly sets: number; readonly noReps: number }): Why {
  if (counts.sets === 0) return 'no-sets';
  switch (kind) {
    case 'no-data':
      return 'no-attempts';
    case 'too-few-data':
      return 'few-sets';
    case 'one-category':
      return counts.noReps === 0 ? 'no-no-reps' : 'only-no-reps';
    case 'no-variation':
      return 'no-spread';
    default:
      return 'not-computable';
  }
}

/**
 * Independent estimates added up: the distances to their bounds squared and added, each side for itself.
 *
 * @param parts low and high about each value
 */
export function combined(parts: readonly Estimate[]): Estimate {
  const value = parts.reduce((total, part) => total + part.value, 0);
  const below = Math.sqrt(parts.reduce((total, part) => total + (part.value - part.low) ** 2, 0));
  const above = Math.sqrt(parts.reduce((total, part) => total + (part.high - part.value) ** 2, 0));
  return { value, low: value - below, high: value + above };
}

export function scaled(given: Estimate, by: number): Estimate {
  return { value: given.value * by, low: given.low * by, high: given.high * by };
}
