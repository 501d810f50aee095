import type { ReactNode } from 'react';
import { Figure } from '../../../parts/controls/figure.tsx';
import type { Column } from '../../../parts/controls/table.tsx';
import { classNames } from '../../../parts/look/class-names.ts';
import { useWords } from '../../../parts/words/words.tsx';
import cardStyles from './evidence.module.css';
import styles from './view.module.css';

interface EvidenceProps<Row> {
  readonly title: string;
  /** How much of the grid it takes; `alone` where it stands in a column with others. */
  readonly size: 'wide' | 'half' | 'pair' | 'slim' | 'full' | 'alone';
  /** Rows upon rows: on paper it gets more height. */
  readonly tall?: boolean;
  /** What the figure says, in a sentence, before one looks at it. */
  readonly telling?: ReactNode;
  readonly how: readonly string[];
  readonly table?: {
    readonly columns: readonly Column<Row>[];
    readonly rows: readonly Row[];
    readonly rowKey: (row: Row, index: number) => string;
  };
  /** What stands under the drawing. */
  readonly note?: string;
  readonly testId?: string;
  readonly children: ReactNode;
}

/** One piece of evidence: its title, what it says, the drawing, its values as a table, how it was computed. */
export function Evidence<Row>({ title, size, tall, telling, how, table, note, testId, children }: EvidenceProps<Row>) {
  const { interval } = useWords().review.how;
  return (
    <section
      className={classNames(
        cardStyles.card,
        size === 'alone' ? undefined : styles[size],
        tall && styles.tall,
        'whole-on-page',
      )}
      data-testid={testId}
    >
      <Figure
        title={title}
        how={[...how, interval].map((sentence) => <p key={sentence}>{sentence}</p>)}
        {...(table === undefined ? {} : { table })}
      >
        {telling === undefined ? null : <p className={styles.telling}>{telling}</p>}
        {children}
        {note === undefined ? null : <p className={styles.note}>{note}</p>}
      </Figure>
    </section>
  );
}
