import { ORPCError } from '@orpc/client';
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { DeskAway } from '../../renderer/link/desk-away.ts';
import { createOutbox, type Queue } from '../../renderer/link/outbox.ts';
import { startSending } from '../../renderer/link/sender.ts';
import { openStore } from '../../renderer/link/store.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import { memoryDesk } from '../hosts/memory-desk.ts';
import { callDraft, until } from './drafts.ts';

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory());
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const set = '7a0e2a1c-3f5b-4f0e-9a53-0d5a4f3f7c11';
const quick = { batch: 3, firstPauseMs: 0, longestPauseMs: 2, sweepMs: 5 };

/** What the line and the desk do with one batch. */
const fates = [
  'taken',
  'lost-before',
  'lost-after',
  'told-twice',
  'told-reversed',
  'told-in-part',
  'sent-twice',
  'busy',
] as const;
type Fate = (typeof fates)[number];

/** What happens on the judge's side: taps in one of two tabs, or a tab is killed and a new one opened. */
const step = fc.oneof(
  { weight: 6, arbitrary: fc.record({ kind: fc.constant('tap' as const), tab: fc.nat(1) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('kill' as const), tab: fc.nat(1) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('wait' as const), tab: fc.nat(1) }) },
);

interface Tab {
  readonly queue: Queue;
  readonly kill: () => void;
}

function lineTo(desk: ReturnType<typeof memoryDesk>, next: () => Fate) {
  return async (events: readonly SetEvent[]) => {
    const fate = next();
    if (fate === 'lost-before') throw new DeskAway(true);
    if (fate === 'busy') throw new ORPCError('STORAGE', { status: 507 });
    const answers = desk.append(events);
    if (fate === 'lost-after') throw new DeskAway(true);
    if (fate === 'sent-twice') return desk.append(events);
    if (fate === 'told-twice') return [...answers, ...answers];
    if (fate === 'told-reversed') return answers.toReversed();
    if (fate === 'told-in-part') return answers.slice(1);
    return answers;
  };
}

function openTab(storeName: string, append: ReturnType<typeof lineTo>): Tab {
  const queue = createOutbox(() => openStore(storeName));
  const stop = startSending(queue, { whenConnected: async () => {}, create: async () => {}, append }, quick);
  return {
    queue,
    kill: () => {
      stop();
      queue.close();
    },
  };
}

test('whatever the line does, every tap is at the desk exactly once and in its tab’s order of numbers', async () => {
  let run = 0;
  await fc.assert(
    fc.asyncProperty(
      fc.array(step, { minLength: 1, maxLength: 25 }),
      fc.array(fc.constantFrom(...fates), { maxLength: 40 }),
      async (steps, script) => {
        run += 1;
        const desk = memoryDesk();
        const remaining = [...script];
        const append = lineTo(desk, () => remaining.shift() ?? 'taken');
        const tabs = [0, 1].map(() => openTab(`run ${run}`, append));
        const tapped: SetEvent[] = [];
        for (const { kind, tab } of steps) {
          const current = tabs[tab];
          if (current === undefined) throw new Error('there are two tabs');
          if (kind === 'tap') tapped.push(current.queue.put(callDraft(set, tapped.length * 700)));
          if (kind === 'wait') await new Promise((resolve) => setTimeout(resolve, 1));
          if (kind === 'kill') {
            // A kill within the few milliseconds before the browser has written is beyond any outbox.
            await current.queue.written();
            current.kill();
            tabs[tab] = openTab(`run ${run}`, append);
          }
        }
        try {
          await until(() => desk.log.length >= tapped.length && tabs.every((tab) => tab.queue.total.get() === 0));
          expect(byName(desk.log)).toEqual(byName(tapped));
          for (const { pad } of tapped) {
            const numbers = desk.log.filter((event) => event.pad === pad).map((event) => event.seq);
            expect(numbers).toEqual(numbers.toSorted((one, other) => one - other));
          }
          expect(tabs.flatMap((tab) => tab.queue.aside.get())).toEqual([]);
          for (const tab of tabs) await tab.queue.written();
          const left = await tabs[0]?.queue.eventsOf(set);
          expect(byName(left ?? [])).toEqual(byName(tapped));
        } finally {
          for (const tab of tabs) tab.kill();
        }
      },
    ),
    { numRuns: 250 },
  );
}, 30_000);

function byName(events: readonly SetEvent[]): SetEvent[] {
  return events.toSorted((one, other) => (one.pad === other.pad ? one.seq - other.seq : one.pad < other.pad ? -1 : 1));
}
