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
  const sums = { clusters, n: 0, d: 0, nn: 0, nd: 0, dd: 0 };
  for (let i = 0; i < clusters; i += 1) {
    const n = numerators[i] ?? Number.NaN;
    const d = denominators[i] ?? Number.NaN;
    sums.n += n;
    sums.d += d;
    sums.nn += n * n;
    sums.nd += n * d;
    sums.dd += d * d;
  }
  return ratioOfMoments(sums, level);
}

/** Sums over clusters of numerators n, denominators d and their products; clusters of 0 and 0 count as well. */
export type RatioMoments = {
  readonly clusters: number;
  readonly n: number;
  readonly d: number;
  readonly nn: number;
  readonly nd: number;
  readonly dd: number;
};

/** As `ratioOfSums`, from sums that are made already: for a numerator that most clusters lack. */
export function ratioOfMoments(sums: RatioMoments, level = DEFAULT_LEVEL): Computed<EstimateWithInterval> {
  const { clusters, n, d, nn, nd, dd } = sums;
  if (clusters < 2) return failed('too-few-data', 'The spread between clusters needs at least two of them.');
  if (![n, d, nn, nd, dd].every(Number.isFinite)) return failed('invalid-input', 'A number is not finite.');
  if (d <= 0) return failed('no-data', 'The denominators add up to nothing.');
  const estimate = n / d;
  // Rounding can take the sum of squares a hair below 0 where all clusters have one ratio.
  const squares = Math.max(0, nn - 2 * estimate * nd + estimate * estimate * dd);
  const error = Math.sqrt((clusters / (clusters - 1)) * squares) / d;
  const half = studentTQuantile((1 + level) / 2, clusters - 1) * error;
  return computed({ estimate, lower: estimate - half, upper: estimate + half, level });
}
