import type { IncomingMessage } from 'node:http';
import { cookieOf, type Place, type Refusal, refuseStranger, words } from '../browser/gate.ts';
import type { PadRegistry } from './registry.ts';
import type { RememberedPad } from './remembered.ts';

/** Who asks, as the desk gets it for each call of a pad; nothing in a call can name another one. */
export interface PadAsking {
  readonly night: string;
  readonly device: string;
}

export const padWords = {
  stranger: 'This phone has not joined. Scan the code that the desk shows, or type it.',
  wrongCode: 'That code is not good: mistyped, used already, or older than ten minutes. Ask the desk for a new one.',
  notJson: 'This is not what a pad sends to join.',
  tooLarge: 'This is larger than anything a pad sends.',
  tooManyPads: 'More pads have joined than one night can have. The desk can send some away.',
  notKept: 'The desk cannot keep who joins: its disk may be full. Tell the desk, and ask for a new code.',
  crowded: 'Too many connections at once. Try again in a moment.',
  tooFast: 'Too many messages in a short time.',
  sentAway: 'The desk has sent this pad away.',
};

/** Seconds, in words, until a code may be tried again. */
export function waitWords(waitMs: number): string {
  const seconds = Math.ceil(waitMs / 1_000);
  return `Too many wrong codes from this phone. Try again in ${seconds} seconds.`;
}

const cookieName = 'plumbline-pad';

/** The pad that a request comes from, by its cookie; null for a stranger. */
export function padOf(asked: Pick<IncomingMessage, 'headers'>, registry: PadRegistry): RememberedPad | null {
  return registry.bySecret(cookieOf(asked, cookieName));
}

/** Set-Cookie of a pad: out of the reach of scripts, never sent along by other sites, kept for two days. */
export function padCookie(secret: string, place: Place): string {
  return `${cookieName}=${secret}; Path=${place.base}; Max-Age=172800; HttpOnly; SameSite=Strict`;
}

/** May this upgrade become a connection to the desk? Who asks, or why not. */
export function askingFor(asked: IncomingMessage, place: Place, registry: PadRegistry): PadAsking | Refusal {
  const stranger = refuseStranger(asked, place);
  if (stranger !== null) return stranger;
  if (asked.headers.origin === undefined) return { status: 403, words: words.otherPage };
  if (asked.method !== 'GET' || asked.url !== `${place.base}desk`) return { status: 404, words: words.missing };
  const pad = padOf(asked, registry);
  const night = registry.night();
  if (pad === null || night === null) return { status: 403, words: padWords.stranger };
  return { night, device: pad.id };
}
