/** A value that tells when it changes. `get` and `subscribe` are bound: `useSyncExternalStore(one.subscribe, one.get)`. */
export interface Observable<T> {
  readonly get: () => T;
  /** Calls `listener` after every change; the answer ends that. */
  readonly subscribe: (listener: () => void) => () => void;
}

export interface Settable<T> extends Observable<T> {
  /** Sets the value; listeners hear of it only where it is another one. */
  readonly set: (value: T) => void;
}

export function settable<T>(initial: T): Settable<T> {
  let value = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => value,
    subscribe: (listener) => {
      // A wrapper of its own, so that one function given twice is two subscriptions.
      const own = () => listener();
      listeners.add(own);
      return () => listeners.delete(own);
    },
    set: (next) => {
      if (Object.is(next, value)) return;
      value = next;
      for (const listener of [...listeners]) listener();
    },
  };
}
