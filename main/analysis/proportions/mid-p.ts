import { binomialCdf, binomialProbability, binomialUpperTail } from '../distributions/binomial.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, proportionError } from '../interval.ts';
import { bisect } from '../numeric/bisect.ts';
import { type Computed, computed } from '../result.ts';

/**
 * Mid-p interval for one proportion (Lancaster 1949, 1961; method 6 of Newcombe 1998, Statistics in Medicine
 * 17:857-872): the rates at which the tail beyond the count, with half the count's own probability, is
 * (1 - level) / 2. 0 of n begins at 0 and n of n ends at 1. Errors: `no-data`, `invalid-input`.
 */
export function midPInterval(count: number, total: number, level = DEFAULT_LEVEL): Computed<EstimateWithInterval> {
  const error = proportionError(count, total) ?? levelError(level);
  if (error) return error;
  const tail = (1 - level) / 2;
  const half = (rate: number) => binomialProbability(count, total, rate) / 2;
  return computed({
    estimate: count / total,
    lower: count === 0 ? 0 : bisect((rate) => binomialUpperTail(count, total, rate) - half(rate) - tail, 0, 1),
    upper: count === total ? 1 : bisect((rate) => binomialCdf(count, total, rate) - half(rate) - tail, 0, 1),
    level,
  });
}
