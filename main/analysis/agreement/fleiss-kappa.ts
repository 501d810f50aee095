import { type Computed, computed, failed } from '../result.ts';

export type FleissKappa = {
  readonly kappa: number;
  /** Mean share of agreeing pairs of judges, and the share expected by chance. */
  readonly observed: number;
  readonly expected: number;
  /** Agreement on each attempt, 0 to 1. */
  readonly perUnit: readonly number[];
  /** Standard error under no agreement beyond chance, and kappa over it. */
  readonly nullStandardError: number;
  readonly z: number;
};

/**
 * Fleiss' kappa of three or more judges (1971, Psychological Bulletin 76:378-382), null standard error of Fleiss, Nee &
 * Landis (1979, Psychological Bulletin 86:974-977).
 *
 * @param counts a row an attempt: how many judges chose each category; all rows the same number of judges, two or more
 * Errors: `no-data`, `one-category` when all judges used one category throughout, `invalid-input` (also when a judge
 * missed an attempt: use Krippendorff's alpha).
 */
export function fleissKappa(counts: readonly (readonly number[])[]): Computed<FleissKappa> {
  const first = counts[0];
  if (!first) return failed('no-data', 'No attempt was judged.');
  const sum = (row: readonly number[]) => row.reduce((all, count) => all + count, 0);
  const judges = sum(first);
  const sound = counts.every(
    (row) =>
      row.length === first.length &&
      sum(row) === judges &&
      row.every((count) => Number.isSafeInteger(count) && count >= 0),
  );
  if (!sound || judges < 2) {
    return failed('invalid-input', 'Every attempt needs the verdicts of the same number of judges, two or more.');
  }
  const units = counts.length;
  const proportions = first.map((_, j) => counts.reduce((all, row) => all + (row[j] ?? 0), 0) / (units * judges));
  const perUnit = counts.map(
    (row) => (row.reduce((all, count) => all + count * count, 0) - judges) / (judges * (judges - 1)),
  );
  const observed = sum(perUnit) / units;
  const expected = proportions.reduce((all, share) => all + share * share, 0);
  if (1 - expected < 1e-12) return failed('one-category', 'All judges used one category only: kappa is undefined.');
  const kappa = (observed - expected) / (1 - expected);
  const spread = proportions.reduce((all, share) => all + share * (1 - share), 0);
  const skew = proportions.reduce((all, share) => all + share * (1 - share) * (1 - 2 * share), 0);
  const nullStandardError = Math.sqrt(
    (2 * (spread * spread - skew)) / (spread * spread * units * judges * (judges - 1)),
  );
  return computed({ kappa, observed, expected, perUnit, nullStandardError, z: kappa / nullStandardError });
}
