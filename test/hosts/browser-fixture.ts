import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { WebSocket } from 'ws';
import { type BrowserHost, type BrowserHostOptions, startBrowserHost } from '../../main/hosts/browser.ts';
import { type MemoryDesk, memoryDesk } from './memory-desk.ts';

/** A folder with a small page, a script, a link that leads out, and a secret beside it. */
export function plantFolder(): { readonly folder: string; readonly screens: string } {
  const folder = mkdtempSync(path.join(tmpdir(), 'plumbline-host-'));
  const screens = path.join(folder, 'renderer');
  mkdirSync(path.join(screens, 'assets'), { recursive: true });
  writeFileSync(path.join(screens, 'index.html'), '<!doctype html><title>screens</title>');
  writeFileSync(path.join(screens, 'assets', 'main-1a2b.js'), 'export {};');
  writeFileSync(path.join(folder, 'secret.txt'), 'not for pages');
  mkdirSync(path.join(folder, 'renderer-sibling'));
  writeFileSync(path.join(folder, 'renderer-sibling', 'index.html'), 'not for pages either');
  symlinkSync(path.join(folder, 'secret.txt'), path.join(screens, 'link.txt'));
  return { folder, screens };
}

export interface Started {
  readonly host: BrowserHost;
  readonly desk: MemoryDesk;
  readonly folder: string;
  readonly rememberedFile: string;
}

const ends: (() => unknown)[] = [];

/** Closes all that was started; for `afterEach`. */
export async function endAll(): Promise<void> {
  for (const end of ends.splice(0).reverse()) await end();
}

export function atEnd(end: () => unknown): void {
  ends.push(end);
}

export async function start(options: Partial<BrowserHostOptions> = {}, planted = plantFolder()): Promise<Started> {
  ends.push(() => rmSync(planted.folder, { recursive: true, force: true }));
  const desk = memoryDesk();
  const rememberedFile = path.join(planted.folder, 'browser-host.json');
  const host = await startBrowserHost({ router: desk.router, screens: planted.screens, rememberedFile, ...options });
  ends.push(() => host.close());
  return { host, desk, folder: planted.folder, rememberedFile };
}

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** A request exactly as written: neither the path nor a header is mended on the way. */
export function ask(
  address: { port: number; path: string },
  headers: Record<string, string> = {},
  method = 'GET',
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const outgoing = request(
      { host: '127.0.0.1', port: address.port, path: address.path, method, headers, agent: false },
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
    outgoing.end();
  });
}

export interface Entered {
  readonly port: number;
  readonly base: string;
  readonly cookie: string;
}

/** Opens a printed address as a browser would and keeps the cookie. */
export async function enter(host: BrowserHost): Promise<Entered> {
  const url = new URL(host.newAddress());
  const answer = await ask({ port: host.port, path: `${url.pathname}${url.search}` });
  const [cookie = ''] = String(answer.headers['set-cookie']).split(';');
  return { port: host.port, base: url.pathname, cookie };
}

/** Opens the WebSocket; resolves to it, or to the status with which it was refused. */
export function openSocket(
  { port, base, cookie }: Entered,
  options: { origin?: string; host?: string; path?: string } = {},
): Promise<WebSocket | number> {
  return new Promise((resolve, reject) => {
    const headers = { cookie, ...(options.host === undefined ? {} : { host: options.host }) };
    const origin = options.origin ?? `http://127.0.0.1:${port}`;
    const named = origin === '' ? {} : { origin };
    const socket = new WebSocket(`ws://127.0.0.1:${port}${options.path ?? `${base}desk`}`, { headers, ...named });
    ends.push(() => socket.terminate());
    socket.on('open', () => resolve(socket));
    socket.on('unexpected-response', (_request, response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    });
    socket.on('error', reject);
  });
}
