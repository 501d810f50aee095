import { binomialCdf, binomialProbability } from '../distributions/binomial.ts';
import { chiSquareUpperTail } from '../distributions/chi-square.ts';
import { type Computed, computed, failed } from '../result.ts';

export type McNemar = {
  /** Chi-square with 1 degree of freedom and its p-value, plain. */
  readonly statistic: number;
  readonly pValue: number;
  /** The same with Edwards' continuity correction (1948). */
  readonly correctedStatistic: number;
  readonly correctedPValue: number;
  /** Exact conditional (binomial) p-value. */
  readonly exactPValue: number;
  /** Mid-p version of the exact one, the best for small numbers (Fagerland, Lydersen & Laake 2013). */
  readonly midPValue: number;
};

/**
 * McNemar's test (1947, Psychometrika 12:153-157) that two paired proportions are equal, from the pairs that differ:
 * two-sided. Errors: `no-variation` when no pair differs, `invalid-input`.
 */
export function mcNemar(firstOnly: number, secondOnly: number): Computed<McNemar> {
  if (![firstOnly, secondOnly].every((count) => Number.isSafeInteger(count) && count >= 0)) {
    return failed('invalid-input', 'The numbers of differing pairs must be whole and not negative.');
  }
  const differing = firstOnly + secondOnly;
  if (differing === 0) return failed('no-variation', 'No pair differs, so nothing tells the two apart.');
  const gap = Math.abs(firstOnly - secondOnly);
  const statistic = (gap * gap) / differing;
  const correctedStatistic = Math.max(0, gap - 1) ** 2 / differing;
  const fewer = Math.min(firstOnly, secondOnly);
  const exactPValue = Math.min(1, 2 * binomialCdf(fewer, differing, 0.5));
  const itself = binomialProbability(fewer, differing, 0.5);
  return computed({
    statistic,
    pValue: chiSquareUpperTail(statistic, 1),
    correctedStatistic,
    correctedPValue: chiSquareUpperTail(correctedStatistic, 1),
    exactPValue,
    midPValue: gap === 0 ? 1 - itself : exactPValue - itself,
  });
}
