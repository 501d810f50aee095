import { useCallback, useEffect, useEffectEvent, useState } from 'react';
import type { DeskClient } from '../../link/connection.ts';
import { type Topic, useChanges } from './changes.tsx';
import { type Failure, failureOf } from './failure.ts';
import { useLink } from './link.ts';

/** A call's answer as it stands on a screen. */
export interface Reading<T> {
  /** The latest answer; it stays while it is read anew. */
  readonly data: T | undefined;
  readonly failure: Failure | undefined;
  readonly reading: boolean;
  /** Reads again now. */
  again(): void;
}

export interface CallOptions {
  /** Reads again when the desk says that one of these changed. */
  readonly topics?: readonly Topic[];
  /** Keeps showing the former key's answer until the new one is there: for a list that is being narrowed. */
  readonly keep?: boolean;
}

interface Held<T> {
  readonly key: string;
  readonly data: T | undefined;
  readonly failure: Failure | undefined;
  readonly reading: boolean;
}

/**
 * Makes a call of the contract and holds its answer. `key` names what is asked for: another key is another question.
 * @example useCall(`people ${archived}`, (client, signal) => client.people.list({ archived }, { signal }), { topics: ['people'] })
 */
export function useCall<T>(
  key: string,
  call: (client: DeskClient, signal: AbortSignal) => Promise<T>,
  { topics = [], keep = false }: CallOptions = {},
): Reading<T> {
  const link = useLink();
  const [round, setRound] = useState(0);
  const [held, setHeld] = useState<Held<T>>({ key, data: undefined, failure: undefined, reading: true });
  const ask = useEffectEvent((signal: AbortSignal) => call(link.client, signal));
  const again = useCallback(() => setRound((value) => value + 1), []);
  useChanges(topics, again);

  // biome-ignore lint/correctness/useExhaustiveDependencies: `round` asks again; the effect does not read it.
  useEffect(() => {
    const stop = new AbortController();
    setHeld((before) => {
      const data = before.key === key || keep ? before.data : undefined;
      return { key, data, failure: undefined, reading: true };
    });
    ask(stop.signal).then(
      (data) => {
        if (!stop.signal.aborted) setHeld({ key, data, failure: undefined, reading: false });
      },
      (error: unknown) => {
        if (stop.signal.aborted) return;
        setHeld((before) => ({ ...before, failure: failureOf(error), reading: false }));
      },
    );
    return () => stop.abort();
  }, [key, keep, link, round]);

  if (held.key === key || keep) return { data: held.data, failure: held.failure, reading: held.reading, again };
  return { data: undefined, failure: undefined, reading: true, again };
}
