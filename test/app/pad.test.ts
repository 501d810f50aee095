import { createORPCClient } from '@orpc/client';
import { RPCLink } from '@orpc/client/websocket';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import type { DeskClient } from '../../renderer/link/connection.ts';
import { arrangementOf, laneOf, personId, personOf } from '../night/rosters.ts';
import { freePort } from '../pads/pads-fixture.ts';
import { accessibilityProblems, inEveryLook, openScreens, type Screens } from './screens.ts';

// The whole program with a small night, and a phone that joins it over plain HTTP at another address of its own.

const night = { id: '00000000-0000-4000-8000-00000000aaaa', name: 'First night', date: '2026-09-07', createdAt: 1 };
const people = [1, 2].map((index) => ({
  id: personId(index),
  name: `Somebody ${index}`,
  nickname: '',
  athlete: index === 1,
  judge: index === 2,
  notes: '',
  archivedAt: null,
  createdAt: 1,
}));

let screens: Screens;
let desk: DeskClient;
let phone: BrowserContext;
let pad: Page;
let port: number;

beforeAll(async () => {
  screens = await openScreens();
  desk = await deskClient(screens);
  for (const person of people) await desk.people.save(person);
  const crowd = people.map(({ id, athlete, judge }) => ({ ...personOf(0), id, athlete, judge }));
  await desk.nights.create({ night, arrangement: arrangementOf({ lanes: [laneOf('1')], people: crowd }) });
  const [athlete = '', judge = ''] = people.map(({ id }) => id);
  const heats = [[{ lane: '1', station: 'throws', athlete, judge, shadow: null }]];
  await desk.nights.append({ id: night.id, entry: { kind: 'plan', why: 'by-hand', heats } });
  await desk.nights.append({ id: night.id, entry: { kind: 'open' } });
  port = await freePort();
  await desk.entrance.open({ night: night.id, address: '127.0.0.1', port });
  const browser = screens.page.context().browser();
  if (browser === null) throw new Error('the browser is there');
  phone = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  // Loopback counts as a secure origin; a gym's address does not, and takes all this away.
  await phone.addInitScript(() => {
    for (const [of, names] of [
      [Navigator.prototype, ['wakeLock', 'serviceWorker', 'storage']],
      [Crypto.prototype, ['subtle', 'randomUUID']],
    ] as const) {
      for (const name of names) Reflect.deleteProperty(of, name);
    }
  });
  pad = await phone.newPage();
}, 120_000);
afterAll(async () => {
  await screens?.close();
});

/** The desk's calls as its own page makes them. */
async function deskClient({ page }: Screens): Promise<DeskClient> {
  const cookies = await page.context().cookies(page.url());
  const cookie = cookies.map(({ name, value }) => `${name}=${value}`).join('; ');
  const { origin, pathname, host } = new URL(page.url());
  const socket = new WebSocket(`ws://${host}${pathname}desk`, { origin, headers: { cookie } });
  // The ws package's socket has the interface of a page's for all that oRPC uses.
  return createORPCClient(new RPCLink({ websocket: socket as unknown as globalThis.WebSocket }));
}

async function joinedDevice(): Promise<string> {
  const [first] = (await desk.entrance.state()).pads;
  if (first === undefined) throw new Error('a pad has joined');
  return first.id;
}

test('a phone joins by the code of the QR code, waits, gets its lane and sees its heat', async () => {
  const { link } = await desk.entrance.code();
  await pad.goto(link);
  await pad.getByRole('heading', { name: 'Join the judging night' }).waitFor();
  expect(await inEveryLook(pad, () => accessibilityProblems(pad))).toEqual([]);
  await pad.getByLabel('Your name').fill('Kim');
  await pad.getByRole('button', { name: 'Join' }).tap();
  await pad.getByText('has not given this pad a place yet').waitFor();
  const device = await joinedDevice();
  expect((await desk.entrance.state()).pads).toMatchObject([{ callsItself: 'Kim', connections: 1 }]);
  const entry = { kind: 'pad', device, name: 'Kim’s phone', role: 'judge', lane: '1' } as const;
  await desk.nights.append({ id: night.id, entry });
  await pad.getByRole('heading', { name: 'Lane 1' }).waitFor();
  await desk.nights.append({ id: night.id, entry: { kind: 'heat-open', heat: 1 } });
  await pad.getByRole('heading', { name: 'Heat 1' }).waitFor();
  await pad.getByText('Somebody 1').waitFor();
  await pad.getByText(/Clock aligned with the desk’s to \d+ ms/).waitFor();
  expect(await inEveryLook(pad, () => accessibilityProblems(pad))).toEqual([]);
}, 60_000);

test('a wrong code is told in words', async () => {
  const other = await phone.browser()?.newContext();
  const page = await other?.newPage();
  await page?.goto(`http://127.0.0.1:${port}/`);
  await page?.getByLabel('Code').fill('AAAAAA');
  await page?.getByLabel('Your name').fill('Nobody');
  await page?.getByRole('button', { name: 'Join' }).click();
  await page?.getByText('That code is not good').waitFor();
  await other?.close();
}, 60_000);

test('without a wake lock a playing picture keeps the screen lit, as far as a browser promises, under the content security policy', async () => {
  await pad.getByRole('button', { name: 'Keep the screen lit' }).tap();
  expect(await pad.evaluate(() => 'wakeLock' in navigator || 'randomUUID' in crypto)).toBe(false);
  await pad.getByText('The screen should stay lit').waitFor();
}, 60_000);

test('with the way in closed the page warns before it is left; opened again, it goes on by itself after a reload too', async () => {
  await desk.entrance.close();
  await pad.getByText('Do not reload or close this page now').waitFor();
  await desk.entrance.open({ night: night.id, address: '127.0.0.1', port });
  await pad.getByText('The desk is there.').waitFor();
  await pad.reload();
  await pad.getByRole('heading', { name: 'Heat 1' }).waitFor();
}, 60_000);

test('taken out by the desk, it says so; sent away, it has to join anew', async () => {
  const device = await joinedDevice();
  await desk.nights.append({ id: night.id, entry: { kind: 'revoke', device } });
  await pad.getByText('The desk has taken this pad out').waitFor();
  await desk.entrance.forget({ pad: device });
  await pad.getByText('no longer knows this phone').waitFor();
  await pad.reload();
  await pad.getByRole('heading', { name: 'Join the judging night' }).waitFor();
  // Refused connections are what a browser reports as errors; nothing else may be.
  expect(screens.troubles).toEqual([]);
}, 60_000);
