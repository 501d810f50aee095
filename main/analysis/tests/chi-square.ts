import { chiSquareUpperTail } from '../distributions/chi-square.ts';
import { type Computed, computed, failed } from '../result.ts';
import { type CountTable, countTableError, tableMargins, withoutEmptyLines } from './count-table.ts';

export type ChiSquareTest = {
  readonly statistic: number;
  readonly degrees: number;
  readonly pValue: number;
  /** Expected counts, Pearson residuals and standardised residuals (Haberman 1973), a row a row of the table kept. */
  readonly expected: readonly (readonly number[])[];
  readonly residuals: readonly (readonly number[])[];
  readonly standardisedResiduals: readonly (readonly number[])[];
  /** Smallest expected count: below about 5 the approximation is poor (Cochran 1954) and Fisher's test better. */
  readonly smallestExpected: number;
};

/**
 * Pearson's chi-square test of independence (1900) in an r x c table of counts; `continuity` applies Yates' correction
 * (1934), to 2 x 2 tables only. Rows and columns without any count are left out.
 * Errors: `no-data`, `one-category` when fewer than two rows or columns hold counts, `invalid-input`.
 */
export function chiSquareTest(table: CountTable, { continuity = false } = {}): Computed<ChiSquareTest> {
  const error = countTableError(table);
  if (error) return error;
  const kept = withoutEmptyLines(table);
  const { rows, columns, total } = tableMargins(kept);
  if (rows.length < 2 || columns.length < 2) {
    return failed('one-category', 'Fewer than two rows or two columns hold counts, so there is nothing to compare.');
  }
  const expected = rows.map((row) => columns.map((column) => (row * column) / total));
  const cells = kept.flatMap((line, i) => line.map((observed, j) => ({ observed, expected: expected[i]?.[j] ?? 0 })));
  const twoByTwo = rows.length === 2 && columns.length === 2;
  const largestStep = Math.max(...cells.map((cell) => Math.abs(cell.observed - cell.expected)));
  const correction = continuity && twoByTwo ? Math.min(0.5, largestStep) : 0;
  const statistic = cells.reduce(
    (sum, cell) => sum + (Math.abs(cell.observed - cell.expected) - correction) ** 2 / cell.expected,
    0,
  );
  const degrees = (rows.length - 1) * (columns.length - 1);
  const residuals = kept.map((line, i) =>
    line.map((observed, j) => (observed - (expected[i]?.[j] ?? 0)) / Math.sqrt(expected[i]?.[j] ?? 1)),
  );
  const standardisedResiduals = residuals.map((line, i) =>
    line.map((residual, j) => residual / Math.sqrt((1 - (rows[i] ?? 0) / total) * (1 - (columns[j] ?? 0) / total))),
  );
  return computed({
    statistic,
    degrees,
    pValue: chiSquareUpperTail(statistic, degrees),
    expected,
    residuals,
    standardisedResiduals,
    smallestExpected: Math.min(...cells.map((cell) => cell.expected)),
  });
}
