import { useCallback, useState } from 'react';
import type { DeskClient } from '../../link/connection.ts';
import { type Failure, failureOf } from './failure.ts';
import { useLink } from './link.ts';

export interface Action<A extends readonly unknown[], T> {
  /** Resolves to the answer, or to undefined after a failure. */
  run(...input: A): Promise<T | undefined>;
  readonly busy: boolean;
  readonly failure: Failure | undefined;
  forget(): void;
}

/** A call that changes something, made when the user says so. `call` must not depend on what a render made. */
export function useAction<A extends readonly unknown[], T>(
  call: (client: DeskClient, ...input: A) => Promise<T>,
): Action<A, T> {
  const link = useLink();
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<Failure | undefined>(undefined);
  const run = async (...input: A): Promise<T | undefined> => {
    setBusy(true);
    setFailure(undefined);
    try {
      return await call(link.client, ...input);
    } catch (error) {
      setFailure(failureOf(error));
      return undefined;
    } finally {
      setBusy(false);
    }
  };
  return { run, busy, failure, forget: useCallback(() => setFailure(undefined), []) };
}
