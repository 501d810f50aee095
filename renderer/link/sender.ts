import { ORPCError } from '@orpc/client';
import type { Acknowledgement } from '../../shared-types/contract/sets.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import type { SetSetup } from '../../shared-types/log/setup.ts';
import type { Queue } from './outbox.ts';

/** The two calls of the desk that the outbox needs, and whether it is there. */
export interface Receiver {
  readonly whenConnected: () => Promise<void>;
  readonly create: (setup: SetSetup) => Promise<unknown>;
  readonly append: (events: readonly SetEvent[]) => Promise<readonly Acknowledgement[]>;
}

export interface SenderTimings {
  readonly batch: number;
  readonly firstPauseMs: number;
  readonly longestPauseMs: number;
  /** How often what other tabs have left behind is looked for, milliseconds. */
  readonly sweepMs: number;
}

const usualSending: SenderTimings = { batch: 100, firstPauseMs: 100, longestPauseMs: 5_000, sweepMs: 15_000 };

/**
 * Sends what the outbox holds, in order, one batch at a time, until the desk has acknowledged it. Sending twice is
 * harmless: the desk knows an event by its pad and number. The answer ends it.
 */
export function startSending(queue: Queue, desk: Receiver, timings: SenderTimings = usualSending): () => void {
  let over = false;
  let pause = timings.firstPauseMs;
  let limit = timings.batch;
  let work = Promise.withResolvers<void>();
  const stopListening = queue.listen((notice) => {
    if (notice.kind === 'put' || notice.kind === 'begun') work.resolve();
  });
  const timer = setInterval(() => void queue.sweep(), timings.sweepMs);

  async function run(): Promise<void> {
    while (!over) {
      if (queue.nextStarts().length === 0 && queue.nextEvents(1).length === 0) await work.promise;
      work = Promise.withResolvers();
      await desk.whenConnected();
      if (over) return;
      try {
        await sendStarts();
        if (over) return;
        await sendEvents();
        queue.tell(null);
        pause = timings.firstPauseMs;
      } catch (error) {
        if (error instanceof ORPCError) queue.tell(error.message);
        await new Promise((resolve) => setTimeout(resolve, pause * (0.5 + Math.random() / 2)));
        pause = Math.min(pause * 2, timings.longestPauseMs);
      }
    }
  }

  async function sendStarts(): Promise<void> {
    for (const start of queue.nextStarts()) {
      try {
        await desk.create(start.setup);
      } catch (error) {
        // Refused for good: its events will be refused too, and each is set aside with the desk's words.
        if (!isRefusal(error)) throw error;
        queue.tell(error.message);
      }
      queue.created(start.setup.id);
    }
  }

  async function sendEvents(): Promise<void> {
    const events = queue.nextEvents(limit);
    if (events.length === 0) return;
    try {
      const answers = await desk.append(events);
      queue.settle(answers.filter((answer) => answer.outcome !== 'conflict'));
      for (const answer of answers.filter((one) => one.outcome === 'conflict')) {
        queue.setAside(answer, 'conflict', 'The desk has another event of the same name; its own one stands.');
      }
      limit = Math.min(limit * 2, timings.batch);
    } catch (error) {
      if (!isRefusal(error)) throw error;
      await afterRefusal(events, error);
    }
  }

  /** Finds the event that is refused by halving the batch: one bad event must not hold up the others. */
  async function afterRefusal(events: readonly SetEvent[], error: ORPCError<string, unknown>): Promise<void> {
    const [event] = events;
    if (event === undefined) return;
    if (events.length > 1) {
      limit = Math.ceil(events.length / 2);
      return;
    }
    limit = 1;
    const start = error.code === 'NOT_FOUND' ? await queue.startOf(event.set) : null;
    if (start === null) return queue.setAside(event, 'refused', error.message);
    // The desk has lost the set, as when an older copy of its database was restored: make it again from what is here.
    const created = await desk.create(start.setup).catch((again: unknown) => again);
    if (isRefusal(created)) queue.setAside(event, 'refused', created.message);
    else if (created instanceof Error) throw created;
  }

  void run();
  return () => {
    over = true;
    clearInterval(timer);
    stopListening();
    work.resolve();
  };
}

/** Whether the desk says no for good. A full disk, a fault of its own or a broken connection may pass. */
function isRefusal(error: unknown): error is ORPCError<string, unknown> {
  return error instanceof ORPCError && error.status < 500 && error.status !== 429;
}
