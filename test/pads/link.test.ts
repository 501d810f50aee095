import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { WebSocket } from 'ws';
import { whyNoPad } from '../../renderer/link/pad/entry.ts';
import { type PadLink, padLinkOver } from '../../renderer/link/pad/pad-link.ts';
import { openStore } from '../../renderer/link/store.ts';
import { openSocket } from '../../renderer/link/transport.ts';
import { refKey } from '../../shared-types/log/events.ts';
import { callDraft, goDraft, until } from '../link/drafts.ts';
import { laneOf, memoryPadDesk, setOf } from './pad-desk.ts';
import { atEnd, endAll, join, night, openPads } from './pads-fixture.ts';

const quick = {
  timings: { waitMs: 300, firstPauseMs: 10, longestPauseMs: 50, pulseMs: 5_000 },
  sending: { batch: 20, firstPauseMs: 10, longestPauseMs: 50, sweepMs: 1_000 },
};

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory());
});
afterEach(async () => {
  await endAll();
  vi.unstubAllGlobals();
});

async function opened() {
  const desk = memoryPadDesk();
  const way = await openPads({ router: desk.router });
  return { desk, way };
}
type Way = Awaited<ReturnType<typeof openPads>>;

/** A page of the phone that holds this cookie; pages of one phone share a store. */
function page({ port, base }: Way, cookie: string, phone: string): PadLink {
  const origin = `http://127.0.0.1:${port}`;
  // A phone's browser sends cookie and origin by itself.
  class PageSocket extends WebSocket {
    constructor(address: URL) {
      super(address, { origin, headers: { cookie } });
      this.on('error', () => {});
    }
  }
  const open = openSocket(`${origin}${base}`, whyNoPad);
  const link = padLinkOver({
    open: () => {
      vi.stubGlobal('WebSocket', PageSocket);
      return open();
    },
    openStore: () => openStore(phone),
    ...quick,
  });
  atEnd(() => link.close());
  return link;
}

test('a pad without a place waits, keeps what was tapped, and sends it once it has one', async () => {
  const { desk, way } = await opened();
  const { device, cookie } = await join(way);
  const pad = page(way, cookie, 'phone');
  await until(() => pad.duty.get().kind === 'waiting');
  pad.outbox.put(goDraft(setOf('1')));
  await new Promise((resolve) => setTimeout(resolve, 200));
  expect(pad.outbox.total.get()).toBe(1);
  expect(pad.outbox.aside.get()).toEqual([]);
  desk.put(device, 'judge', '1');
  await until(() => pad.duty.get().kind === 'placed' && pad.outbox.total.get() === 0);
  expect(desk.log).toHaveLength(1);
});

test('a new place is told at once, and the set of the lane is open with names and nothing else of its people', async () => {
  const { desk, way } = await opened();
  const { device, cookie } = await join(way);
  desk.put(device, 'judge', '1');
  const pad = page(way, cookie, 'phone');
  await until(() => pad.duty.get().kind === 'placed');
  desk.put(device, 'judge', '2');
  await until(() => {
    const duty = pad.duty.get();
    return duty.kind === 'placed' && duty.lane?.setup.id === setOf('2');
  });
  const lane = laneOf('2');
  if (lane === null) throw new Error('a lane has a set');
  const log = pad.openSet(lane);
  await until(() => log.get().live);
  expect(log.get().start).toMatchObject({ athlete: { name: 'A', notes: '' }, judge: { name: 'J' } });
  const go = pad.outbox.put(goDraft(setOf('2')));
  expect(log.get().events).toEqual([go]);
  await until(() => log.pending.get() === 0);
  log.close();
});

test('with the Wi-Fi gone the judge taps on; page and Wi-Fi come back, and all is there once and in order', async () => {
  const { desk, way } = await opened();
  const { device, cookie } = await join(way);
  desk.put(device, 'judge', '1');
  const before = page(way, cookie, 'phone');
  const tapped = [before.outbox.put(goDraft(setOf('1')))];
  await until(() => desk.log.length === 1);
  await way.pads.close();
  await until(() => before.state.get() === 'lost' && before.trouble.get() !== null);
  for (let call = 1; call <= 30; call += 1) tapped.push(before.outbox.put(callDraft(setOf('1'), call * 1_000)));
  await before.outbox.written();
  before.close();
  const after = page(way, cookie, 'phone');
  tapped.push(after.outbox.put(callDraft(setOf('1'), 40_000)));
  await way.pads.open(night, '127.0.0.1', way.port);
  await until(() => desk.log.length === tapped.length && after.outbox.total.get() === 0);
  expect(new Set(desk.log.map(refKey)).size).toBe(tapped.length);
  expect(desk.log.filter((event) => event.pad === tapped[0]?.pad)).toEqual(tapped.slice(0, -1));
});

test('two pads on one lane by mistake, and one that takes over in mid-set: every call of each is kept', async () => {
  const { desk, way } = await opened();
  const [first, second] = [await join(way), await join(way)];
  desk.put(first.device, 'judge', '1');
  desk.put(second.device, 'judge', '1');
  const one = page(way, first.cookie, 'one');
  const other = page(way, second.cookie, 'other');
  one.outbox.put(goDraft(setOf('1')));
  for (let call = 1; call <= 10; call += 1) {
    one.outbox.put(callDraft(setOf('1'), call * 1_000));
    other.outbox.put(callDraft(setOf('1'), call * 1_000 + 40));
  }
  await until(() => desk.log.length === 21);
  // The first is given another lane while it still has calls of this one.
  await way.pads.close();
  await until(() => one.state.get() === 'lost');
  one.outbox.put(callDraft(setOf('1'), 11_000));
  desk.put(first.device, 'judge', '2');
  one.outbox.put(goDraft(setOf('2')));
  await way.pads.open(night, '127.0.0.1', way.port);
  await until(() => desk.log.length === 23 && one.outbox.total.get() === 0);
  expect(one.outbox.aside.get()).toEqual([]);
});

test('a set of a lane that the pad never had is refused, told and kept, and holds up no other call', async () => {
  const { desk, way } = await opened();
  const { device, cookie } = await join(way);
  desk.put(device, 'judge', '1');
  const pad = page(way, cookie, 'phone');
  pad.outbox.put(goDraft(setOf('1')));
  const stray = pad.outbox.put(callDraft(setOf('9'), 1_000));
  pad.outbox.put(callDraft(setOf('1'), 2_000));
  await until(() => pad.outbox.total.get() === 0);
  expect(desk.log.map((event) => event.seq)).toEqual([1, 3]);
  expect(pad.outbox.aside.get()).toMatchObject([{ event: stray, reason: 'refused' }]);
});

test('a phone that was sent away keeps its calls, and sends them after joining anew and being given the lane again', async () => {
  const { desk, way } = await opened();
  const before = await join(way);
  desk.put(before.device, 'judge', '1');
  const pad = page(way, before.cookie, 'phone');
  pad.outbox.put(goDraft(setOf('1')));
  await until(() => desk.log.length === 1);
  way.pads.forget(before.device);
  await until(() => pad.trouble.get()?.includes('no longer knows this phone') === true);
  pad.outbox.put(callDraft(setOf('1'), 1_000));
  await pad.outbox.written();
  pad.close();
  const again = await join(way);
  expect(again.device).not.toBe(before.device);
  const next = page(way, again.cookie, 'phone');
  await until(() => next.duty.get().kind === 'waiting');
  expect(next.outbox.total.get()).toBe(1);
  desk.put(again.device, 'judge', '1');
  await until(() => desk.log.length === 2 && next.outbox.total.get() === 0);
});
