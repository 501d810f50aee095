import type { ReactNode } from 'react';
import styles from './big-figures.module.css';

export interface BigFigure {
  readonly key: string;
  readonly name: string;
  readonly value: string;
  readonly notes?: readonly string[];
  readonly accent?: boolean;
}

/** The few figures of a view, large, each with what it needs beside it. */
export function BigFigures({ label, figures }: { label: string; figures: readonly BigFigure[] }): ReactNode {
  return (
    <section aria-label={label}>
      <dl className={styles.figures}>
        {figures.map(({ key, name, value, notes = [], accent }) => (
          <div key={key} className={styles.figure} data-testid={`total-${key}`}>
            <dt>{name}</dt>
            <dd className={styles.value} data-accent={accent === true}>
              {value}
            </dd>
            {notes.length === 0 ? null : (
              <dd className={styles.notes}>
                {notes.map((note) => (
                  <span key={note}>{note}</span>
                ))}
              </dd>
            )}
          </div>
        ))}
      </dl>
    </section>
  );
}
