import { type ReactNode, useId } from 'react';
import { useWords } from '../words/words.tsx';
import styles from './figure.module.css';
import { type Column, Table } from './table.tsx';

interface FigureProps<Row> {
  /** What is shown, with its unit. */
  readonly title: string;
  /** How the figures come about, with the method's name and source. */
  readonly how?: ReactNode;
  readonly table?: {
    columns: readonly Column<Row>[];
    rows: readonly Row[];
    rowKey: (row: Row, index: number) => string;
  };
  readonly children: ReactNode;
}

/** A drawing with its title, how it was computed, and the same values as a table. */
export function Figure<Row>({ title, how, table, children }: FigureProps<Row>) {
  const words = useWords().common;
  const id = useId();
  return (
    <figure className={styles.figure} aria-labelledby={id}>
      <figcaption id={id} className={styles.title}>
        {title}
      </figcaption>
      {children}
      <div className={styles.more}>
        {how === undefined ? null : (
          <details>
            <summary>{words.howComputed}</summary>
            <div className={styles.how}>{how}</div>
          </details>
        )}
        {table === undefined ? null : (
          <details className="no-print">
            <summary>{words.valuesAsTable}</summary>
            <Table caption={title} {...table} />
          </details>
        )}
      </div>
    </figure>
  );
}
