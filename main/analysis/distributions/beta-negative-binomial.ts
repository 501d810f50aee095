import { logBeta, logChoose } from './gamma-functions.ts';

/** Bound on the adding up, so that an almost hopeless rate cannot hang the program. */
const LONGEST_SUM = 10_000_000;

/**
 * Beta negative binomial: failures before the `successes`-th success when the chance of a success is Beta(a, b), a > 0,
 * b > 0 (Johnson, Kemp & Kotz, Univariate Discrete Distributions). With the posterior of the counted-rep rate it is
 * the prediction of the extra attempts that a target costs. The mean successes * b / (a - 1) exists for a > 1 only.
 */
export function betaNegativeBinomialProbability(failures: number, successes: number, a: number, b: number): number {
  if (failures < 0) return 0;
  return Math.exp(logChoose(successes + failures - 1, failures) + logBeta(a + successes, b + failures) - logBeta(a, b));
}

/**
 * Smallest number of failures whose cdf reaches each of `levels` (rising, each 0 <= level < 1), by adding the
 * probabilities up: P(k + 1) / P(k) = (successes + k)(b + k) / ((k + 1)(a + b + successes + k)). A level that ten
 * million failures do not reach (a rate next to nothing) gives Infinity.
 */
export function betaNegativeBinomialQuantiles(
  levels: readonly number[],
  successes: number,
  a: number,
  b: number,
): number[] {
  const quantiles: number[] = [];
  let probability = betaNegativeBinomialProbability(0, successes, a, b);
  let cumulative = probability;
  let failures = 0;
  for (const level of levels) {
    while (cumulative < level * (1 - 1e-13) && failures < LONGEST_SUM) {
      probability *= ((successes + failures) * (b + failures)) / ((failures + 1) * (a + b + successes + failures));
      cumulative += probability;
      failures += 1;
    }
    quantiles.push(failures < LONGEST_SUM ? failures : Number.POSITIVE_INFINITY);
  }
  return quantiles;
}
