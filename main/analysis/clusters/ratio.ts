import { studentTQuantile } from '../distributions/student-t.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval } from '../interval.ts';
import { type Computed, computed, failed } from '../result.ts';

/**
 * Ratio of two sums over clusters, such as seconds lost over reps counted, sets as clusters: variance by linearisation
 * (Cochran 1977, Sampling Techniques, 6.3, without the finite-population term), Student's t with clusters - 1 degrees.
 * Errors: `too-few-data` below two clusters, `no-data` where the denominators add up to nothing, `invalid-input`.
 */
export function ratioOfSums(
  numerators: ArrayLike<number>,
  denominators: ArrayLike<number>,
  level = DEFAULT_LEVEL,
): Computed<EstimateWithInterval> {
  const clusters = numerators.length;
  if (clusters !== denominators.length) return failed('invalid-input', 'Each cluster needs both its numbers.');
  if (clusters < 2) return failed('too-few-data', 'The spread between clusters needs at least two of them.');
  let upper = 0;
  let lower = 0;
  for (let i = 0; i < clusters; i += 1) {
    upper += numerators[i] ?? Number.NaN;
    lower += denominators[i] ?? Number.NaN;
  }
  if (!Number.isFinite(upper) || !Number.isFinite(lower)) return failed('invalid-input', 'A number is not finite.');
  if (lower <= 0) return failed('no-data', 'The denominators add up to nothing.');
  const estimate = upper / lower;
  let squares = 0;
  for (let i = 0; i < clusters; i += 1) squares += ((numerators[i] ?? 0) - estimate * (denominators[i] ?? 0)) ** 2;
  const error = Math.sqrt((clusters / (clusters - 1)) * squares) / lower;
  const half = studentTQuantile((1 + level) / 2, clusters - 1) * error;
  return computed({ estimate, lower: estimate - half, upper: estimate + half, level });
}
