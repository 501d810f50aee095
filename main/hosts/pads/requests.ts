import type { IncomingMessage, ServerResponse } from 'node:http';
import { joining, type PadStanding } from '../../../shared-types/contract/entrance.ts';
import { type Place, type Refusal, refuseStranger, words } from '../browser/gate.ts';
import { sendRefusal } from '../browser/pages.ts';
import { pageHeaders } from '../page-policy.ts';
import type { Pairing } from '../pairing.ts';
import type { ScreenFiles } from '../screen-files.ts';
import { padCookie, padOf, padWords, waitWords } from './gate.ts';
import type { PadRegistry } from './registry.ts';

/** What answers the plain requests of pads. */
export interface Requests {
  readonly place: Place;
  readonly files: ScreenFiles;
  readonly registry: PadRegistry;
  readonly pairing: Pairing;
  readonly now: () => number;
  /** Somebody joined, or codes were burnt. */
  readonly onChange: () => void;
}

/** A code and a name, and room for what a browser's JSON adds. */
const longestJoining = 1_024;

/**
 * Answers one request: the built screens (public: they hold nothing of anybody), who the pad is, and joining. A stranger
 * learns nothing but that this is a Plumbline.
 */
export async function answerPad(request: IncomingMessage, response: ServerResponse, parts: Requests): Promise<void> {
  const { place, registry } = parts;
  const stranger = refuseStranger(request, place);
  if (stranger !== null) return sendRefusal(response, stranger);
  const url = request.url ?? '';
  if (request.method === 'POST') {
    if (url !== `${place.base}join`) return sendRefusal(response, { status: 404, words: words.missing });
    return answerJoining(request, response, parts);
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return sendRefusal(response, { status: 405, words: words.method });
  }
  if (url === '/favicon.ico') return void response.writeHead(204, { 'cache-control': 'no-store' }).end();
  // What is typed is short; the page itself has a place of its own for each database.
  if (url === '/') return void response.writeHead(302, { location: place.base, 'cache-control': 'no-store' }).end();
  if (!url.startsWith(place.base)) return sendRefusal(response, { status: 404, words: words.missing });
  const name = url.slice(place.base.length).replace(/\?.*$/s, '');
  if (name === 'standing') {
    const pad = padOf(request, registry);
    return sendJson(response, 200, standingOf(pad?.id ?? null));
  }
  const file = await parts.files.read(name);
  if (file === null) return sendRefusal(response, { status: 404, words: words.missing });
  response.writeHead(200, {
    ...pageHeaders(`ws://${place.host}`),
    'content-type': file.type,
    'content-length': file.body.byteLength,
    'cache-control': file.cacheControl,
  });
  response.end(request.method === 'HEAD' ? undefined : file.body);
}

function standingOf(device: string | null): PadStanding {
  return device === null ? { standing: 'stranger', words: padWords.stranger } : { standing: 'joined', device };
}

async function answerJoining(request: IncomingMessage, response: ServerResponse, parts: Requests): Promise<void> {
  const { registry, place, pairing, now } = parts;
  const from = request.socket.remoteAddress ?? '';
  // A page of another site cannot send this without asking first, and asking is answered with a refusal.
  if (request.headers.origin === undefined) return refuse(response, { status: 403, words: words.otherPage });
  if (!/^application\/json\b/i.test(request.headers['content-type'] ?? '')) {
    return refuse(response, { status: 415, words: padWords.notJson });
  }
  const text = await readBody(request, longestJoining);
  if (text === null) return refuse(response, { status: 413, words: padWords.tooLarge });
  const given = joining.safeParse(parseJson(text));
  if (!given.success) return refuse(response, { status: 415, words: padWords.notJson });
  const known = padOf(request, registry);
  if (known !== null) return sendJson(response, 200, standingOf(known.id));
  const redeemed = pairing.redeem(given.data.code, from);
  if (redeemed.outcome === 'wait') {
    const headers = { 'retry-after': String(Math.ceil(redeemed.waitMs / 1_000)) };
    return refuse(response, { status: 429, words: waitWords(redeemed.waitMs) }, headers);
  }
  if (redeemed.outcome === 'wrong') {
    parts.onChange();
    return refuse(response, { status: 403, words: padWords.wrongCode });
  }
  const joined = keepJoined(() => registry.join(given.data.name, from, now()));
  if (joined === 'not-kept') return refuse(response, { status: 503, words: padWords.notKept });
  if (joined === null) return refuse(response, { status: 503, words: padWords.tooManyPads });
  parts.onChange();
  return sendJson(response, 200, standingOf(joined.pad.id), { 'set-cookie': padCookie(joined.secret, place) });
}

/** A full disk at the desk must not look like a desk that is away. */
function keepJoined<T>(join: () => T): T | 'not-kept' {
  try {
    return join();
  } catch (error) {
    console.error('plumbline: a pad that joined could not be kept:', error);
    return 'not-kept';
  }
}

function refuse(response: ServerResponse, { status, words }: Refusal, headers: Record<string, string> = {}): void {
  // What was not read of a refused request must not be taken for the next one.
  if (!response.req.complete) headers = { ...headers, connection: 'close' };
  sendJson(response, status, { standing: 'stranger', words }, headers);
}

function sendJson(
  response: ServerResponse,
  status: number,
  value: PadStanding,
  headers: Record<string, string> = {},
): void {
  const text = JSON.stringify(value);
  response.writeHead(status, {
    ...pageHeaders(),
    'content-type': 'application/json; charset=utf-8',
    'content-length': Buffer.byteLength(text),
    'cache-control': 'no-store',
    ...headers,
  });
  response.end(response.req.method === 'HEAD' ? undefined : text);
}

/** The body as text; null where it is longer than `most` bytes or breaks off. The server's time limit ends slow ones. */
function readBody(request: IncomingMessage, most: number): Promise<string | null> {
  return new Promise((resolve) => {
    const parts: Buffer[] = [];
    let length = 0;
    request.on('data', (part: Buffer) => {
      // Counted as it comes: a length that is told may be a lie.
      length += part.length;
      if (length <= most) return void parts.push(part);
      request.pause();
      resolve(null);
    });
    request.on('end', () => resolve(Buffer.concat(parts).toString('utf8')));
    request.on('close', () => resolve(null));
  });
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
