import { type EventRef, refKey, type SetEvent } from '../../shared-types/log/events.ts';
import { type Observable, type Settable, settable } from './observable.ts';
import { memoryStore, type OutboxStore, type SetStart, type StoredEvent, type StoredSet } from './store.ts';

type WithoutName<E> = E extends SetEvent ? Omit<E, 'pad' | 'seq'> : never;
/** An event before the outbox has given it its pad and running number. */
export type EventDraft = WithoutName<SetEvent>;

/** An event that the desk did not take: kept here, and told. */
export interface Aside {
  readonly event: SetEvent;
  readonly reason: 'conflict' | 'refused';
  readonly message: string;
}

/** What happens in the outbox, for the sender and the logs of sets. */
export type Notice =
  | { readonly kind: 'begun'; readonly start: SetStart }
  | { readonly kind: 'put' | 'settled' | 'aside'; readonly event: SetEvent };

/** What the screens see of the outbox. */
export interface Outbox {
  /** This page load's own name in the log. */
  readonly pad: string;
  /** Keeps the set here and makes it at the desk as soon as that answers. Idempotent. */
  readonly begin: (start: SetStart) => void;
  /** Names the event, keeps it, and sends it until the desk has it. Returns at once; the screen shows it from here. */
  readonly put: (draft: EventDraft) => SetEvent;
  /** Events of a set that the desk has not acknowledged yet; the same observable for the same set. */
  readonly pending: (set: string) => Observable<number>;
  /** The same over all sets. */
  readonly total: Observable<number>;
  readonly aside: Observable<readonly Aside[]>;
  /** The user has read of it: it is told no more, and kept for some days. */
  readonly dismiss: (ref: EventRef) => void;
  /** `memory`: the browser keeps nothing, and closing the page loses what is not sent. */
  readonly storage: Observable<'opening' | 'kept' | 'memory'>;
  /** Resolves when all that was put so far is kept here: what a page waits for before it lets itself be closed. */
  readonly written: () => Promise<void>;
  /** Why the desk does not take what is sent, in words (a full disk, say); null while it does. */
  readonly trouble: Observable<string | null>;
}

/** What the sender does with the outbox. */
export interface Queue extends Outbox {
  readonly listen: (listener: (notice: Notice) => void) => () => void;
  readonly nextStarts: () => SetStart[];
  readonly nextEvents: (limit: number) => SetEvent[];
  readonly startOf: (set: string) => Promise<SetStart | null>;
  readonly settle: (refs: readonly EventRef[]) => void;
  readonly setAside: (ref: EventRef, reason: Aside['reason'], message: string) => void;
  readonly created: (set: string) => void;
  readonly tell: (trouble: string | null) => void;
  /** Everything known here of a set, but for what was set aside. */
  readonly eventsOf: (set: string) => Promise<SetEvent[]>;
  /** Keeps what the desk has told of a set that is being judged here. */
  readonly keep: (start: SetStart, events: readonly SetEvent[]) => void;
  /** Takes up what other page loads have left. */
  readonly sweep: () => Promise<void>;
  readonly close: () => void;
}

const keepDays = 7;

/**
 * Names this page load: 128 random bits. `crypto.randomUUID` would need a secure origin, which a pad may not have.
 * @internal exported for its test
 */
export function newPad(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

export function createOutbox(
  openStore: () => Promise<OutboxStore>,
  pad = newPad(),
  wallClock: () => number = Date.now,
): Queue {
  const unsent = new Map<string, SetEvent>();
  const starts = new Map<string, SetStart>();
  const keptSets = new Set<string>();
  const counts = new Map<string, Settable<number>>();
  const listeners = new Set<(notice: Notice) => void>();
  const total = settable(0);
  const aside = settable<readonly Aside[]>([]);
  const storage = settable<'opening' | 'kept' | 'memory'>('opening');
  const trouble = settable<string | null>(null);
  const memory = memoryStore();
  let store = memory;
  let seq = 0;

  const opened = open().catch(lostStore);
  let writes: Promise<void> = opened;

  async function open(): Promise<void> {
    store = await openStore();
    storage.set('kept');
    await sweep();
    await store.forgetBefore(wallClock() - keepDays * 86_400_000);
  }

  function lostStore(): void {
    store = memory;
    storage.set('memory');
  }

  /** Writes in order, one after the other; what cannot be written stays in memory. */
  function write(job: (into: OutboxStore) => Promise<void>): void {
    writes = writes.then(() => job(store)).catch(lostStore);
  }

  function count(set: string): Settable<number> {
    const known = counts.get(set) ?? settable(0);
    counts.set(set, known);
    return known;
  }

  function add(event: SetEvent): void {
    unsent.set(refKey(event), event);
    count(event.set).set(count(event.set).get() + 1);
    total.set(unsent.size);
    notify({ kind: 'put', event });
  }

  function remove(ref: EventRef): SetEvent | null {
    const event = unsent.get(refKey(ref));
    if (event === undefined) return null;
    unsent.delete(refKey(ref));
    count(event.set).set(count(event.set).get() - 1);
    total.set(unsent.size);
    return event;
  }

  function notify(notice: Notice): void {
    for (const listener of [...listeners]) listener(notice);
  }

  function addAside(event: SetEvent, reason: Aside['reason'], message: string): void {
    if (aside.get().some((one) => refKey(one.event) === refKey(event))) return;
    aside.set([...aside.get(), { event, reason, message }]);
    notify({ kind: 'aside', event });
  }

  async function sweep(): Promise<void> {
    const { events, sets } = await store.left();
    for (const { start } of sets) starts.set(start.setup.id, start);
    events.sort((one, other) => one.event.seq - other.event.seq);
    for (const { event, standing, why } of events) {
      if (standing === 'conflict' || standing === 'refused') addAside(event, standing, why);
      else if (standing === 'unsent' && !unsent.has(refKey(event))) add(event);
    }
  }

  const entry = (event: SetEvent, standing: StoredEvent['standing'], why = ''): StoredEvent => ({
    event,
    standing,
    why,
  });
  const setEntry = (start: SetStart, created: boolean): StoredSet => ({ start, created, savedAt: wallClock() });

  return {
    pad,
    pending: count,
    total,
    aside,
    storage,
    trouble,
    dismiss: (ref) => {
      const read = aside.get().find((one) => refKey(one.event) === refKey(ref));
      if (read === undefined) return;
      aside.set(aside.get().filter((one) => one !== read));
      write((into) => into.putEvents([entry(read.event, 'dismissed', read.message)]));
    },
    begin: (start) => {
      starts.set(start.setup.id, start);
      write((into) => into.putSet(setEntry(start, false)));
      notify({ kind: 'begun', start });
    },
    put: (draft) => {
      seq += 1;
      const event: SetEvent = { ...draft, pad, seq };
      write((into) => into.putEvents([entry(event, 'unsent')]));
      add(event);
      return event;
    },
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    nextStarts: () => [...starts.values()],
    nextEvents: (limit) => [...unsent.values()].slice(0, limit),
    startOf: async (set) => starts.get(set) ?? (await opened.then(() => store.set(set)))?.start ?? null,
    settle: (refs) => {
      const settled = refs.map(remove).filter((event) => event !== null);
      write((into) => into.putEvents(settled.map((event) => entry(event, 'sent'))));
      for (const event of settled) notify({ kind: 'settled', event });
    },
    setAside: (ref, reason, message) => {
      const event = remove(ref);
      if (event === null) return;
      write((into) => into.putEvents([entry(event, reason, message)]));
      addAside(event, reason, message);
    },
    created: (set) => {
      const start = starts.get(set);
      starts.delete(set);
      if (start !== undefined) write((into) => into.putSet(setEntry(start, true)));
    },
    tell: trouble.set,
    eventsOf: async (set) => {
      await opened;
      const events = new Map<string, SetEvent>();
      for (const { event, standing } of await store.eventsOf(set)) {
        if (standing === 'unsent' || standing === 'sent') events.set(refKey(event), event);
      }
      for (const [key, event] of unsent) if (event.set === set) events.set(key, event);
      return [...events.values()];
    },
    keep: (start, events) => {
      const { id } = start.setup;
      if (!keptSets.has(id) && !starts.has(id)) write((into) => into.putSet(setEntry(start, true)));
      keptSets.add(id);
      const own = new Set([...unsent.keys(), ...aside.get().map((one) => refKey(one.event))]);
      const others = events.filter((event) => !own.has(refKey(event)));
      if (others.length > 0) write((into) => into.putEvents(others.map((event) => entry(event, 'sent'))));
    },
    sweep: async () => {
      await writes;
      await sweep().catch(lostStore);
    },
    written: () => writes,
    close: () => {
      void writes.then(() => store.close());
    },
  };
}
