import { type ReactNode, useId } from 'react';
import { classNames } from '../look/class-names.ts';
import styles from './card.module.css';

interface CardProps {
  readonly title?: ReactNode;
  readonly actions?: ReactNode;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}

/** A sheet of content that belongs together. */
export function Card({ title, actions, className, children }: CardProps) {
  const id = useId();
  return (
    <section className={classNames(styles.card, 'whole-on-page', className)} aria-labelledby={title ? id : undefined}>
      {title === undefined ? null : (
        <header className={styles.head}>
          <h2 id={id} className={styles.title}>
            {title}
          </h2>
          {actions}
        </header>
      )}
      {children}
    </section>
  );
}

interface EmptyStateProps {
  readonly title: string;
  readonly text?: string;
  readonly action?: ReactNode;
}

/** What stands where nothing is yet: what would be here, and the way to the first one. */
export function EmptyState({ title, text, action }: EmptyStateProps) {
  return (
    <div className={styles.empty}>
      <p className={styles.emptyTitle}>{title}</p>
      {text === undefined ? null : <p>{text}</p>}
      {action === undefined ? null : <div>{action}</div>}
    </div>
  );
}
