import { proportionError } from '../interval.ts';
import type { Proportion } from '../proportions/difference.ts';
import { type Computed, computed, failed } from '../result.ts';
import { type PowerOptions, sampleSizeTwoProportions } from './two-proportions.ts';

/** Beyond this many attempts "keep counting" is no advice. */
const MOST = 1_000_000;

/**
 * Attempts to add to the second group, the first staying as it is, before two rates like those seen so far could be
 * told apart with the given power (0.8), rounded up; 0 when there are enough. Groups of unequal size are taken to be worth
 * as much as two of their harmonic mean, an approximation; the size of equal groups is `sampleSizeTwoProportions`.
 * Errors: `no-data`, `no-variation` when the rates seen are equal, `out-of-reach` when the first group is too small for
 * any number in the second, or a million would not do; `invalid-input`.
 */
export function repsStillNeeded(
  first: Proportion,
  second: Proportion,
  options: PowerOptions & { readonly power?: number } = {},
): Computed<number> {
  const error = proportionError(first.count, first.total) ?? proportionError(second.count, second.total);
  if (error) return error;
  const a = first.count / first.total;
  const b = second.count / second.total;
  const each = sampleSizeTwoProportions(a, b, options);
  if (!each.ok) return each;
  // 2 / each = 1 / n1 + 1 / n2, solved for n2.
  const room = 2 / each.value - 1 / first.total;
  if (room <= 0) return failed('out-of-reach', 'The first span holds too few attempts for any number in the second.');
  const needed = Math.ceil(1 / room - 1e-9) - second.total;
  if (needed > MOST) return failed('out-of-reach', 'More than a million attempts would be needed.');
  return computed(Math.max(0, needed));
}
