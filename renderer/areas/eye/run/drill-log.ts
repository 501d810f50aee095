import type { Drill } from '../../../../shared-types/drills/drill.ts';
import type { DrillEvent } from '../../../../shared-types/drills/events.ts';
import { foldDrill } from '../../../../shared-types/drills/fold.ts';
import type { DrillState } from '../../../../shared-types/drills/state.ts';
import type { DeskClient } from '../../../link/connection.ts';
import { type Observable, settable } from '../../../link/observable.ts';
import { failureOf } from '../../../parts/desk/failure.ts';

type Without<E> = E extends DrillEvent ? Omit<E, 'drill' | 'pad' | 'seq' | 'at'> : never;
/** An event before the log names it. */
export type DrillDraft = Without<DrillEvent>;

export interface DrillLog {
  readonly drill: Drill;
  readonly state: Observable<DrillState>;
  /** Events that the desk has not acknowledged yet. */
  readonly waiting: Observable<number>;
  /** Why the desk refuses, in its own words; null while it takes what is sent. */
  readonly refused: Observable<string | null>;
  /** Adds an event: it counts at once, and is sent until the desk has it. */
  put(draft: DrillDraft): DrillEvent;
  /** Resolves once the desk has everything. */
  sent(): Promise<void>;
}

const firstPause = 250;
const longestPause = 4_000;

/**
 * The log of a drill that runs on this page, under a pad name of its own.
 * @param known what the desk has of it already
 * @param now milliseconds on the page's monotonic clock
 */
export function openDrillLog(
  drill: Drill,
  known: readonly DrillEvent[],
  pad: string,
  append: (events: DrillEvent[]) => Promise<unknown>,
  now: () => number = () => performance.now(),
): DrillLog {
  let events = [...known];
  let seq = 0;
  let sending = false;
  const queue: DrillEvent[] = [];
  // A drill taken up again goes on after its last event: between pads, the same millisecond would leave the order open.
  const begun = now() - Math.max(0, ...known.map((event) => event.at + 1));
  const state = settable(foldDrill(drill, events));
  const waiting = settable(0);
  const refused = settable<string | null>(null);
  let settled: (() => void)[] = [];

  async function send(): Promise<void> {
    if (sending) return;
    sending = true;
    let pause = firstPause;
    while (queue.length > 0) {
      const batch = queue.slice(0, 200);
      try {
        await append(batch);
        queue.splice(0, batch.length);
        refused.set(null);
        pause = firstPause;
      } catch (error) {
        const failure = failureOf(error);
        if (failure.code !== 'LINK') refused.set(failure.message);
        await new Promise((resolve) => setTimeout(resolve, pause));
        pause = Math.min(longestPause, 2 * pause);
      }
      waiting.set(queue.length);
    }
    sending = false;
    for (const done of settled) done();
    settled = [];
  }

  return {
    drill,
    state,
    waiting,
    refused,
    put: (draft) => {
      seq += 1;
      const at = Math.max(0, Math.round(now() - begun));
      const event: DrillEvent = { ...draft, drill: drill.id, pad, seq, at };
      events = [...events, event];
      queue.push(event);
      state.set(foldDrill(drill, events));
      waiting.set(queue.length);
      void send();
      return event;
    },
    sent: () => (queue.length === 0 ? Promise.resolve() : new Promise((resolve) => settled.push(resolve))),
  };
}

/** What sends a drill's events to the desk. */
export function appendTo(client: DeskClient): (events: DrillEvent[]) => Promise<unknown> {
  return (events) => client.drills.append({ events });
}
