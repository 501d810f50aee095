import { betaCdf, betaUpperTail } from './beta.ts';
import { logChoose } from './gamma-functions.ts';

/** P(X = k) for X counting successes in `trials` trials of chance `probability`. */
export function binomialProbability(k: number, trials: number, probability: number): number {
  if (k < 0 || k > trials) return 0;
  if (probability <= 0) return k === 0 ? 1 : 0;
  if (probability >= 1) return k === trials ? 1 : 0;
  return Math.exp(logChoose(trials, k) + k * Math.log(probability) + (trials - k) * Math.log1p(-probability));
}

/** P(X <= k), by the incomplete beta function (Abramowitz & Stegun 1964, 26.5.24). */
export function binomialCdf(k: number, trials: number, probability: number): number {
  if (k < 0) return 0;
  return k >= trials ? 1 : betaUpperTail(probability, k + 1, trials - k);
}

/** P(X >= k). */
export function binomialUpperTail(k: number, trials: number, probability: number): number {
  if (k <= 0) return 1;
  return k > trials ? 0 : betaCdf(probability, k, trials - k + 1);
}
