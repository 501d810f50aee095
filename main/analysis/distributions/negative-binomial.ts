import { betaCdf } from './beta.ts';
import { logChoose } from './gamma-functions.ts';
import { smallestWithCdf } from './smallest-with-cdf.ts';

/**
 * Negative binomial: the number of failures before the `successes`-th success, each trial succeeding with chance
 * `probability` (0 < probability <= 1); with q = 1 - p its mean is successes * q / p, its variance mean / p.
 * `successes` > 0 need not be whole: it is then the dispersion k of count data with mean k * q / p.
 */
export function negativeBinomialProbability(failures: number, successes: number, probability: number): number {
  if (failures < 0) return 0;
  if (probability >= 1) return failures === 0 ? 1 : 0;
  return Math.exp(
    logChoose(failures + successes - 1, failures) +
      successes * Math.log(probability) +
      failures * Math.log1p(-probability),
  );
}

/** Mean and variance of the failures. */
export function negativeBinomialMoments(successes: number, probability: number): { mean: number; variance: number } {
  const mean = (successes * (1 - probability)) / probability;
  return { mean, variance: mean / probability };
}

/** P(failures <= k), by the incomplete beta function (Abramowitz & Stegun 1964, 26.5.26). */
export function negativeBinomialCdf(k: number, successes: number, probability: number): number {
  return k < 0 ? 0 : betaCdf(probability, successes, k + 1);
}

/** Smallest number of failures whose cdf reaches `level`, 0 <= level < 1. */
export function negativeBinomialQuantile(level: number, successes: number, probability: number): number {
  const { mean } = negativeBinomialMoments(successes, probability);
  return smallestWithCdf((k) => negativeBinomialCdf(k, successes, probability), level, mean);
}
