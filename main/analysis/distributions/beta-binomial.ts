import { logBeta, logChoose } from './gamma-functions.ts';

/**
 * Beta-binomial: successes among `trials` trials whose common chance is itself Beta(a, b), a > 0, b > 0; with the
 * posterior of a rate this is the prediction for the next `trials` reps (Johnson, Kemp & Kotz, Univariate Discrete
 * Distributions). Mean trials * a / (a + b). A uniform prior makes all trials + 1 counts equally likely (Laplace).
 */
export function betaBinomialProbability(k: number, trials: number, a: number, b: number): number {
  if (k < 0 || k > trials) return 0;
  return Math.exp(logChoose(trials, k) + logBeta(k + a, trials - k + b) - logBeta(a, b));
}
