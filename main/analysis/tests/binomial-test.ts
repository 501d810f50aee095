import { binomialCdf, binomialProbability, binomialUpperTail } from '../distributions/binomial.ts';
import { proportionError } from '../interval.ts';
import { type Computed, computed, failed } from '../result.ts';

// Outcomes as likely as the observed one up to rounding count as such.
const TIE = 1 + 1e-7;

/**
 * Exact two-sided test of a count against a rate known beforehand: the summed probability of every outcome no likelier
 * than the observed one (the rule of R's binom.test). Errors: `no-data` for 0 of 0, `invalid-input`.
 *
 * @returns the p-value
 */
export function binomialTest(count: number, total: number, rate: number): Computed<number> {
  const error = proportionError(count, total);
  if (error) return error;
  if (!(rate >= 0 && rate <= 1)) return failed('invalid-input', `${rate} is no rate.`);
  if (rate === 0) return computed(count === 0 ? 1 : 0);
  if (rate === 1) return computed(count === total ? 1 : 0);
  const probability = (k: number) => binomialProbability(k, total, rate);
  const limit = probability(count) * TIE;
  const mode = Math.min(total, Math.floor((total + 1) * rate));
  if (count === mode) return computed(1);
  // On the far side of the mode the probabilities fall away from it, so the first one small enough is found by halving.
  if (count < mode) {
    let low = mode;
    let high = total + 1;
    while (low < high) {
      const middle = Math.floor((low + high) / 2);
      if (middle > total || probability(middle) <= limit) high = middle;
      else low = middle + 1;
    }
    return computed(Math.min(1, binomialCdf(count, total, rate) + binomialUpperTail(low, total, rate)));
  }
  let low = -1;
  let high = mode;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (middle < 0 || probability(middle) <= limit) low = middle;
    else high = middle - 1;
  }
  return computed(Math.min(1, binomialCdf(low, total, rate) + binomialUpperTail(count, total, rate)));
}
