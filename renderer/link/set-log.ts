import { refKey, type SetEvent } from '../../shared-types/log/events.ts';
import { foldSet } from '../../shared-types/log/fold.ts';
import { type Observable, settable } from './observable.ts';
import type { Queue } from './outbox.ts';
import type { SetStart } from './store.ts';
import { type StreamCall, subscribeTo } from './subscription.ts';

/** What is known here of one set: the desk's log and the outbox as one. */
export interface SetView {
  /** `opening` until either the desk or this browser has told of it; `not-found` where neither knows it. */
  readonly status: 'opening' | 'open' | 'not-found';
  readonly start: SetStart | null;
  /** Every event known, each once, in the order it came to be known; `foldSet` orders them. A new array on change. */
  readonly events: readonly SetEvent[];
  /** Whether the desk's own events are all in and its stream is open. */
  readonly live: boolean;
}

export interface SetLog extends Observable<SetView> {
  readonly id: string;
  /** Events that the desk has not acknowledged yet. */
  readonly pending: Observable<number>;
  readonly close: () => void;
}

/** Where the desk's part of a log comes from. */
export interface SetSource {
  readonly whenConnected: () => Promise<void>;
  readonly get: (input: { id: string }) => Promise<SetStart>;
  /** The events there already, then each batch as it is written. */
  readonly watch: StreamCall<{ id: string }, { events: SetEvent[] }>;
}

/** How long after the desk did not know the set it is asked again, milliseconds. */
const againMs = 1_000;
const onItsWayMs = 100;
const unknown: SetView = { status: 'opening', start: null, events: [], live: false };

/** Opens the log of a set: from the outbox at once, from the desk when it answers, and from then on both. */
export function openSetLog(id: string, source: SetSource, queue: Queue): SetLog {
  const view = settable(unknown);
  const events = new Map<string, SetEvent>();
  const atDesk = new Set<string>();
  let over = false;

  function change(part: Partial<SetView>): void {
    if (!over) view.set({ ...view.get(), ...part });
  }

  function show(part: Partial<SetView> = {}): void {
    change({ events: [...events.values()], ...part });
  }

  function addLocal(own: readonly SetEvent[]): void {
    for (const event of own) if (!events.has(refKey(event))) events.set(refKey(event), event);
  }

  function addFromDesk(told: readonly SetEvent[]): void {
    const fresh = told.filter((event) => !events.has(refKey(event)));
    for (const event of told) {
      events.set(refKey(event), event);
      atDesk.add(refKey(event));
    }
    show({ live: true });
    if (view.get().start === null) void readStart();
    else keepRunning(fresh);
  }

  async function readStart(): Promise<void> {
    // Where the desk goes away meanwhile, the stream's next beginning asks again.
    const answer = await source.get({ id }).catch(() => null);
    if (answer === null || view.get().start !== null) return;
    const { setup, sheet, athlete, judge } = answer;
    change({ status: 'open', start: { setup, sheet, athlete, judge } });
    keepRunning(view.get().events);
  }

  /** A set that is still to be judged is kept here, so that a reload without the desk can go on with it. */
  function keepRunning(fresh: readonly SetEvent[]): void {
    const { start, events: all } = view.get();
    if (start === null || over) return;
    const { phase } = foldSet(id, all);
    if (phase === 'finished' || phase === 'abandoned') return;
    queue.keep(start, fresh);
  }

  const stopQueue = queue.listen((notice) => {
    if (notice.kind === 'begun') {
      if (notice.start.setup.id === id) change({ status: 'open', start: notice.start });
    } else if (notice.event.set === id && notice.kind === 'put') {
      addLocal([notice.event]);
      show();
    } else if (notice.event.set === id && notice.kind === 'aside') {
      if (!atDesk.has(refKey(notice.event))) events.delete(refKey(notice.event));
      show();
    }
  });

  async function readHere(): Promise<void> {
    const [start, own] = await Promise.all([queue.startOf(id), queue.eventsOf(id)]);
    addLocal(own);
    if (start === null) show();
    else show({ status: 'open', start });
  }

  const here = readHere();
  const stopWatching = watch();

  function watch(): () => void {
    let stop = () => {};
    const open = (): void => {
      stop = subscribeTo(
        source,
        source.watch,
        { id },
        (item) => addFromDesk(item.events),
        () => void afterRefusal(),
        () => change({ live: false }),
      );
    };
    /** The desk does not know the set: it may be on its way from here. */
    async function afterRefusal(): Promise<void> {
      await here;
      const begunHere = view.get().start !== null;
      if (!begunHere) change({ status: 'not-found' });
      await new Promise((resolve) => setTimeout(resolve, begunHere ? onItsWayMs : againMs));
      if (!over) open();
    }
    open();
    return () => stop();
  }

  return {
    id,
    get: view.get,
    subscribe: view.subscribe,
    pending: queue.pending(id),
    close: () => {
      over = true;
      stopQueue();
      stopWatching();
    },
  };
}
