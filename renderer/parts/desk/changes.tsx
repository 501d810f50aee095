import { createContext, type ReactNode, useContext, useEffect, useEffectEvent, useMemo, useRef } from 'react';
import type { Change } from '../../../shared-types/contract/desk.ts';
import { useSubscription } from './use-subscription.ts';

export type Topic = Change['topic'];

/** `null` stands for "something may have been missed": the stream broke and stands again. */
type Listener = (change: Change | null) => void;

const ChangesContext = createContext<Set<Listener>>(new Set());

/** One stream of the desk's changes for the whole program. */
export function ChangesProvider({ children }: { children: ReactNode }) {
  const listeners = useMemo(() => new Set<Listener>(), []);
  const opened = useRef(false);
  const tell: Listener = (change) => {
    for (const listener of [...listeners]) listener(change);
  };
  useSubscription(
    'changes',
    async (client, signal) => {
      const items = await client.desk.changes(undefined, { signal });
      if (opened.current) tell(null);
      opened.current = true;
      return items;
    },
    tell,
  );
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
