import { normalCdf } from '../distributions/normal.ts';
import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, twoSidedDeviate } from '../interval.ts';
import { type Computed, computed, failed } from '../result.ts';

/** One stratum: counts out of totals of two groups. Counts may be fractions (a no-rep with two faults is half for each). */
export type Stratum = {
  readonly firstCount: number;
  readonly firstTotal: number;
  readonly secondCount: number;
  readonly secondTotal: number;
};

export type StratifiedDifference = EstimateWithInterval & {
  readonly standardError: number;
  /** Two-sided, for no difference. */
  readonly pValue: number;
  /** Strata in which both groups have trials. */
  readonly strata: number;
};

/**
 * Common difference of proportions, first less second, over strata (Mantel-Haenszel weights; Greenland & Robins 1985,
 * Biometrics 41:55-68), variance by Sato (1989, Biometrics 45:1323-1324), which holds for few large strata and for many
 * small ones, times `dispersion`. Strata that lack a group do not count.
 * Errors: `no-data` without a stratum of both, `no-variation` where nothing or everything is counted, `invalid-input`.
 */
export function stratifiedDifference(
  strata: readonly Stratum[],
  { level = DEFAULT_LEVEL, dispersion = 1 }: { readonly level?: number; readonly dispersion?: number } = {},
): Computed<StratifiedDifference> {
  const error = levelError(level);
  if (error) return error;
  let used = 0;
  let weights = 0;
  let differences = 0;
  let p = 0;
  let q = 0;
  for (const { firstCount: a, firstTotal: n, secondCount: c, secondTotal: m } of strata) {
    if (!(a >= 0 && a <= n && c >= 0 && c <= m)) return failed('invalid-input', 'A stratum holds no proportion.');
    if (n === 0 || m === 0) continue;
    const all = n + m;
    used += 1;
    weights += (n * m) / all;
    differences += (a * m - c * n) / all;
    p += (n * n * c - m * m * a + (n * m * (m - n)) / 2) / (all * all);
    q += (a * (m - c) + c * (n - a)) / (2 * all);
  }
  if (used === 0) return failed('no-data', 'No stratum holds both groups.');
  const estimate = differences / weights;
  const variance = ((estimate * p + q) / (weights * weights)) * dispersion;
  if (!(variance > 0)) return failed('no-variation', 'Every trial ended alike, so the difference has no spread.');
  const standardError = Math.sqrt(variance);
  const half = twoSidedDeviate(level) * standardError;
  return computed({
    estimate,
    standardError,
    lower: Math.max(-1, estimate - half),
    upper: Math.min(1, estimate + half),
    level,
    pValue: 2 * normalCdf(-Math.abs(estimate) / standardError),
    strata: used,
  });
}
