import { useEffect, useEffectEvent, useState } from 'react';
import type { DeskClient } from '../../link/connection.ts';
import { type Failure, failureOf } from './failure.ts';
import { useLink } from './link.ts';

/**
 * Follows a stream of the contract while the screen stands, and opens it again, from its beginning, when it breaks.
 * `key` names the stream, `null` follows none. Answers the desk's refusal, if it refused.
 * @example useSubscription(id, (client, signal) => client.sets.watch({ id }, { signal }), ({ events }) => add(events))
 */
export function useSubscription<T>(
  key: string | null,
  open: (client: DeskClient, signal: AbortSignal) => Promise<AsyncIterator<T, unknown, unknown>>,
  onItem: (item: T) => void,
): Failure | undefined {
  const link = useLink();
  const [refused, setRefused] = useState<{ key: string; failure: Failure } | null>(null);
  const openNow = useEffectEvent((signal: AbortSignal) => open(link.client, signal));
  const take = useEffectEvent(onItem);
  useEffect(() => {
    if (key === null) return;
    const call = (_input: undefined, { signal }: { signal: AbortSignal }) => openNow(signal);
    return link.subscribe(
      call,
      undefined,
      (item: T) => take(item),
      (error) => setRefused({ key, failure: failureOf(error) }),
    );
  }, [key, link]);
  return refused?.key === key ? refused.failure : undefined;
}
