import { readFileSync, statSync } from 'node:fs';
import { createORPCClient } from '@orpc/client';
import { RPCLink } from '@orpc/client/websocket';
import { afterEach, expect, test } from 'vitest';
import type { WebSocket } from 'ws';
import { askRunningHost } from '../../main/hosts/browser/ask-running.ts';
import { largestMessage } from '../../main/hosts/browser/sockets.ts';
import type { DeskClient } from '../../renderer/link/connection.ts';
import { callDraft, goDraft, until } from '../link/drafts.ts';
import { ask, atEnd, endAll, enter, openSocket, plantFolder, start } from './browser-fixture.ts';
import { someSetup } from './memory-desk.ts';

afterEach(endAll);

async function openedSocket(...args: Parameters<typeof openSocket>): Promise<WebSocket> {
  const socket = await openSocket(...args);
  if (typeof socket === 'number') throw new Error(`refused with ${socket}`);
  return socket;
}

function clientOver(socket: WebSocket): DeskClient {
  // The ws package's socket has the interface of a page's for all that oRPC uses.
  return createORPCClient(new RPCLink({ websocket: socket as unknown as globalThis.WebSocket }));
}

test('the printed address lets in once; the page then loads, reloads and opens a second tab by its cookie', async () => {
  const { host } = await start();
  const url = new URL(host.newAddress());
  const path = `${url.pathname}${url.search}`;
  const first = await ask({ port: host.port, path });
  expect(first.status).toBe(200);
  expect(first.text).toContain(`url=${url.pathname}"`);
  const cookie = String(first.headers['set-cookie']);
  expect(cookie).toMatch(/HttpOnly; SameSite=Strict/);
  expect(cookie).toContain(`Path=${url.pathname};`);

  const session = { cookie: cookie.split(';')[0] ?? '' };
  for (let visit = 0; visit < 3; visit += 1) {
    const page = await ask({ port: host.port, path: url.pathname }, session);
    expect(page).toMatchObject({ status: 200, text: '<!doctype html><title>screens</title>' });
  }
  const script = await ask({ port: host.port, path: `${url.pathname}assets/main-1a2b.js` }, session);
  expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8');
  expect(script.headers['cache-control']).toContain('immutable');

  const burnt = await ask({ port: host.port, path });
  expect(burnt.status).toBe(403);
  expect(burnt.text).toContain('has been used already');
  expect(burnt.headers['set-cookie']).toBeUndefined();
  expect((await ask({ port: host.port, path }, session)).status).toBe(200);
});

test('a look at the address by HEAD does not burn its key', async () => {
  const { host } = await start();
  const url = new URL(host.newAddress());
  const path = `${url.pathname}${url.search}`;
  expect((await ask({ port: host.port, path }, {}, 'HEAD')).status).toBe(403);
  expect((await ask({ port: host.port, path })).status).toBe(200);
});

test('every page forbids all that does not come from the program itself', async () => {
  const { host } = await start();
  const { port, base, cookie } = await enter(host);
  const { headers } = await ask({ port, path: base }, { cookie });
  const policy = String(headers['content-security-policy']).split('; ');
  expect(policy).toEqual([
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "font-src 'self'",
    "img-src 'self'",
    `connect-src 'self' ws://127.0.0.1:${port}`,
    "worker-src 'self'",
    "frame-ancestors 'none'",
    "base-uri 'none'",
    "form-action 'none'",
  ]);
  expect(headers).toMatchObject({
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'cache-control': 'no-store',
  });
});

test('without the key or the session nothing is given, and the refusal says where to look', async () => {
  const { host } = await start();
  const { port, base, cookie } = await enter(host);
  for (const path of ['/', base, `${base}assets/main-1a2b.js`, `${base}?key=`, `${base}?key=AAAA`, '/?key=AAAA']) {
    const answer = await ask({ port, path });
    expect(answer.status, path).toBe(403);
    expect(answer.text, path).toMatch(/Open the address that the program prints|has been used already/);
    expect(answer.headers['set-cookie'], path).toBeUndefined();
  }
  const wrong = await ask({ port, path: base }, { cookie: `${cookie.slice(0, -1)}x` });
  expect(wrong.status).toBe(403);
  expect((await ask({ port, path: '/' }, { cookie })).status).toBe(403);
});

test('a foreign Host, Origin or embedding page is refused even with the session', async () => {
  const { host } = await start();
  const { port, base, cookie } = await enter(host);
  const status = async (headers: Record<string, string>): Promise<number> =>
    (await ask({ port, path: base }, { cookie, ...headers })).status;
  expect(await status({ host: `localhost:${port}` })).toBe(421);
  expect(await status({ host: 'attacker.example' })).toBe(421);
  expect(await status({ host: `127.0.0.1:${port + 1}` })).toBe(421);
  for (const origin of [
    'https://attacker.example',
    `http://127.0.0.1:${port + 1}`,
    'null',
    `http://127.0.0.1:${port}.x`,
  ]) {
    expect(await status({ origin }), origin).toBe(403);
  }
  expect(await status({ 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' })).toBe(403);
  expect(await status({ 'sec-fetch-site': 'same-site', 'sec-fetch-mode': 'cors' })).toBe(403);
  expect(
    await status({ 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'iframe' }),
  ).toBe(403);
  expect(await status({ origin: `http://127.0.0.1:${port}`, 'sec-fetch-site': 'same-origin' })).toBe(200);
});

test('only GET and HEAD are answered', async () => {
  const { host } = await start();
  const { port, base, cookie } = await enter(host);
  for (const method of ['PUT', 'DELETE', 'OPTIONS', 'PATCH', 'TRACE']) {
    expect((await ask({ port, path: base }, { cookie }, method)).status, method).toBe(405);
  }
  expect((await ask({ port, path: base }, { cookie }, 'POST')).status).toBe(403);
});

test('no spelling of a path reaches anything but the built files', async () => {
  const { host } = await start();
  const { port, base, cookie } = await enter(host);
  const outside = [
    ...['../secret.txt', '..%2fsecret.txt', '%2e%2e/secret.txt', '..\\secret.txt', '..%5csecret.txt', '/../secret.txt'],
    ...['assets/../../secret.txt', 'assets/..%2f..%2fsecret.txt', '../renderer-sibling/index.html', 'link.txt'],
    ...['%00', 'index.html%00.js', '.', '..', 'assets', 'assets/', '//etc/passwd', 'constructor', '__proto__'],
  ];
  for (const name of outside) {
    const answer = await ask({ port, path: `${base}${name}` }, { cookie });
    expect(answer.status, name).toBe(404);
    expect(answer.text, name).not.toContain('not for pages');
  }
  expect((await ask({ port, path: `${base}../secret.txt` })).status).toBe(403);
});

test('the WebSocket is opened for the own page with its session only', async () => {
  const { host } = await start();
  const entered = await enter(host);
  const { port, base } = entered;
  expect(await openSocket({ ...entered, cookie: '' })).toBe(403);
  expect(await openSocket({ ...entered, cookie: 'plumbline-session=AAAA' })).toBe(403);
  expect(await openSocket(entered, { origin: '' })).toBe(403);
  expect(await openSocket(entered, { origin: 'https://attacker.example' })).toBe(403);
  expect(await openSocket(entered, { origin: `http://127.0.0.1:${port + 1}` })).toBe(403);
  expect(await openSocket(entered, { host: `attacker.example:${port}` })).toBe(421);
  expect(await openSocket(entered, { path: '/desk' })).toBe(404);
  expect(await openSocket(entered, { path: `${base}desk/` })).toBe(404);
  const client = clientOver(await openedSocket(entered));
  expect(await client.desk.about()).toMatchObject({ host: 'browser' });
});

test('a message larger than the limit ends its own connection and no other', async () => {
  const { host } = await start();
  const entered = await enter(host);
  const [flooding, quiet] = [await openedSocket(entered), await openedSocket(entered)];
  const closed = new Promise<number>((resolve) => flooding.once('close', resolve));
  flooding.send(Buffer.alloc(largestMessage + 1));
  expect(await closed).not.toBe(1000);
  expect(await clientOver(quiet).desk.time()).toMatchObject({ now: expect.any(Number) });
});

test('bytes that are no call of the contract are answered or dropped, and the host goes on', async () => {
  const { host } = await start();
  const entered = await enter(host);
  const socket = await openedSocket(entered);
  const quiet = console.error;
  console.error = () => {};
  atEnd(() => {
    console.error = quiet;
  });
  for (const junk of [
    '',
    '{}',
    '[]',
    'null',
    '{"i":"1"}',
    '\u0000',
    Buffer.from([255, 254]),
    '{"i":1,"p":{"u":"/no"}}',
  ]) {
    socket.send(junk);
  }
  const client = clientOver(await openedSocket(entered));
  expect(await client.desk.time()).toMatchObject({ now: expect.any(Number) });
});

test('a page that no longer answers the heartbeat is cut off', async () => {
  const { host } = await start({ heartbeatMs: 40 });
  const entered = await enter(host);
  const living = await openedSocket(entered);
  const silent = await openedSocket(entered);
  // The package answers a ping by itself, but a paused socket hears none.
  silent.pause();
  await new Promise((resolve) => setTimeout(resolve, 200));
  silent.resume();
  await until(() => silent.readyState === silent.CLOSED);
  expect(living.readyState).toBe(living.OPEN);
});

test('after a restart the port, the place and the open pages stay; the old key and the old control do not', async () => {
  const planted = plantFolder();
  const before = await start({}, planted);
  const entered = await enter(before.host);
  const unused = new URL(before.host.newAddress());
  await before.host.close();
  const after = await start({}, planted);
  expect(after.host.port).toBe(before.host.port);
  expect(after.host.moved).toBe(false);
  expect((await ask({ port: entered.port, path: entered.base }, { cookie: entered.cookie })).status).toBe(200);
  const client = clientOver(await openedSocket(entered));
  expect(await client.desk.about()).toMatchObject({ host: 'browser' });
  expect((await ask({ port: entered.port, path: `${unused.pathname}${unused.search}` })).status).toBe(403);
});

test('a taken port is told in words where it was asked for, and left where it was only remembered', async () => {
  const first = await start();
  await expect(start({ port: first.host.port })).rejects.toThrow(/Port \d+ cannot be used.*--port/);
  const second = await start({ rememberedFile: first.rememberedFile });
  expect(second.host.port).not.toBe(first.host.port);
  expect(second.host.moved).toBe(true);
});

test('the remembered file is for the user alone and lets nobody in by itself', async () => {
  const { host, rememberedFile } = await start();
  const { cookie } = await enter(host);
  expect(statSync(rememberedFile).mode & 0o777).toBe(process.platform === 'win32' ? 0o666 : 0o600);
  expect(readFileSync(rememberedFile, 'utf8')).not.toContain(cookie.split('=')[1]);
});

test('a second start asks the running one for a new address; a page cannot', async () => {
  const { host, rememberedFile } = await start();
  const address = new URL((await askRunningHost(rememberedFile)) ?? '');
  expect((await ask({ port: host.port, path: `${address.pathname}${address.search}` })).status).toBe(200);
  const { control } = JSON.parse(readFileSync(rememberedFile, 'utf8'));
  const path = `${address.pathname}address`;
  const authorization = `Bearer ${control}`;
  expect((await ask({ port: host.port, path }, { authorization }, 'POST')).status).toBe(200);
  const origin = `http://127.0.0.1:${host.port}`;
  expect((await ask({ port: host.port, path }, { authorization, origin }, 'POST')).status).toBe(403);
  expect((await ask({ port: host.port, path }, { authorization: 'Bearer x' }, 'POST')).status).toBe(403);
  await host.close();
  expect(await askRunningHost(rememberedFile)).toBeNull();
});

test('closing lets the call under way be answered, then refuses and ends every connection', async () => {
  const { host, desk } = await start();
  const entered = await enter(host);
  const socket = await openedSocket(entered);
  const client = clientOver(socket);
  const setup = someSetup(crypto.randomUUID());
  await client.sets.create(setup);
  const reached = Promise.withResolvers<void>();
  const finish = Promise.withResolvers<void>();
  desk.beforeAppend = () => {
    reached.resolve();
    return finish.promise;
  };
  const call = client.sets.append({ events: [{ ...goDraft(setup.id), pad: 'p', seq: 1 }] });
  await reached.promise;
  const closed = host.close();
  const late = client.sets.append({ events: [{ ...callDraft(setup.id, 1), pad: 'p', seq: 2 }] });
  await expect(late).rejects.toMatchObject({ code: 'SERVICE_UNAVAILABLE' });
  finish.resolve();
  expect((await call).acknowledgements).toEqual([{ pad: 'p', seq: 1, outcome: 'new' }]);
  await closed;
  await until(() => socket.readyState === socket.CLOSED);
  await expect(ask({ port: entered.port, path: entered.base })).rejects.toMatchObject({ code: 'ECONNREFUSED' });
  expect(desk.log).toHaveLength(1);
});
