import type { ReactNode } from 'react';
import type { Failure } from '../desk/failure.ts';
import type { Reading } from '../desk/use-call.ts';
import { failureText } from '../shell/notices.tsx';
import { useWords } from '../words/words.tsx';
import { Button } from './button.tsx';
import styles from './loaded.module.css';

interface LoadedProps<T> {
  readonly reading: Reading<T>;
  readonly children: (data: T) => ReactNode;
}

/** Shows an answer when it is there; what it says meanwhile appears only where the desk takes its time. */
export function Loaded<T>({ reading, children }: LoadedProps<T>) {
  const words = useWords().common;
  const { data, failure, again } = reading;
  if (data !== undefined) {
    return (
      <>
        {children(data)}
        {failure === undefined ? null : <FailureNote failure={failure} onAgain={again} />}
      </>
    );
  }
  if (failure !== undefined) return <FailureNote failure={failure} onAgain={again} />;
  return (
    <p className={styles.reading} role="status">
      {words.reading}
    </p>
  );
}

interface FailureNoteProps {
  readonly failure: Failure;
  readonly onAgain?: (() => void) | undefined;
  /** What did not work, before why. */
  readonly deed?: string;
}

/** Says what did not work, and why, where it did not work. */
export function FailureNote({ failure, onAgain, deed }: FailureNoteProps) {
  const words = useWords();
  return (
    <div className={styles.failure} role="alert">
      <p>
        <strong>{deed ?? words.common.readFailed}</strong> {failureText(failure, words)}
      </p>
      {onAgain === undefined ? null : <Button onClick={onAgain}>{words.common.again}</Button>}
    </div>
  );
}
