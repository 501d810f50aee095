import { normalCdf } from '../distributions/normal.ts';
import { type Computed, computed, failed } from '../result.ts';
import { kendallUpperTail, kendallVariance } from './kendall-distribution.ts';

export type MannKendall = {
  /** Pairs that rise less pairs that fall; its variance under no trend. */
  readonly s: number;
  readonly variance: number;
  /** Kendall's tau-b, -1 to 1. */
  readonly tau: number;
  /** (|S| - 1) / sd with the sign of S: continuity-corrected. */
  readonly z: number;
  /** Two-sided; exact up to 50 values without ties, else from z. */
  readonly pValue: number;
  readonly exact: boolean;
  /** Exact P(S at least as large as seen) where `exact`, else from z. */
  readonly upperTail: number;
};

const LONGEST = 20_000;

/**
 * Mann-Kendall test for a monotone trend of values over times (Mann 1945, Econometrica 13:245-259; Kendall 1970), any
 * order, ties in both allowed. `times` defaults to the positions.
 * Errors: `too-few-data` below 3 values, `no-variation` when all values or all times are equal, `out-of-reach` above
 * 20,000 values, `invalid-input`.
 */
export function mannKendall(values: ArrayLike<number>, times?: ArrayLike<number>): Computed<MannKendall> {
  const n = values.length;
  const at = times ?? Array.from({ length: n }, (_, i) => i);
  if (at.length !== n || ![...Array.from(values), ...Array.from(at)].every(Number.isFinite)) {
    return failed('invalid-input', 'There must be one finite time for each finite value.');
  }
  if (n < 3) return failed('too-few-data', 'A trend needs at least three values.');
  if (n > LONGEST) return failed('out-of-reach', 'Too many values to compare each with each.');
  let s = 0;
  let untiedValues = 0;
  let untiedTimes = 0;
  for (let i = 0; i < n; i += 1) {
    for (let j = i + 1; j < n; j += 1) {
      const rise = Math.sign((values[j] ?? 0) - (values[i] ?? 0));
      const later = Math.sign((at[j] ?? 0) - (at[i] ?? 0));
      s += rise * later;
      if (rise !== 0) untiedValues += 1;
      if (later !== 0) untiedTimes += 1;
    }
  }
  if (untiedValues === 0 || untiedTimes === 0) return failed('no-variation', 'All values, or all times, are equal.');
  const { variance, ties } = kendallVariance(values, at);
  const z = (Math.sign(s) * Math.max(0, Math.abs(s) - 1)) / Math.sqrt(variance);
  const upper = ties ? undefined : kendallUpperTail(n, s);
  const lower = ties ? undefined : kendallUpperTail(n, -s);
  const exact = upper !== undefined && lower !== undefined;
  return computed({
    s,
    variance,
    tau: s / Math.sqrt(untiedValues * untiedTimes),
    z,
    pValue: exact ? Math.min(1, 2 * Math.min(upper, lower)) : 2 * normalCdf(-Math.abs(z)),
    exact,
    upperTail: exact ? upper : normalCdf(-z),
  });
}
