import { mkdirSync, readFileSync, rmdirSync, statSync, writeFileSync } from 'node:fs';
import { call } from '@orpc/server';
import { afterEach, expect, test, vi } from 'vitest';
import { entranceCalls } from '../../main/hosts/pads/entrance.ts';
import { createPads } from '../../main/hosts/pads.ts';
import { plantFolder } from '../hosts/browser-fixture.ts';
import { until } from '../link/drafts.ts';
import {
  ask,
  atEnd,
  clientOver,
  connectedPad,
  connectPad,
  endAll,
  join,
  night,
  openPads,
  sendCode,
  someNight,
} from './pads-fixture.ts';

afterEach(endAll);

test('it is closed until the desk opens it, and closed again when the desk says so', async () => {
  const { pads, port, base } = await openPads();
  expect(pads.state().open).toMatchObject({ night, address: '127.0.0.1', port, url: `http://127.0.0.1:${port}/` });
  expect((await ask({ port, path: base })).status).toBe(200);
  await pads.close();
  expect(pads.state().open).toBeNull();
  expect(pads.newCode()).toBeNull();
  await expect(ask({ port, path: base })).rejects.toMatchObject({ code: 'ECONNREFUSED' });
});

test('what is typed leads to the page; the page and its parts are there for everybody, and nothing else is', async () => {
  const { port, base } = await openPads();
  expect(await ask({ port, path: '/' })).toMatchObject({ status: 302, headers: { location: base } });
  expect((await ask({ port, path: base })).text).toContain('<title>screens</title>');
  expect((await ask({ port, path: `${base}assets/main-1a2b.js` })).status).toBe(200);
  const { headers } = await ask({ port, path: base });
  expect(headers['content-security-policy']).toContain(`connect-src 'self' ws://127.0.0.1:${port}`);
  expect(headers['content-security-policy']).toContain("script-src 'self'");
  expect(JSON.parse((await ask({ port, path: `${base}standing` })).text)).toMatchObject({ standing: 'stranger' });
});

test('a pad joins by a code and the desk’s answers know who it is', async () => {
  const opened = await openPads();
  const { pads, port, base } = opened;
  const { device, cookie } = await join(opened, 'Kim’s phone');
  const line = { id: device, callsItself: 'Kim’s phone', from: '127.0.0.1' };
  expect(pads.state().pads).toMatchObject([{ ...line, connections: 0, lastSeenAt: null }]);
  const standing = await ask({ port, path: `${base}standing`, headers: { cookie } });
  expect(JSON.parse(standing.text)).toEqual({ standing: 'joined', device });
  const socket = await connectedPad(opened, cookie);
  expect(await clientOver(socket).who()).toEqual({ device, night });
  expect(pads.state().pads).toMatchObject([{ ...line, connections: 1, lastSeenAt: expect.any(Number) }]);
});

test('the secret is out of reach of scripts, bound to the page’s place, and on the disk only as a digest', async () => {
  const opened = await openPads();
  const answer = await sendCode(opened, opened.pads.newCode()?.code ?? '');
  const cookie = String(answer.headers['set-cookie']);
  expect(cookie).toContain(`Path=${opened.base};`);
  expect(cookie).toContain('HttpOnly; SameSite=Strict');
  const secret = /plumbline-pad=([^;]+)/.exec(cookie)?.[1] ?? '';
  expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
  expect(answer.text).not.toContain(secret);
  const file = opened.options.rememberedFile;
  expect(readFileSync(file, 'utf8')).not.toContain(secret);
  expect(statSync(file).mode & 0o777).toBe(process.platform === 'win32' ? 0o666 : 0o600);
});

test('a pad that scans a second code stays who it is, and the code stays good for another', async () => {
  const opened = await openPads();
  const { device, cookie } = await join(opened);
  const { code } = opened.pads.newCode() ?? { code: '' };
  const again = await sendCode(opened, code, { headers: { cookie } });
  expect(JSON.parse(again.text)).toMatchObject({ device });
  expect((await sendCode(opened, code)).status).toBe(200);
  expect(opened.pads.state().pads).toHaveLength(2);
});

test('a pad that is sent away is cut off, even if it does not say goodbye, and its secret is worthless; others go on', async () => {
  const opened = await openPads();
  const [away, stays] = [await join(opened), await join(opened)];
  const socket = await connectedPad(opened, away.cookie);
  const other = await connectedPad(opened, stays.cookie);
  socket.pause();
  expect(opened.pads.forget(away.device)).toBe(true);
  expect(opened.pads.forget(away.device)).toBe(false);
  await until(() => opened.pads.state().pads.every(({ id }) => id !== away.device));
  expect(await connectPad(opened, away.cookie)).toMatchObject({ status: 403 });
  socket.resume();
  await until(() => socket.readyState === socket.CLOSED);
  expect(await clientOver(other).who()).toMatchObject({ device: stays.device });
});

test('killed and started again, it opens by itself at the same place, and pads go on by what they have', async () => {
  const planted = plantFolder();
  const opened = await openPads({}, planted);
  const { device, cookie } = await join(opened);
  // A kill writes nothing: what stands in the file now is what the next start finds.
  const asKilled = readFileSync(opened.options.rememberedFile);
  await opened.pads.close();
  writeFileSync(opened.options.rememberedFile, asKilled);
  const next = createPads(opened.options);
  atEnd(() => next.close());
  await next.resume();
  expect(next.state().open).toMatchObject({ night, port: opened.port });
  expect(await clientOver(await connectedPad(opened, cookie)).who()).toMatchObject({ device });
});

test('closed on purpose, or open a day ago, it stays closed at the next start', async () => {
  const clock = { now: Date.now() };
  const opened = await openPads({ now: () => clock.now });
  const asKilled = readFileSync(opened.options.rememberedFile);
  await opened.pads.close();
  const next = createPads(opened.options);
  await next.resume();
  expect(next.state().open).toBeNull();
  writeFileSync(opened.options.rememberedFile, asKilled);
  clock.now += 24 * 3_600_000;
  const later = createPads(opened.options);
  await later.resume();
  expect(later.state()).toMatchObject({ open: null, trouble: null });
});

test('a network that is gone at the next start is told in words', async () => {
  const opened = await openPads();
  const file = opened.options.rememberedFile;
  const told = readFileSync(file, 'utf8').replace('127.0.0.1', '203.0.113.9');
  await opened.pads.close();
  writeFileSync(file, told);
  const next = createPads(opened.options);
  await next.resume();
  expect(next.state().open).toBeNull();
  expect(next.state().trouble).toMatch(/could not be opened again.*no address 203\.0\.113\.9/);
});

test('opened for another night, the pads of the earlier one have to join anew', async () => {
  const opened = await openPads();
  const { cookie } = await join(opened);
  await opened.pads.open(someNight(), '127.0.0.1', opened.port);
  expect(opened.pads.state().pads).toEqual([]);
  expect(await connectPad(opened, cookie)).toMatchObject({ status: 403 });
});

test('the desk’s calls: an address that is not ours and a taken port are refused in words, and the state is watched', async () => {
  const opened = await openPads();
  const router = entranceCalls(opened.pads);
  const input = { night, address: '203.0.113.9', port: null };
  await expect(call(router.open, input)).rejects.toMatchObject({
    code: 'CONFLICT',
    message: expect.stringContaining('no address'),
  });
  expect(opened.pads.state().open).not.toBeNull();
  const other = createPads({ ...opened.options, rememberedFile: `${opened.options.rememberedFile}.other` });
  atEnd(() => other.close());
  const taken = call(entranceCalls(other).open, { night, address: '127.0.0.1', port: opened.port });
  await expect(taken).rejects.toMatchObject({ message: expect.stringContaining('cannot be used') });
  await expect(call(entranceCalls(other).code, undefined)).rejects.toMatchObject({ code: 'CONFLICT' });

  const states = await call(router.watch, undefined);
  expect((await states.next()).value).toMatchObject({ pads: [] });
  const next = states.next();
  const { device: id } = await join(opened);
  expect((await next).value).toMatchObject({ open: { night } });
  await states.return();
  expect(await call(router.state, undefined)).toMatchObject({ pads: [{ id }] });
  await call(router.forget, { pad: id });
  await expect(call(router.forget, { pad: id })).rejects.toMatchObject({ code: 'NOT_FOUND' });
  expect((await call(router.close, undefined)).open).toBeNull();
});

test('where who joins cannot be kept, opening and joining are refused in words', async () => {
  const quiet = vi.spyOn(console, 'error').mockImplementation(() => {});
  atEnd(() => quiet.mockRestore());
  const opened = await openPads();
  const { code } = opened.pads.newCode() ?? { code: '' };
  // A folder where the file is to be written: it fails on every system and for every user.
  const inTheWay = `${opened.options.rememberedFile}.${process.pid}`;
  mkdirSync(inTheWay);
  const refused = await sendCode(opened, code);
  expect(refused.status).toBe(503);
  expect(JSON.parse(refused.text).words).toMatch(/cannot keep who joins/);
  await expect(opened.pads.open(someNight(), '127.0.0.1', opened.port)).rejects.toThrow(/cannot be kept/);
  await expect(ask({ port: opened.port, path: '/' })).rejects.toMatchObject({ code: 'ECONNREFUSED' });
  rmdirSync(inTheWay);
  await opened.pads.open(night, '127.0.0.1', opened.port);
  expect(opened.pads.state().open).not.toBeNull();
});
