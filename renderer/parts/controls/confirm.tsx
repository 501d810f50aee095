import { createContext, type ReactNode, useCallback, useContext, useId, useRef, useState } from 'react';
import { useWords } from '../words/words.tsx';
import { Button } from './button.tsx';
import styles from './confirm.module.css';
import { Dialog } from './dialog.tsx';

export interface Question {
  readonly title: string;
  readonly text?: string;
  /** What the button that goes ahead says: the deed, not "yes". */
  readonly deed: string;
  /** What the other says; "Cancel" unless told. */
  readonly stay?: string;
}

type Ask = (question: Question) => Promise<boolean>;

const ConfirmContext = createContext<Ask>(async () => false);

/** Asks before a deed that cannot be undone. */
export function ConfirmProvider({ children }: { children: ReactNode }) {
  const words = useWords().common;
  const titleId = useId();
  const textId = useId();
  const [question, setQuestion] = useState<Question | null>(null);
  const settle = useRef<(goAhead: boolean) => void>(() => {});
  const ask = useCallback<Ask>((next) => {
    settle.current(false);
    setQuestion(next);
    return new Promise((resolve) => {
      settle.current = resolve;
    });
  }, []);
  const answer = (goAhead: boolean): void => {
    setQuestion(null);
    settle.current(goAhead);
    settle.current = () => {};
  };
  return (
    <ConfirmContext value={ask}>
      {children}
      <Dialog
        open={question !== null}
        onClose={() => answer(false)}
        labelledBy={titleId}
        {...(question?.text === undefined ? {} : { describedBy: textId })}
      >
        <h2 id={titleId}>{question?.title}</h2>
        {question?.text === undefined ? null : <p id={textId}>{question.text}</p>}
        <div className={styles.actions}>
          <Button onClick={() => answer(false)} autoFocus>
            {question?.stay ?? words.cancel}
          </Button>
          <Button weight="main" onClick={() => answer(true)}>
            {question?.deed}
          </Button>
        </div>
      </Dialog>
    </ConfirmContext>
  );
}

/** Resolves to true where the user goes ahead. */
export function useConfirm(): Ask {
  return useContext(ConfirmContext);
}
