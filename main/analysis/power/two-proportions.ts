import { normalCdf, normalQuantile } from '../distributions/normal.ts';
import { bisect } from '../numeric/bisect.ts';
import { type Computed, computed, failed } from '../result.ts';

export type PowerOptions = {
  /** Chance of a false alarm (0.05). */
  readonly significance?: number;
  /** 2 unless the direction is known beforehand. */
  readonly sides?: 1 | 2;
};

type Plan = PowerOptions & { readonly power?: number };

/**
 * Attempts needed in each of two groups to tell rates `first` and `second` apart with the given power (0.8): normal
 * approximation with pooled variance under equality (Fleiss, Levin & Paik 2003, Statistical Methods for Rates and
 * Proportions, 4.2; the formula of R's power.prop.test). Not rounded up.
 * Errors: `no-variation` when the rates are equal, `invalid-input`.
 */
export function sampleSizeTwoProportions(
  first: number,
  second: number,
  { power = 0.8, significance = 0.05, sides = 2 }: Plan = {},
): Computed<number> {
  const error = planError([first, second], significance) ?? powerError(power, significance);
  if (error) return error;
  if (first === second) return failed('no-variation', 'Equal rates cannot be told apart by any number of attempts.');
  const { pooled, apart } = deviations(first, second);
  const root = -normalQuantile(significance / sides) * pooled + normalQuantile(power) * apart;
  return computed((root / (first - second)) ** 2);
}

/**
 * Chance that `perGroup` attempts in each group tell the rates apart; the tail on the wrong side is left out.
 * Errors: `invalid-input`.
 */
export function powerTwoProportions(
  perGroup: number,
  first: number,
  second: number,
  { significance = 0.05, sides = 2 }: PowerOptions = {},
): Computed<number> {
  const error = planError([first, second], significance);
  if (error) return error;
  if (!(perGroup > 0)) return failed('invalid-input', 'The number of attempts must be above 0.');
  const { pooled, apart } = deviations(first, second);
  const distance = Math.sqrt(perGroup) * Math.abs(first - second) + normalQuantile(significance / sides) * pooled;
  // Two rates of 0 or 1 leave no spread: told apart for certain, or (equal) never beyond the false alarms.
  if (apart === 0) return computed(distance > 0 ? 1 : 0);
  return computed(normalCdf(distance / apart));
}

/**
 * The rate nearest to `first`, above it or below it, that `perGroup` attempts in each group would tell from it with the
 * given power. Errors: `out-of-reach` when not even 0 or 1 would be, `invalid-input`.
 */
export function detectableRate(
  perGroup: number,
  first: number,
  side: 'above' | 'below',
  { power = 0.8, significance = 0.05, sides = 2 }: Plan = {},
): Computed<number> {
  const error = planError([first], significance) ?? powerError(power, significance);
  if (error) return error;
  const end = side === 'above' ? 1 : 0;
  const short = (rate: number) => {
    const reached = powerTwoProportions(perGroup, first, rate, { significance, sides });
    return (reached.ok ? reached.value : 0) - power;
  };
  const atEnd = powerTwoProportions(perGroup, first, end, { significance, sides });
  if (!atEnd.ok) return atEnd;
  if (atEnd.value < power) return failed('out-of-reach', 'So few attempts can tell no other rate from this one.');
  return computed(bisect(short, first, end));
}

function deviations(first: number, second: number): { pooled: number; apart: number } {
  const mean = (first + second) / 2;
  return {
    pooled: Math.sqrt(2 * mean * (1 - mean)),
    apart: Math.sqrt(first * (1 - first) + second * (1 - second)),
  };
}

function planError(rates: readonly number[], significance: number): Computed<never> | undefined {
  const sound = rates.every((rate) => rate >= 0 && rate <= 1) && significance > 0 && significance < 1;
  return sound ? undefined : failed('invalid-input', 'Rates must lie between 0 and 1, the significance inside them.');
}

function powerError(power: number, significance: number): Computed<never> | undefined {
  const sound = power > significance && power < 1;
  return sound ? undefined : failed('invalid-input', 'The power must lie between the significance and 1.');
}
