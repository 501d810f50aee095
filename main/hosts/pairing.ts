import { randomInt } from 'node:crypto';

/**
 * Short codes by which a pad joins: good once and for some minutes, drawn at random, held in memory only. Guessing is
 * met twice: an address that is wrong too often must wait, longer each time, and too many wrong codes in all burn every
 * code that is out, so that no number of addresses gives more guesses at one code.
 */
export interface Pairing {
  /** A new code. `expiresAt` in milliseconds since 1970 UTC. */
  readonly newCode: () => { readonly code: string; readonly expiresAt: number };
  /** Burns the code if it is good. `from` is the network address that tries it. */
  readonly redeem: (typed: string, from: string) => Redeemed;
  /** True after codes were burnt because of guessing, until a new one is drawn. */
  readonly guessed: () => boolean;
  /** No code is good any more. */
  readonly clear: () => void;
}

export type Redeemed =
  | { readonly outcome: 'good' }
  | { readonly outcome: 'wrong' }
  /** Not even looked at; `waitMs` until this address may try again. */
  | { readonly outcome: 'wait'; readonly waitMs: number };

/** No letter or digit that is taken for another one, on paper or across a hall. */
const letters = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
const length = 6;
const goodMs = 10 * 60_000;
/** Wrong codes that an address may send before it has to wait, and how long at first and at most. */
const freeTries = 5;
const firstWaitMs = 60_000;
const longestWaitMs = 15 * 60_000;
/**
 * Wrong codes in all, since the last new code, after which those that are out are burnt: with 64 codes out, of 31^6,
 * guessing succeeds at best once in half a million such rounds, each of which takes a person at the desk.
 * @internal exported for its test
 */
export const mostWrong = 30;
const mostCodes = 64;
const mostAddresses = 4_096;

interface Tries {
  wrong: number;
  waits: number;
  until: number;
}

/** @param now milliseconds since 1970 UTC */
export function createPairing(now: () => number = Date.now): Pairing {
  const codes = new Map<string, number>();
  const tries = new Map<string, Tries>();
  let wrongInAll = 0;
  let burnt = false;

  function punish(from: string): void {
    const own = tries.get(from) ?? { wrong: 0, waits: 0, until: 0 };
    own.wrong += 1;
    if (own.wrong >= freeTries) {
      own.until = now() + Math.min(firstWaitMs * 2 ** own.waits, longestWaitMs);
      own.waits += 1;
      own.wrong = 0;
    }
    tries.delete(from);
    tries.set(from, own);
    for (const oldest of [...tries.keys()].slice(0, -mostAddresses)) tries.delete(oldest);
    wrongInAll += 1;
    if (wrongInAll < mostWrong) return;
    burnt = true;
    codes.clear();
  }

  return {
    newCode: () => {
      for (const [code, expiresAt] of codes) if (expiresAt <= now()) codes.delete(code);
      const code = Array.from({ length }, () => letters[randomInt(letters.length)]).join('');
      const expiresAt = now() + goodMs;
      codes.set(code, expiresAt);
      for (const oldest of [...codes.keys()].slice(0, -mostCodes)) codes.delete(oldest);
      wrongInAll = 0;
      burnt = false;
      return { code, expiresAt };
    },
    redeem: (typed, from) => {
      const waitMs = (tries.get(from)?.until ?? 0) - now();
      if (waitMs > 0) return { outcome: 'wait', waitMs };
      const code = typed.toUpperCase().replaceAll(/[\s-]/g, '');
      const expiresAt = codes.get(code);
      if (expiresAt !== undefined && expiresAt > now()) {
        codes.delete(code);
        tries.delete(from);
        return { outcome: 'good' };
      }
      punish(from);
      return { outcome: 'wrong' };
    },
    guessed: () => burnt,
    clear: () => {
      codes.clear();
      wrongInAll = 0;
      burnt = false;
    },
  };
}
