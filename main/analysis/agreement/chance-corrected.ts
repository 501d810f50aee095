import { type Computed, computed, failed } from '../result.ts';
import { type RatingTable, ratingTableError, shares } from './rating-table.ts';

/** How far each of two verdicts is agreed on, and why kappa may mislead. */
export type SpecificAgreement = {
  /** Of the pairs where either said the first category, twice those where both did; the same for the second. */
  readonly first: number | undefined;
  readonly second: number | undefined;
  /** Difference of the agreed shares: near -1 or 1 kappa collapses. */
  readonly prevalenceIndex: number;
  /** First judge's share of the first category less the second judge's. */
  readonly biasIndex: number;
};

/**
 * Scott's pi (1955, Public Opinion Quarterly 19:321-325): chance from the mean of both judges' margins.
 * Errors: `no-data`, `one-category`, `invalid-input`.
 */
export function scottPi(table: RatingTable): Computed<number> {
  const error = ratingTableError(table);
  if (error) return error;
  const { cells, rows, columns } = shares(table);
  const observed = cells.reduce((sum, row, i) => sum + (row[i] ?? 0), 0);
  const expected = rows.reduce((sum, share, i) => sum + ((share + (columns[i] ?? 0)) / 2) ** 2, 0);
  if (1 - expected < 1e-12) return failed('one-category', 'Both judges used one category only: pi is undefined.');
  return computed((observed - expected) / (1 - expected));
}

/**
 * Brennan & Prediger's coefficient (1981, Educational and Psychological Measurement 41:687-699): chance 1 in the number
 * of categories; for two of them the prevalence-adjusted bias-adjusted kappa of Byrt, Bishop & Carlin (1993).
 * Errors: `no-data`, `invalid-input`.
 */
export function brennanPrediger(table: RatingTable): Computed<number> {
  const error = ratingTableError(table);
  if (error) return error;
  if (table.length < 2) return failed('invalid-input', 'Agreement needs at least two categories to choose from.');
  const { cells } = shares(table);
  const observed = cells.reduce((sum, row, i) => sum + (row[i] ?? 0), 0);
  return computed((observed - 1 / table.length) / (1 - 1 / table.length));
}

/**
 * Agreement on each verdict by itself (Cicchetti & Feinstein 1990, Journal of Clinical Epidemiology 43:551-558) with
 * prevalence and bias index (Byrt, Bishop & Carlin 1993, Journal of Clinical Epidemiology 46:423-429), for two
 * categories. A verdict that neither judge gave has no agreement (undefined).
 * Errors: `no-data`, `invalid-input` for other than two categories.
 */
export function specificAgreement(table: RatingTable): Computed<SpecificAgreement> {
  const error = ratingTableError(table);
  if (error) return error;
  if (table.length !== 2) return failed('invalid-input', 'This needs exactly two categories.');
  const { cells } = shares(table);
  const both = cells[0]?.[0] ?? 0;
  const neither = cells[1]?.[1] ?? 0;
  const firstOnly = cells[0]?.[1] ?? 0;
  const secondOnly = cells[1]?.[0] ?? 0;
  const agreed = (share: number) => {
    const either = 2 * share + firstOnly + secondOnly;
    return either > 0 ? (2 * share) / either : undefined;
  };
  return computed({
    first: agreed(both),
    second: agreed(neither),
    prevalenceIndex: both - neither,
    biasIndex: firstOnly - secondOnly,
  });
}
