import { betaQuantile } from '../distributions/beta.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, proportionError } from '../interval.ts';
import { type Computed, computed } from '../result.ts';

/**
 * Equal-tailed interval of the Beta(count + 1/2, total - count + 1/2) posterior, Jeffreys' prior (Brown, Cai & DasGupta
 * 2001, Statistical Science 16:101-133). As they advise, 0 of n has the lower limit 0 and n of n the upper limit 1.
 * Errors: `no-data` for 0 of 0, `invalid-input`.
 */
export function jeffreysInterval(count: number, total: number, level = DEFAULT_LEVEL): Computed<EstimateWithInterval> {
  const error = proportionError(count, total) ?? levelError(level);
  if (error) return error;
  const tail = (1 - level) / 2;
  const a = count + 0.5;
  const b = total - count + 0.5;
  return computed({
    estimate: count / total,
    lower: count === 0 ? 0 : betaQuantile(tail, a, b),
    upper: count === total ? 1 : betaQuantile(1 - tail, a, b),
    level,
  });
}
