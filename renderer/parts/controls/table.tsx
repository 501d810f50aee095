import type { ReactNode } from 'react';
import { classNames } from '../look/class-names.ts';
import styles from './table.module.css';

export interface Column<Row> {
  readonly key: string;
  readonly head: ReactNode;
  readonly cell: (row: Row, index: number) => ReactNode;
  /** Figures stand right-aligned in the mono face, so that they can be compared down the column. */
  readonly figures?: boolean;
}

interface TableProps<Row> {
  /** For the screen reader, and seen where `showCaption`. */
  readonly caption: string;
  readonly showCaption?: boolean;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row, index: number) => string;
}

/** Values in rows. The first column heads its row. It scrolls sideways in itself where it is too wide. */
export function Table<Row>({ caption, showCaption, columns, rows, rowKey }: TableProps<Row>) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard.
    <section className={styles.scroll} tabIndex={0} aria-label={caption}>
      <table className={styles.table}>
        <caption className={showCaption ? styles.caption : 'visually-hidden'}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.key} scope="col" className={classNames(column.figures && styles.figures)}>
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={rowKey(row, index)}>
              {columns.map((column, place) =>
                place === 0 ? (
                  <th key={column.key} scope="row" className={classNames(column.figures && styles.figures)}>
                    {column.cell(row, index)}
                  </th>
                ) : (
                  <td key={column.key} className={classNames(column.figures && styles.figures)}>
                    {column.cell(row, index)}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
