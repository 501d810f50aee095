import { ORPCError } from '@orpc/client';
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createOutbox, newPad, type Queue } from '../../renderer/link/outbox.ts';
import { type Receiver, startSending } from '../../renderer/link/sender.ts';
import { openStore } from '../../renderer/link/store.ts';
import { memoryDesk, sheet, somebody, someSetup } from '../hosts/memory-desk.ts';
import { callDraft, goDraft, until } from './drafts.ts';

const quick = { batch: 4, firstPauseMs: 2, longestPauseMs: 8, sweepMs: 20 };
const ends: (() => void)[] = [];

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory());
});
afterEach(() => {
  for (const end of ends.splice(0)) end();
  vi.unstubAllGlobals();
});

/** One page load over the stubbed browser's store. */
function page(): Queue {
  const queue = createOutbox(() => openStore('test'));
  ends.push(queue.close);
  return queue;
}

function send(queue: Queue, receiver: Partial<Receiver>): () => void {
  const stop = startSending(
    queue,
    { whenConnected: async () => {}, create: async () => {}, append: async () => [], ...receiver },
    quick,
  );
  ends.push(stop);
  return stop;
}

const set = '7a0e2a1c-3f5b-4f0e-9a53-0d5a4f3f7c11';
const start = { setup: someSetup(set), sheet, athlete: somebody, judge: somebody };

test('an event is named and counted at once, by page load and running number', () => {
  const queue = page();
  expect(queue.put(goDraft(set))).toMatchObject({ pad: queue.pad, seq: 1, kind: 'go' });
  expect(queue.put(callDraft(set, 1_500))).toMatchObject({ pad: queue.pad, seq: 2 });
  expect(queue.pending(set).get()).toBe(2);
  expect(queue.total.get()).toBe(2);
  expect(queue.pending(somebody.id).get()).toBe(0);
  expect(queue.pad).toMatch(/^[0-9a-f]{32}$/);
  expect(newPad()).not.toBe(queue.pad);
});

test('what a killed page had not sent is sent by the next one, in order, and its set made first', async () => {
  const killed = page();
  killed.begin(start);
  const events = [killed.put(goDraft(set)), killed.put(callDraft(set, 1_000)), killed.put(callDraft(set, 2_000))];
  await killed.written();

  const desk = memoryDesk();
  const next = page();
  const made: string[] = [];
  send(next, {
    create: async (setup) => made.push(setup.id),
    append: async (batch) => {
      expect(made).toEqual([set]);
      return desk.append(batch);
    },
  });
  await until(() => desk.log.length === 3 && next.total.get() === 0);
  expect(desk.log).toEqual(events);
  await next.written();
  // What the desk has stays readable here, so that a third page can go on without it.
  const third = page();
  expect(await third.eventsOf(set)).toEqual(events);
  expect(await third.startOf(set)).toEqual(start);
  expect(third.total.get()).toBe(0);
});

test('entries that a closed tab leaves behind are taken up by the open one', async () => {
  const desk = memoryDesk();
  const open = page();
  send(open, { append: async (batch) => desk.append(batch) });
  const closing = page();
  closing.put(goDraft(set));
  await closing.written();
  await until(() => desk.log.length === 1);
});

test('without a store the outbox works in memory and says so', async () => {
  const desk = memoryDesk();
  const queue = createOutbox(async () => Promise.reject(new DOMException('refused', 'InvalidStateError')));
  send(queue, { append: async (batch) => desk.append(batch) });
  queue.put(goDraft(set));
  await until(() => queue.total.get() === 0 && queue.storage.get() === 'memory');
  expect(desk.log).toHaveLength(1);
});

test('a store that fails in mid-set is left for memory, and nothing is lost', async () => {
  const desk = memoryDesk();
  const queue = createOutbox(async () => ({
    ...(await openStore('test')),
    putEvents: () => Promise.reject(new DOMException('full', 'QuotaExceededError')),
  }));
  queue.put(goDraft(set));
  queue.put(callDraft(set, 900));
  await until(() => queue.storage.get() === 'memory');
  queue.put(callDraft(set, 1_900));
  send(queue, { append: async (batch) => desk.append(batch) });
  await until(() => queue.total.get() === 0);
  expect(desk.log.map((event) => event.seq)).toEqual([1, 2, 3]);
});

test('an event whose name the desk knows with other contents is kept aside and told, also after a reload', async () => {
  const desk = memoryDesk();
  const queue = page();
  desk.append([{ ...callDraft(set, 1), pad: queue.pad, seq: 1 }]);
  const own = queue.put(callDraft(set, 2));
  send(queue, { append: async (batch) => desk.append(batch) });
  await until(() => queue.aside.get().length === 1);
  expect(queue.aside.get()[0]).toMatchObject({ event: own, reason: 'conflict' });
  expect(queue.total.get()).toBe(0);
  await queue.written();

  const next = page();
  await until(() => next.aside.get().length === 1);
  expect(next.aside.get()[0]?.event).toEqual(own);
  expect(await next.eventsOf(set)).toEqual([]);
  next.dismiss(own);
  await next.written();
  const last = page();
  await last.eventsOf(set);
  expect(last.aside.get()).toEqual([]);
});

test('one event that the desk refuses is set aside in its words and holds up no other', async () => {
  const desk = memoryDesk();
  const queue = page();
  const events = Array.from({ length: 11 }, (_, index) => queue.put(callDraft(set, index * 1_000)));
  send(queue, {
    append: async (batch) => {
      if (batch.some((event) => event.seq === 6)) throw new ORPCError('BAD_REQUEST', { message: 'not like this' });
      return desk.append(batch);
    },
  });
  await until(() => queue.total.get() === 0);
  expect(desk.log).toEqual(events.filter((event) => event.seq !== 6));
  expect(queue.aside.get()).toMatchObject([{ event: { seq: 6 }, reason: 'refused', message: 'not like this' }]);
});

test('a desk whose disk is full is tried again, with its words, until it takes the events', async () => {
  const desk = memoryDesk();
  const queue = page();
  queue.put(goDraft(set));
  let full = true;
  send(queue, {
    append: async (batch) => {
      if (full) throw new ORPCError('STORAGE', { status: 507, message: 'The disk is full.' });
      return desk.append(batch);
    },
  });
  await until(() => queue.trouble.get() === 'The disk is full.');
  expect(queue.total.get()).toBe(1);
  full = false;
  await until(() => queue.total.get() === 0);
  expect(queue.trouble.get()).toBeNull();
  expect(queue.aside.get()).toEqual([]);
});

test('where the desk has lost the set, it is made again from what is kept here', async () => {
  const desk = memoryDesk();
  const queue = page();
  queue.begin(start);
  let known = new Set<string>();
  send(queue, {
    create: async (setup) => known.add(setup.id),
    append: async (batch) => {
      if (batch.some((event) => !known.has(event.set))) throw new ORPCError('NOT_FOUND', { status: 404 });
      return desk.append(batch);
    },
  });
  queue.put(goDraft(set));
  await until(() => desk.log.length === 1);
  known = new Set();
  queue.put(callDraft(set, 1_000));
  await until(() => desk.log.length === 2);
  expect(queue.aside.get()).toEqual([]);
});
