import { stepTo } from './use-walk.ts';

/** Where the pointer or the keyboard is: a row, and within it a mark (-1: the row as a whole). */
export interface RowPlace {
  readonly row: number;
  readonly mark: number;
}

/** Up and down among the rows, right and left among the marks of a row; null where the key leads nowhere. */
export function nextPlace(
  key: string,
  { row, mark }: RowPlace,
  rows: number,
  marksOf: (row: number) => number,
): RowPlace | null {
  if (row !== -1 && marksOf(row) > 0) {
    if (key === 'ArrowRight') return { row, mark: Math.min(marksOf(row) - 1, mark + 1) };
    if (key === 'ArrowLeft') return { row, mark: Math.max(-1, mark - 1) };
  }
  const next = stepTo(key === 'ArrowRight' ? 'ArrowDown' : key === 'ArrowLeft' ? 'ArrowUp' : key, row, rows);
  return next === null ? null : { row: next, mark: -1 };
}
