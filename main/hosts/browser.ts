import { randomBytes } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AnyRouter } from '@orpc/server';
import { type Place, refuseStranger, refuseUpgrade, sessionCookie, sessionOf, words } from './browser/gate.ts';
import { listenOn } from './browser/listen.ts';
import { sendEntry, sendRefusal } from './browser/pages.ts';
import { readRemembered, writeRemembered } from './browser/remembered.ts';
import { createSecrets, digest, newSecret, type Secrets } from './browser/secrets.ts';
import { deskSockets, refuseSocket } from './browser/sockets.ts';
import { createIntake } from './intake.ts';
import { pageHeaders } from './page-policy.ts';
import { type ScreenFiles, screenFiles } from './screen-files.ts';

export interface BrowserHostOptions {
  readonly router: AnyRouter;
  /** The folder of the built screens. */
  readonly screens: string;
  /** Where port, base path and sessions are remembered. */
  readonly rememberedFile: string;
  /** A port that must be it; otherwise the remembered one, or a free one. */
  readonly port?: number;
  readonly heartbeatMs?: number;
}

export interface BrowserHost {
  /** An address with a new key, good once. */
  readonly newAddress: () => string;
  readonly port: number;
  /** True where the remembered port was taken, so that what pages of that port kept is out of reach for now. */
  readonly moved: boolean;
  /** Stops the intake, lets the calls under way be answered, and closes every connection. */
  readonly close: () => Promise<void>;
}

/** What a request handler of the running host knows. */
interface Running {
  readonly place: Place;
  readonly secrets: Secrets;
  readonly files: ScreenFiles;
  readonly controlDigest: string;
  readonly newAddress: () => string;
}

const drainMs = 3_000;
const goodbyeMs = 500;

/**
 * Serves the screens and the desk on loopback, to the browser that was handed the address and to nobody else; the threats
 * and what is done against each stand in README.md. Rejects with `PortTaken` where `port` is not to be had.
 */
export async function startBrowserHost(options: BrowserHostOptions): Promise<BrowserHost> {
  const earlier = readRemembered(options.rememberedFile);
  const control = newSecret();
  const base = earlier?.base ?? randomBytes(16).toString('base64url');
  const server = createServer({ maxHeaderSize: 16_384, requestTimeout: 10_000, headersTimeout: 10_000 });
  server.maxConnections = 256;
  const { port, moved } = await listenOn(server, options.port, earlier?.port);
  const place: Place = { host: `127.0.0.1:${port}`, base: `/${base}/` };
  const secrets = createSecrets(earlier?.sessions ?? [], remember);
  const newAddress = (): string => `http://${place.host}${place.base}?key=${secrets.newKey()}`;
  const files = screenFiles(options.screens);
  const running: Running = { place, secrets, files, controlDigest: digest(control), newAddress };

  function remember(): void {
    writeRemembered(options.rememberedFile, { port, base, sessions: [...secrets.sessions()], control });
  }
  remember();

  const intake = createIntake();
  const sockets = deskSockets(options.router, intake, options.heartbeatMs ?? 15_000);
  server.on('request', (request, response) => void answer(request, response, running));
  server.on('upgrade', (request, socket, head) => {
    socket.on('error', () => socket.destroy());
    const refusal = refuseUpgrade(request, place, secrets);
    if (refusal === null) sockets.take(request, socket, head);
    else refuseSocket(socket, refusal);
  });

  return {
    newAddress,
    port,
    moved,
    close: async () => {
      const closed = closeServer(server);
      await intake.stop(drainMs);
      await sockets.close(goodbyeMs);
      server.closeAllConnections();
      await closed;
    },
  };
}

function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => server.close(() => resolve()));
}

async function answer(request: IncomingMessage, response: ServerResponse, running: Running): Promise<void> {
  try {
    await route(request, response, running);
  } catch (error) {
    console.error('plumbline: a request failed:', error);
    response.destroy();
  }
}

async function route(request: IncomingMessage, response: ServerResponse, running: Running): Promise<void> {
  const { place, secrets } = running;
  const stranger = refuseStranger(request, place);
  if (stranger !== null) return sendRefusal(response, stranger);
  const url = request.url ?? '';
  if (request.method === 'POST') return answerControl(request, response, running);
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return sendRefusal(response, { status: 405, words: words.method });
  }
  // Browsers ask for it beside any page, also beside the sentence that lets nobody in.
  if (url === '/favicon.ico') return void response.writeHead(204, { 'cache-control': 'no-store' }).end();
  const isSession = secrets.isSession(sessionOf(request));
  const key = keyIn(url, place);
  if (key !== null && isSession) return sendEntry(response, place.base, null);
  // A HEAD is a look, by a mail or chat program perhaps: it must not burn the key.
  if (key !== null && request.method === 'GET') {
    const secret = secrets.exchange(key);
    if (secret === null) return sendRefusal(response, { status: 403, words: words.burnt });
    return sendEntry(response, place.base, sessionCookie(secret, place));
  }
  if (!isSession || !url.startsWith(place.base)) return sendRefusal(response, { status: 403, words: words.door });
  if (url === `${place.base}pulse`) return void response.writeHead(204, { 'cache-control': 'no-store' }).end();
  const file = await running.files.read(url.slice(place.base.length).replace(/\?.*$/s, ''));
  if (file === null) return sendRefusal(response, { status: 404, words: words.missing });
  response.writeHead(200, {
    ...pageHeaders(`ws://${place.host}`),
    'content-type': file.type,
    'content-length': file.body.byteLength,
    'cache-control': file.cacheControl,
  });
  response.end(request.method === 'HEAD' ? undefined : file.body);
}

/** The key of an address that lets in, else null. */
function keyIn(url: string, place: Place): string | null {
  const prefix = `${place.base}?key=`;
  return url.startsWith(prefix) ? url.slice(prefix.length) : null;
}

/** A second start of the program, which can read the remembered file, asks for a new address. No page can: see Origin. */
function answerControl(request: IncomingMessage, response: ServerResponse, running: Running): void {
  const token = /^Bearer (.{1,100})$/.exec(request.headers.authorization ?? '')?.[1];
  const isControl = token !== undefined && digest(token) === running.controlDigest;
  if (!isControl || request.url !== `${running.place.base}address` || request.headers.origin !== undefined) {
    return sendRefusal(response, { status: 403, words: words.door });
  }
  response.writeHead(200, { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' });
  response.end(running.newAddress());
}
