import { type ReactNode, useId } from 'react';
import styles from './night-form.module.css';

interface GroupProps {
  readonly title: string;
  readonly hint: string;
  readonly problem: string | undefined;
  readonly children: ReactNode;
}

/** Fields that belong together, with what is wrong with them as a whole. */
export function Group({ title, hint, problem, children }: GroupProps) {
  const id = useId();
  return (
    <fieldset className={styles.group} aria-describedby={`${id}-hint`}>
      <legend className={styles.legend}>{title}</legend>
      <p id={`${id}-hint`} className={styles.soft}>
        {hint}
      </p>
      {problem === undefined ? null : (
        <p className={styles.error} role="alert" tabIndex={-1} data-wrong>
          {problem}
        </p>
      )}
      {children}
    </fieldset>
  );
}
