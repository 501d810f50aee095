import { createHash, randomBytes } from 'node:crypto';

/**
 * Who is let in. A key stands in the address that the program prints and is good once; it is exchanged for the secret of
 * a session, which the browser keeps in a cookie. Only digests are held, so a look-up tells nothing by its duration and
 * the remembered file lets nobody in.
 */
export interface Secrets {
  /** A new key, 256 random bits; good once, and no longer once five newer ones exist. */
  readonly newKey: () => string;
  /** Burns the key and answers the secret of a new session; null for a key that is not good (any more). */
  readonly exchange: (key: string) => string | null;
  readonly isSession: (secret: string | undefined) => boolean;
  /** Digests of the sessions, oldest first. */
  readonly sessions: () => readonly string[];
}

const mostKeys = 5;
const mostSessions = 50;

/** @param remembered digests of sessions of earlier runs: an open page goes on after a restart */
export function createSecrets(remembered: readonly string[], onChange: () => void = () => {}): Secrets {
  const keys = new Set<string>();
  const sessions = new Set(remembered.slice(-mostSessions));
  return {
    newKey: () => {
      const key = newSecret();
      keepLast(keys.add(digest(key)), mostKeys);
      return key;
    },
    exchange: (key) => {
      if (!keys.delete(digest(key))) return null;
      const secret = newSecret();
      keepLast(sessions.add(digest(secret)), mostSessions);
      onChange();
      return secret;
    },
    isSession: (secret) => secret !== undefined && sessions.has(digest(secret)),
    sessions: () => [...sessions],
  };
}

/** 256 random bits, in letters that need no escape in an address. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url');
}

export function digest(secret: string): string {
  return createHash('sha256').update(secret).digest('base64url');
}

function keepLast(list: Set<string>, most: number): void {
  for (const oldest of [...list].slice(0, -most)) list.delete(oldest);
}
