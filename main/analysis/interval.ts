import { normalQuantile } from './distributions/normal.ts';
import { type Computed, failed } from './result.ts';

/** Two-sided interval; `level` is the nominal coverage, between 0 and 1 (0.95 unless told otherwise). */
export type Interval = { readonly lower: number; readonly upper: number; readonly level: number };

export type EstimateWithInterval = Interval & { readonly estimate: number };

export const DEFAULT_LEVEL = 0.95;

/** Standard normal deviate that leaves (1 - level) / 2 in each tail: 1.959964 for 0.95. */
export function twoSidedDeviate(level: number): number {
  return -normalQuantile((1 - level) / 2);
}

/** A typed error when `level` is no coverage, else nothing. */
export function levelError(level: number): Computed<never> | undefined {
  return level > 0 && level < 1
    ? undefined
    : failed('invalid-input', `The level must lie between 0 and 1, not ${level}.`);
}

/** A typed error when `count` of `total` is no proportion (whole numbers, 0 <= count <= total, total > 0), else nothing. */
export function proportionError(count: number, total: number): Computed<never> | undefined {
  if (!Number.isSafeInteger(count) || !Number.isSafeInteger(total) || count < 0 || count > total) {
    return failed('invalid-input', `${count} of ${total} is no proportion of whole counts.`);
  }
  return total === 0 ? failed('no-data', 'There is nothing to take a proportion of.') : undefined;
}
