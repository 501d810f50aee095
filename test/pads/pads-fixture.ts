import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { request } from 'node:http';
import { createServer } from 'node:net';
import path from 'node:path';
import { createORPCClient } from '@orpc/client';
import { RPCLink } from '@orpc/client/websocket';
import { os, type RouterClient } from '@orpc/server';
import { WebSocket } from 'ws';
import { z } from 'zod';
import type { PadAsking } from '../../main/hosts/pads/gate.ts';
import { createPads, type Pads, type PadsOptions } from '../../main/hosts/pads.ts';
import { plantFolder } from '../hosts/browser-fixture.ts';

export const night = '3f0c3a44-6a2e-4a8e-9f1c-2f7c1a9b7e10';
const ends: (() => unknown)[] = [];

/** Closes all that was started; for `afterEach`. */
export async function endAll(): Promise<void> {
  for (const end of ends.splice(0).reverse()) await end();
}

export function atEnd(end: () => unknown): void {
  ends.push(end);
}

/** A router that tells a pad who the host says it is, and streams until it is cut. */
export function echoRouter() {
  const base = os.$context<PadAsking>();
  return base.router({
    who: base.handler(({ context }) => ({ ...context })),
    echo: base.input(z.object({ text: z.string() })).handler(({ input }) => input.text),
  });
}

/** The calls of `echoRouter` over a connection. */
export function clientOver(socket: WebSocket): RouterClient<ReturnType<typeof echoRouter>> {
  // The ws package's socket has the interface of a page's for all that oRPC uses.
  return createORPCClient(new RPCLink({ websocket: socket as unknown as globalThis.WebSocket }));
}

/** A port that nothing listens at just now. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      const port = typeof address === 'object' && address !== null ? address.port : 0;
      probe.close(() => resolve(port));
    });
  });
}

export interface Opened {
  readonly pads: Pads;
  readonly port: number;
  /** `/…/`. */
  readonly base: string;
  readonly folder: string;
  readonly options: PadsOptions;
}

/** The pads' way in, opened on loopback. */
export async function openPads(given: Partial<PadsOptions> = {}, planted = plantFolder()): Promise<Opened> {
  ends.push(() => rmSync(planted.folder, { recursive: true, force: true }));
  const options: PadsOptions = {
    router: echoRouter(),
    screens: planted.screens,
    rememberedFile: path.join(planted.folder, 'pads.json'),
    ...given,
  };
  const pads = createPads(options);
  ends.push(() => pads.close());
  const port = await freePort();
  await pads.open(night, '127.0.0.1', port);
  return { pads, port, base: baseOf(pads), folder: planted.folder, options };
}

/** The path of the pads' page, as the QR code names it. */
function baseOf(pads: Pads): string {
  return new URL(pads.newCode()?.link ?? '').pathname;
}

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

export interface Asking {
  readonly port: number;
  readonly path: string;
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
  readonly localAddress?: string;
}

/** A request exactly as written. */
export function ask({ port, path: asked, method = 'GET', headers = {}, body, localAddress }: Asking): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const own = localAddress === undefined ? {} : { localAddress };
    const outgoing = request(
      { host: '127.0.0.1', port, path: asked, method, headers, agent: false, ...own },
      (incoming) => {
        let text = '';
        incoming.setEncoding('utf8');
        incoming.on('data', (part: string) => {
          text += part;
        });
        incoming.on('end', () => resolve({ status: incoming.statusCode ?? 0, headers: incoming.headers, text }));
      },
    );
    outgoing.on('error', reject);
    outgoing.end(body);
  });
}

/** Sends a code as the pads' page does. */
export function sendCode(
  { port, base }: Pick<Opened, 'port' | 'base'>,
  code: string,
  more: { name?: string; headers?: Record<string, string>; localAddress?: string } = {},
): Promise<Answer> {
  const headers = { origin: `http://127.0.0.1:${port}`, 'content-type': 'application/json', ...more.headers };
  const body = JSON.stringify({ code, name: more.name ?? '' });
  const own = more.localAddress === undefined ? {} : { localAddress: more.localAddress };
  return ask({ port, path: `${base}join`, method: 'POST', headers, body, ...own });
}

export interface Joined {
  readonly device: string;
  readonly cookie: string;
}

/** Joins with a new code. */
export async function join(opened: Pick<Opened, 'pads' | 'port' | 'base'>, name = ''): Promise<Joined> {
  const answer = await sendCode(opened, opened.pads.newCode()?.code ?? '', { name });
  const [cookie = ''] = String(answer.headers['set-cookie']).split(';');
  return { device: JSON.parse(answer.text).device, cookie };
}

/** Opens the pad's WebSocket; resolves to it, or to the status and words with which it was refused. */
export function connectPad(
  { port, base }: Pick<Opened, 'port' | 'base'>,
  cookie: string,
  more: { origin?: string; host?: string; path?: string; localAddress?: string } = {},
): Promise<WebSocket | { status: number; words: string }> {
  return new Promise((resolve, reject) => {
    const headers = { cookie, ...(more.host === undefined ? {} : { host: more.host }) };
    const origin = more.origin ?? `http://127.0.0.1:${port}`;
    const named = origin === '' ? {} : { origin };
    const own = more.localAddress === undefined ? {} : { localAddress: more.localAddress };
    const socket = new WebSocket(`ws://127.0.0.1:${port}${more.path ?? `${base}desk`}`, { headers, ...named, ...own });
    ends.push(() => socket.terminate());
    socket.on('open', () => resolve(socket));
    socket.on('unexpected-response', (_request, response) => {
      let words = '';
      response.on('data', (part) => {
        words += String(part);
      });
      response.on('end', () => resolve({ status: response.statusCode ?? 0, words }));
    });
    socket.on('error', reject);
  });
}

/** A connection that must come about. */
export async function connectedPad(...args: Parameters<typeof connectPad>): Promise<WebSocket> {
  const socket = await connectPad(...args);
  if ('words' in socket) throw new Error(`refused with ${socket.status}: ${socket.words}`);
  return socket;
}

export function someNight(): string {
  return randomUUID();
}
