import { createContext, useContext, useSyncExternalStore } from 'react';
import type { ConnectionState } from '../../link/connection.ts';
import type { Link } from '../../link/link.ts';

const LinkContext = createContext<Link | null>(null);
export const LinkProvider = LinkContext.Provider;

/** The page's way to the desk: calls, streams, the outbox, the logs of sets. */
export function useLink(): Link {
  const link = useContext(LinkContext);
  if (link === null) throw new Error('a screen stands outside the link provider');
  return link;
}

export function useConnectionState(): ConnectionState {
  const { state } = useLink();
  return useSyncExternalStore(state.subscribe, state.get);
}

/** What is wrong with the connection, in words for the user; null while it holds. */
export function useTrouble(): string | null {
  const { trouble } = useLink();
  return useSyncExternalStore(trouble.subscribe, trouble.get);
}
