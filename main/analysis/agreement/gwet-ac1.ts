import { DEFAULT_LEVEL, type EstimateWithInterval, levelError, twoSidedDeviate } from '../interval.ts';
import { type Computed, computed, failed } from '../result.ts';
import { type RatingTable, ratingTableError, shares } from './rating-table.ts';

export type AgreementCoefficient = EstimateWithInterval & {
  readonly observed: number;
  readonly expected: number;
  readonly standardError: number;
};

/**
 * Gwet's AC1 of two judges (2008, British Journal of Mathematical and Statistical Psychology 61:29-48), which does not
 * collapse as kappa does when one category is rare; normal limits from his large-sample standard error, cut off at -1
 * and 1. `table` must list every category that could have been used, also unused ones.
 * Errors: `no-data`, `invalid-input` (also a table of one category: there must be at least two).
 */
export function gwetAC1(table: RatingTable, level = DEFAULT_LEVEL): Computed<AgreementCoefficient> {
  const error = ratingTableError(table) ?? levelError(level);
  if (error) return error;
  const categories = table.length;
  if (categories < 2) return failed('invalid-input', 'Agreement needs at least two categories to choose from.');
  const { cells, rows, columns, n } = shares(table);
  const mean = rows.map((share, i) => (share + (columns[i] ?? 0)) / 2);
  const observed = cells.reduce((sum, row, i) => sum + (row[i] ?? 0), 0);
  // At most 1 / categories, so never 1.
  const expected = mean.reduce((sum, share) => sum + share * (1 - share), 0) / (categories - 1);
  const estimate = (observed - expected) / (1 - expected);
  let square = 0;
  for (const [i, row] of cells.entries()) {
    for (const [j, share] of row.entries()) {
      const chance = (1 - ((mean[i] ?? 0) + (mean[j] ?? 0)) / 2) / (categories - 1);
      square += share * ((i === j ? 1 : 0) - 2 * (1 - estimate) * chance) ** 2;
    }
  }
  const variance = (square - (observed - 2 * (1 - estimate) * expected) ** 2) / (n * (1 - expected) ** 2);
  const standardError = Math.sqrt(Math.max(0, variance));
  const half = twoSidedDeviate(level) * standardError;
  return computed({
    estimate,
    lower: Math.max(-1, estimate - half),
    upper: Math.min(1, estimate + half),
    level,
    observed,
    expected,
    standardError,
  });
}
