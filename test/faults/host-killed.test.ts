import 'fake-indexeddb/auto';
import { rmSync } from 'node:fs';
import path from 'node:path';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, expect, test, vi } from 'vitest';
import { WebSocket } from 'ws';
import { type Link, linkOver } from '../../renderer/link/link.ts';
import { openStore } from '../../renderer/link/store.ts';
import { openSocket } from '../../renderer/link/transport.ts';
import { refKey, type SetEvent } from '../../shared-types/log/events.ts';
import { plantFolder } from '../hosts/browser-fixture.ts';
import { sheet, somebody, someSetup } from '../hosts/memory-desk.ts';
import { addressOf, cookieAt, type Program, startProgram } from '../hosts/program.ts';
import { callDraft, goDraft, until } from '../link/drafts.ts';

const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
  vi.unstubAllGlobals();
});

const taps = 120;
const quick = { waitMs: 500, firstPauseMs: 20, longestPauseMs: 100, pulseMs: 10_000 };

/** A browser's WebSocket, which sends cookie and origin by itself. */
function stubBrowser(cookie: string, origin: string): void {
  class PageSocket extends WebSocket {
    constructor(address: URL) {
      super(address, { origin, headers: { cookie } });
      this.on('error', () => {});
    }
  }
  vi.stubGlobal('WebSocket', PageSocket);
  vi.stubGlobal('indexedDB', new IDBFactory());
}

function loadPage(base: string): Link {
  const link = linkOver({ open: openSocket(base), openStore: () => openStore('page'), timings: quick });
  ends.push(() => link.close());
  return link;
}

test('the program is killed three times and the page reloaded once in mid-set: every tap is in the log, once', async () => {
  const { folder, screens } = plantFolder();
  const data = path.join(folder, 'data');
  ends.push(() => rmSync(folder, { recursive: true, force: true }));
  const run = (): Program => {
    const started = startProgram(data, screens);
    const { child, ended } = started;
    ends.push(async () => {
      child.kill('SIGKILL');
      await ended;
    });
    return started;
  };
  let program = run();
  const url = await addressOf(program);
  const base = `${url.origin}${url.pathname}`;
  stubBrowser(await cookieAt(url), url.origin);

  let page = loadPage(base);
  await page.client.people.save(somebody);
  const setup = someSetup(crypto.randomUUID());
  page.outbox.begin({ setup, sheet, athlete: somebody, judge: somebody });
  const tapped: SetEvent[] = [page.outbox.put(goDraft(setup.id))];
  for (let tap = 1; tap < taps; tap += 1) {
    tapped.push(page.outbox.put(callDraft(setup.id, tap * 1_000)));
    await new Promise((resolve) => setTimeout(resolve, 5));
    // The first taps after each start go out, so that the next kill meets a program at work.
    if (tap === 45 || tap === 75) await until(() => page.state.get() === 'connected', 20_000);
    if (tap === 20 || tap === 50 || tap === 80) {
      // In the middle of what is being sent, with no warning.
      program.child.kill('SIGKILL');
      await program.ended;
      program = run();
    }
    if (tap === 60) {
      await page.outbox.written();
      page.close();
      page = loadPage(base);
    }
  }
  const log = page.openSet(setup.id);
  await until(() => page.outbox.total.get() === 0 && log.get().live, 30_000);
  expect(page.outbox.aside.get()).toEqual([]);

  const { events } = await page.client.sets.get({ id: setup.id });
  const byKey = (list: readonly SetEvent[]): SetEvent[] => list.toSorted((a, b) => (refKey(a) < refKey(b) ? -1 : 1));
  expect(byKey(events)).toEqual(byKey(tapped));
  expect(byKey(log.get().events)).toEqual(byKey(tapped));
}, 90_000);
