import type { IncomingMessage } from 'node:http';
import type { Secrets } from './secrets.ts';

/** Where this host is: everything that a request must agree with. */
export interface Place {
  /** `127.0.0.1:port`. */
  readonly host: string;
  /** `/…/`, 128 random bits: cookies are not kept apart by port, but they are by path. */
  readonly base: string;
}

export interface Refusal {
  readonly status: 403 | 404 | 405 | 409 | 413 | 415 | 421 | 429 | 503;
  readonly words: string;
}

type Asked = Pick<IncomingMessage, 'headers' | 'method' | 'url'>;

export const words = {
  host: 'This address is not the one that the program printed. Open that one.',
  otherPage: 'Another page asked for this. Only the program’s own pages are answered.',
  door: 'This is a running Plumbline, and this address lets nobody in. Open the address that the program prints when it starts; start it again for a new one.',
  burnt:
    'This address has been used already, and each is good once. Start the program again, or press Enter where it runs, for a new one.',
  missing: 'There is nothing under this address.',
  method: 'This is not a way in which the program answers.',
};

/** The port-blind checks against other web pages: the name asked for, and who asks. Null where nothing speaks against it. */
export function refuseStranger(asked: Asked, place: Place): Refusal | null {
  // A name of somebody else's that was made to point here would carry that name in Host.
  if (asked.headers.host !== place.host) return { status: 421, words: words.host };
  const { origin } = asked.headers;
  if (origin !== undefined && origin !== `http://${place.host}`) return { status: 403, words: words.otherPage };
  const site = asked.headers['sec-fetch-site'];
  const fromElsewhere = site === 'cross-site' || site === 'same-site';
  const isVisit = asked.headers['sec-fetch-mode'] === 'navigate' && asked.headers['sec-fetch-dest'] === 'document';
  if (fromElsewhere && !isVisit) return { status: 403, words: words.otherPage };
  return null;
}

/** The session cookie's value in a request. */
export function sessionOf(asked: Asked): string | undefined {
  return cookieOf(asked, cookieName);
}

/** The value of a cookie of this name in a request. */
export function cookieOf(asked: Asked, name: string): string | undefined {
  const pairs = (asked.headers.cookie ?? '').split(';').map((pair) => pair.trim());
  return pairs.find((pair) => pair.startsWith(`${name}=`))?.slice(name.length + 1);
}

const cookieName = 'plumbline-session';

/** Set-Cookie for a session: out of the reach of scripts, never sent along by other sites, kept for 30 days. */
export function sessionCookie(secret: string, place: Place): string {
  return `${cookieName}=${secret}; Path=${place.base}; Max-Age=2592000; HttpOnly; SameSite=Strict`;
}

/** May this upgrade become a connection to the desk? A browser always names the origin of a WebSocket's page. */
export function refuseUpgrade(asked: Asked, place: Place, secrets: Secrets): Refusal | null {
  const stranger = refuseStranger(asked, place);
  if (stranger !== null) return stranger;
  if (asked.headers.origin === undefined) return { status: 403, words: words.otherPage };
  if (asked.method !== 'GET' || asked.url !== `${place.base}desk`) return { status: 404, words: words.missing };
  if (!secrets.isSession(sessionOf(asked))) return { status: 403, words: words.door };
  return null;
}
