import { createContext, type ReactNode, useContext, useEffect, useEffectEvent, useMemo } from 'react';
import type { Change } from '../../../shared-types/contract/desk.ts';
import { useLink } from './link.ts';

export type Topic = Change['topic'];

/** `null` stands for "something may have been missed": the stream broke and stands again. */
type Listener = (change: Change | null) => void;

const ChangesContext = createContext<Set<Listener>>(new Set());

/** One stream of the desk's changes for the whole program. */
export function ChangesProvider({ children }: { children: ReactNode }) {
  const link = useLink();
  const listeners = useMemo(() => new Set<Listener>(), []);
  useEffect(() => {
    let opened = false;
    const tell: Listener = (change) => {
      for (const listener of [...listeners]) listener(change);
    };
    return link.subscribe(
      async (_input: undefined, options) => {
        const items = await link.client.desk.changes(undefined, options);
        if (opened) tell(null);
        opened = true;
        return items;
      },
      undefined,
      tell,
    );
  }, [link, listeners]);
  return <ChangesContext value={listeners}>{children}</ChangesContext>;
}

/** Calls back whenever the desk says that something of these topics changed, or that a change may have been missed. */
export function useChanges(topics: readonly Topic[], onChange: (change: Change | null) => void): void {
  const listeners = useContext(ChangesContext);
  const tell = useEffectEvent((change: Change | null) => {
    if (change === null || topics.includes(change.topic)) onChange(change);
  });
  useEffect(() => {
    const listener: Listener = (change) => tell(change);
    listeners.add(listener);
    return () => {
      listeners.delete(listener);
    };
  }, [listeners]);
}
