import { createContext, type ReactNode, useCallback, useContext, useState } from 'react';

type Announce = (text: string, urgency?: 'polite' | 'assertive') => void;

const AnnounceContext = createContext<Announce>(() => {});

interface Said {
  readonly text: string;
  readonly turn: number;
}

const silence: Said = { text: '', turn: 0 };

/** Says to a screen reader what changed on the screen without moving the focus. */
export function AnnouncerProvider({ children }: { children: ReactNode }) {
  const [polite, setPolite] = useState(silence);
  const [assertive, setAssertive] = useState(silence);
  const announce = useCallback<Announce>((text, urgency = 'polite') => {
    const set = urgency === 'polite' ? setPolite : setAssertive;
    set((before) => ({ text, turn: before.turn + 1 }));
  }, []);
  return (
    <AnnounceContext value={announce}>
      {children}
      <div className="visually-hidden" aria-live="polite" aria-atomic="true">
        <span key={polite.turn}>{polite.text}</span>
      </div>
      <div className="visually-hidden" aria-live="assertive" aria-atomic="true">
        <span key={assertive.turn}>{assertive.text}</span>
      </div>
    </AnnounceContext>
  );
}

export function useAnnounce(): Announce {
  return useContext(AnnounceContext);
}
