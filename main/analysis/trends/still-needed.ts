import { normalQuantile } from '../distributions/normal.ts';

const MOST = 1_000_000;

/**
 * Trials to add to `trials`, spread like those so far, before an effect of the size seen would be told with the given power
 * (0.8) at two-sided 5 %: the standard error shrinks with the root of the trials, so its square is scaled until the
 * statistic is the sum of both normal deviates (1.96 + 0.84). At least 1; null where it is beyond a million.
 *
 * @param statistic estimate over standard error, as seen
 */
export function trialsStillNeeded(trials: number, statistic: number, power = 0.8): number | null {
  const wanted = -normalQuantile(0.025) + normalQuantile(power);
  const needed = trials * ((wanted / statistic) ** 2 - 1);
  return Number.isFinite(needed) && needed <= MOST ? Math.max(1, Math.ceil(needed)) : null;
}
