import { normalCdf } from '../distributions/normal.ts';
import { type Computed, computed, failed } from '../result.ts';

export type Trend = {
  /** Change of the proportion per unit of score, by weighted least squares. */
  readonly slope: number;
  /** Positive when the proportion rises with the score. */
  readonly z: number;
  readonly chiSquare: number;
  /** Two-sided. */
  readonly pValue: number;
};

/**
 * Cochran-Armitage test for trend in proportions (Cochran 1954, Biometrics 10:417-451; Armitage 1955, Biometrics
 * 11:375-386), groups of `counts[i]` of `totals[i]` at `scores[i]` (1, 2, 3, ... unless given; any rising or falling
 * linear change of the scores leaves |z| as it is). Groups with no trials do not count.
 *
 * The linear-by-linear statistic of Agresti is z * sqrt((N - 1) / N); it is not given here.
 * Errors: `no-data`, `one-category` when nothing or everything is a success, `no-variation` when all scores are equal,
 * `invalid-input`.
 */
export function cochranArmitage(
  counts: ArrayLike<number>,
  totals: ArrayLike<number>,
  scores?: ArrayLike<number>,
): Computed<Trend> {
  if (counts.length !== totals.length || (scores && scores.length !== counts.length)) {
    return failed('invalid-input', 'Each group needs a count, a total and a score.');
  }
  const groups = Array.from(counts, (count, i) => ({
    count,
    total: totals[i] ?? 0,
    score: scores ? (scores[i] ?? 0) : i + 1,
  }));
  const sound = groups.every(
    ({ count, total, score }) =>
      Number.isSafeInteger(count) &&
      Number.isSafeInteger(total) &&
      count >= 0 &&
      count <= total &&
      Number.isFinite(score),
  );
  if (!sound) return failed('invalid-input', 'Counts must be whole, 0 to their total, and scores finite.');
  const all = groups.reduce((sum, { total }) => sum + total, 0);
  if (all === 0) return failed('no-data', 'There are no trials.');
  const rate = groups.reduce((sum, { count }) => sum + count, 0) / all;
  if (rate === 0 || rate === 1) {
    return failed('one-category', 'Every trial ended alike, so no trend can be told.');
  }
  const meanScore = groups.reduce((sum, { total, score }) => sum + total * score, 0) / all;
  const covariance = groups.reduce((sum, { count, score }) => sum + count * (score - meanScore), 0);
  const spread = groups.reduce((sum, { total, score }) => sum + total * (score - meanScore) ** 2, 0);
  if (spread <= 0) return failed('no-variation', 'All trials have the same score.');
  const z = covariance / Math.sqrt(rate * (1 - rate) * spread);
  return computed({ slope: covariance / spread, z, chiSquare: z * z, pValue: 2 * normalCdf(-Math.abs(z)) });
}
