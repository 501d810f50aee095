import { useState } from 'react';

/** What was typed into a form and not saved yet, for as long as the program runs: leaving the screen loses none of it. */
const drafts = new Map<string, unknown>();

export interface Draft<T> {
  readonly value: T;
  /** Whether anything was changed since the start. */
  readonly changed: boolean;
  set(value: T): void;
  /** The form is done with: saved, or given up. */
  drop(): void;
}

/** A form's state under a name; `initial` where nothing was typed under that name before. */
export function useDraft<T>(name: string, initial: T): Draft<T> {
  // One name, one type: each form has its own prefix.
  const [held, setHeld] = useState<{ name: string; value: T | undefined }>({ name, value: drafts.get(name) as T });
  const mine = held.name === name ? held.value : (drafts.get(name) as T | undefined);
  return {
    value: mine ?? initial,
    changed: mine !== undefined,
    set: (value) => {
      drafts.set(name, value);
      setHeld({ name, value });
    },
    drop: () => {
      drafts.delete(name);
      setHeld({ name, value: undefined });
    },
  };
}
