import { type Computed, failed } from '../result.ts';

/** Counts of pairs: row = category of the first judge, column = category of the second; square. */
export type RatingTable = readonly (readonly number[])[];

/** A typed error when `table` is not square, holds negative numbers or nothing, else nothing. */
export function ratingTableError(table: RatingTable): Computed<never> | undefined {
  if (table.length === 0 || table.some((row) => row.length !== table.length || row.some((count) => !(count >= 0)))) {
    return failed('invalid-input', 'The table must be square, with counts that are not negative.');
  }
  return total(table) > 0 ? undefined : failed('no-data', 'No pair was judged by both.');
}

function total(table: RatingTable): number {
  return table.reduce((sum, row) => sum + row.reduce((part, count) => part + count, 0), 0);
}

/** Share of each cell, and the two margins. */
export function shares(table: RatingTable): { cells: number[][]; rows: number[]; columns: number[]; n: number } {
  const n = total(table);
  const cells = table.map((row) => row.map((count) => count / n));
  const rows = cells.map((row) => row.reduce((sum, share) => sum + share, 0));
  const columns = cells.map((_, j) => cells.reduce((sum, row) => sum + (row[j] ?? 0), 0));
  return { cells, rows, columns, n };
}
