import { levelError, proportionError } from '../interval.ts';
import type { Computed } from '../result.ts';

/** A count out of a total, both whole; for example 6 no-reps of 71 attempts. */
export type Proportion = { readonly count: number; readonly total: number };

/** A typed error when one of two proportions or the level is none, else nothing. */
export function differenceError(first: Proportion, second: Proportion, level: number): Computed<never> | undefined {
  return proportionError(first.count, first.total) ?? proportionError(second.count, second.total) ?? levelError(level);
}
