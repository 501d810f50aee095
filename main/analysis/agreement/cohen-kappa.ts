import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, twoSidedDeviate } from '../interval.ts';
import { type Computed, computed, failed } from '../result.ts';
import { type RatingTable, ratingTableError, shares } from './rating-table.ts';

export type Kappa = EstimateWithInterval & {
  /** Share of pairs in agreement (weighted where weights are given), and the share expected by chance. */
  readonly observed: number;
  readonly expected: number;
  /** Large-sample standard error, and the one under no agreement beyond chance. */
  readonly standardError: number;
  readonly nullStandardError: number;
};

export type KappaOptions = {
  readonly level?: number;
  /** Credit for each pair of categories, 1 on the diagonal and at most 1 elsewhere; plain kappa without. */
  readonly weights?: RatingTable;
};

/**
 * Cohen's kappa of two judges (1960, Educational and Psychological Measurement 20:37-46), weighted where weights are
 * given (1968, Psychological Bulletin 70:213-220), with the large-sample standard error of Fleiss, Cohen & Everitt
 * (1969, Psychological Bulletin 72:323-327); limits cut off at -1 and 1.
 * Errors: `no-data`, `one-category` when chance alone would agree on everything (both judges used one and the same
 * category), `invalid-input`.
 */
export function cohenKappa(table: RatingTable, { level = DEFAULT_LEVEL, weights }: KappaOptions = {}): Computed<Kappa> {
  const error = ratingTableError(table) ?? levelError(level);
  if (error) return error;
  if (weights && (weights.length !== table.length || weights.some((row) => row.length !== table.length))) {
    return failed('invalid-input', 'The weights must have the shape of the table.');
  }
  const { cells, rows, columns, n } = shares(table);
  const weight = (i: number, j: number) => weights?.[i]?.[j] ?? (i === j ? 1 : 0);
  const over = (f: (i: number, j: number, share: number) => number) =>
    cells.reduce((sum, row, i) => sum + row.reduce((part, share, j) => part + f(i, j, share), 0), 0);
  const chance = (i: number, j: number) => (rows[i] ?? 0) * (columns[j] ?? 0);
  const observed = over((i, j, share) => weight(i, j) * share);
  const expected = over((i, j) => weight(i, j) * chance(i, j));
  if (1 - expected < 1e-12) {
    return failed(
      'one-category',
      'Both judges used one category only, so chance alone would agree: kappa is undefined.',
    );
  }
  const estimate = (observed - expected) / (1 - expected);
  const rowWeights = rows.map((_, i) => columns.reduce((sum, share, j) => sum + share * weight(i, j), 0));
  const columnWeights = columns.map((_, j) => rows.reduce((sum, share, i) => sum + share * weight(i, j), 0));
  const both = (i: number, j: number) => (rowWeights[i] ?? 0) + (columnWeights[j] ?? 0);
  const scale = n * (1 - expected) ** 2;
  const variance =
    over((i, j, share) => share * (weight(i, j) - both(i, j) * (1 - estimate)) ** 2) -
    (estimate - expected * (1 - estimate)) ** 2;
  const nullVariance = over((i, j) => chance(i, j) * (weight(i, j) - both(i, j)) ** 2) - expected ** 2;
  const standardError = Math.sqrt(Math.max(0, variance) / scale);
  const half = twoSidedDeviate(level) * standardError;
  return computed({
    estimate,
    lower: Math.max(-1, estimate - half),
    upper: Math.min(1, estimate + half),
    level,
    observed,
    expected,
    standardError,
    nullStandardError: Math.sqrt(Math.max(0, nullVariance) / scale),
  });
}
