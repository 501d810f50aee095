import { type Joining, type PadStanding, padStanding } from '../../../shared-types/contract/entrance.ts';

/** How a phone comes in: what the host says of it, and the code that it sends. Plain requests, no Web Crypto. */

const answerMs = 5_000;

/** What came of asking: `away` where nobody answers. */
export type Entry = PadStanding | { readonly standing: 'away'; readonly words: string };

const away: Entry = {
  standing: 'away',
  words: 'The desk does not answer. Is this phone in the gym’s Wi-Fi, and the way in open?',
};

/** Whether this page is a pad's: the host serves them below a path of their own. */
export function isPadPage(place: Pick<Location, 'protocol' | 'pathname'>): boolean {
  return place.protocol === 'http:' && place.pathname.startsWith('/pad/');
}

/** The code in the address that the QR code carries; empty where there is none. */
export function codeIn(hash: string): string {
  return /^#\/join\/([A-Za-z0-9-]{1,32})$/.exec(hash)?.[1] ?? '';
}

/**
 * A code as it is read aloud: upper case, without blanks and dashes.
 * @internal exported for its test
 */
export function plainCode(typed: string): string {
  return typed.toUpperCase().replaceAll(/[\s-]/g, '');
}

/** Who this phone is to the host. Never rejects. @param base the page's own address */
export function readStanding(base: string): Promise<Entry> {
  return ask(new URL('standing', base), { cache: 'no-store' });
}

/** Joins with a code: the host hands over this phone's secret as a cookie. Never rejects. */
export function sendCode(base: string, given: Joining): Promise<Entry> {
  return ask(new URL('join', base), {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ ...given, code: plainCode(given.code) }),
  });
}

async function ask(address: URL, request: RequestInit): Promise<Entry> {
  try {
    const answer = await fetch(address, { ...request, signal: AbortSignal.timeout(answerMs) });
    return padStanding.parse(await answer.json());
  } catch {
    return away;
  }
}

/** Why a pad's connection could not be opened, in words. */
export async function whyNoPad(base: string): Promise<string> {
  const entry = await readStanding(base);
  if (entry.standing === 'stranger') {
    return 'The desk no longer knows this phone. Ask for a new code; calls that were not sent are kept here until then.';
  }
  return 'The Wi-Fi or the desk is gone. Judge on: calls are kept here and sent when it is back.';
}
