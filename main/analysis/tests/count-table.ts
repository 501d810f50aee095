import { type Computed, failed } from '../result.ts';

/** Counts by row and column, all rows equally long. */
export type CountTable = readonly (readonly number[])[];

/** A typed error when `table` is no table of whole counts, or holds none at all, else nothing. */
export function countTableError(table: CountTable): Computed<never> | undefined {
  const width = table[0]?.length ?? 0;
  if (table.some((row) => row.length !== width || row.some((count) => !Number.isSafeInteger(count) || count < 0))) {
    return failed('invalid-input', 'The table must have rows of one length and whole counts that are not negative.');
  }
  return table.some((row) => row.some((count) => count > 0)) ? undefined : failed('no-data', 'The table is empty.');
}

/** Row sums, column sums and grand total. */
export function tableMargins(table: CountTable): { rows: number[]; columns: number[]; total: number } {
  const rows = table.map((row) => row.reduce((sum, count) => sum + count, 0));
  const columns = Array.from(table[0] ?? [], (_, j) => table.reduce((sum, row) => sum + (row[j] ?? 0), 0));
  return { rows, columns, total: rows.reduce((sum, row) => sum + row, 0) };
}

/** The table less its rows and columns that hold no count. */
export function withoutEmptyLines(table: CountTable): CountTable {
  const { rows, columns } = tableMargins(table);
  return table.filter((_, i) => rows[i] !== 0).map((row) => row.filter((_, j) => columns[j] !== 0));
}
