import { createContext, type ReactNode, useCallback, useContext, useMemo, useState } from 'react';
import { type Failure, storagePath } from '../desk/failure.ts';
import { useWords } from '../words/words.tsx';

export interface Notice {
  readonly id: number;
  readonly text: string;
  /** A problem stays until it is dismissed; a note goes by itself. */
  readonly kind: 'note' | 'problem';
  readonly undo?: (() => void) | undefined;
}

interface Notices {
  readonly notices: readonly Notice[];
  /** Says something in the message bar; with `undo` it offers to take the deed back. */
  tell(text: string, options?: { kind?: Notice['kind']; undo?: () => void }): void;
  tellFailure(failure: Failure): void;
  dismiss(id: number): void;
}

const NoticesContext = createContext<Notices>({
  notices: [],
  tell: () => {},
  tellFailure: () => {},
  dismiss: () => {},
});

let lastId = 0;
const noteMs = 8_000;

export function NoticesProvider({ children }: { children: ReactNode }) {
  const words = useWords();
  const [notices, setNotices] = useState<readonly Notice[]>([]);
  const dismiss = useCallback((id: number) => setNotices((list) => list.filter((notice) => notice.id !== id)), []);
  const tell = useCallback<Notices['tell']>(
    (text, { kind = 'note', undo } = {}) => {
      lastId += 1;
      const id = lastId;
      // The same sentence twice is one message, and a new note takes the place of the former; problems stay.
      setNotices((list) => [
        ...list.filter((notice) => notice.text !== text && notice.kind === 'problem').slice(-2),
        { id, text, kind, undo },
      ]);
      if (kind === 'note') setTimeout(() => dismiss(id), noteMs);
    },
    [dismiss],
  );
  const tellFailure = useCallback<Notices['tellFailure']>(
    (failure) => tell(failureText(failure, words), { kind: 'problem' }),
    [tell, words],
  );
  const value = useMemo(() => ({ notices, tell, tellFailure, dismiss }), [notices, tell, tellFailure, dismiss]);
  return <NoticesContext value={value}>{children}</NoticesContext>;
}

export function useNotices(): Notices {
  return useContext(NoticesContext);
}

/** What a failure is called on the screen: the desk's own sentence where it gave one. */
export function failureText(failure: Failure, words: ReturnType<typeof useWords>): string {
  const path = storagePath(failure);
  if (path !== null) return [words.shell.storage(path), failure.message].filter((part) => part !== '').join(' ');
  if (failure.code === 'LINK') return words.shell.lost;
  if (failure.code === 'BAD_REQUEST') return words.common.badInput;
  return failure.message === '' ? words.common.unknownFailure : failure.message;
}
