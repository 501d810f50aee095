import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { type EventRef, refKey, type SetEvent } from '../../shared-types/log/events.ts';
import type { SetSetup } from '../../shared-types/log/setup.ts';
import type { Person } from '../../shared-types/people.ts';
import type { StandardSheet } from '../../shared-types/sheets/sheet.ts';

/** What a set is judged under: enough to go on with it while the desk is away. */
export interface SetStart {
  readonly setup: SetSetup;
  readonly sheet: StandardSheet;
  readonly athlete: Person;
  readonly judge: Person;
}

/**
 * `unsent` waits for the desk; `sent` is at the desk and kept here so that a reload without it can go on.
 * `conflict` and `refused` were not taken and are told until the user has read of it: `dismissed`.
 */
export type Standing = 'unsent' | 'sent' | 'conflict' | 'refused' | 'dismissed';

const waiting: readonly Standing[] = ['unsent', 'conflict', 'refused'];

export interface StoredEvent {
  readonly event: SetEvent;
  readonly standing: Standing;
  /** Why the desk did not take it, in words; empty where it did, or was not asked yet. */
  readonly why: string;
}

export interface StoredSet {
  readonly start: SetStart;
  /** Whether the desk has the set. */
  readonly created: boolean;
  /** Milliseconds since 1970 UTC. */
  readonly savedAt: number;
}

/** Where the outbox keeps what must survive a reload. Writes resolve once they are on disk. */
export interface OutboxStore {
  putEvents(entries: readonly StoredEvent[]): Promise<void>;
  putSet(entry: StoredSet): Promise<void>;
  set(id: string): Promise<StoredSet | null>;
  eventsOf(set: string): Promise<StoredEvent[]>;
  /** All that another page load may have left behind: events not taken, sets not created. */
  left(): Promise<{ events: StoredEvent[]; sets: StoredSet[] }>;
  /** Forgets sets saved before this instant, milliseconds since 1970 UTC, that wait for nothing. */
  forgetBefore(instant: number): Promise<void>;
  close(): void;
}

interface Schema extends DBSchema {
  events: {
    key: [string, number];
    value: StoredEvent;
    indexes: { set: string; standing: Standing };
  };
  sets: { key: string; value: StoredSet };
}

const version = 1;

/** Opens the store of this origin; rejects where the browser gives none (private windows of some browsers). */
export async function openStore(name: string, onLost: () => void = () => {}): Promise<OutboxStore> {
  const database = await openDB<Schema>(name, version, {
    upgrade: (fresh) => {
      const events = fresh.createObjectStore('events', { keyPath: ['event.pad', 'event.seq'] });
      events.createIndex('set', 'event.set');
      events.createIndex('standing', 'standing');
      fresh.createObjectStore('sets', { keyPath: 'start.setup.id' });
    },
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
    terminated: onLost,
  });
  return storeIn(database);
}

function storeIn(database: IDBPDatabase<Schema>): OutboxStore {
  // The browser may otherwise answer before the bytes have left its own buffers.
  const strict = { durability: 'strict' } as const;
  return {
    putEvents: async (entries) => {
      const transaction = database.transaction('events', 'readwrite', strict);
      await Promise.all([...entries.map((entry) => transaction.store.put(entry)), transaction.done]);
    },
    putSet: async (entry) => {
      const transaction = database.transaction('sets', 'readwrite', strict);
      await Promise.all([transaction.store.put(entry), transaction.done]);
    },
    set: async (id) => (await database.get('sets', id)) ?? null,
    eventsOf: (set) => database.getAllFromIndex('events', 'set', set),
    left: async () => {
      const found = await Promise.all(waiting.map((one) => database.getAllFromIndex('events', 'standing', one)));
      const sets = (await database.getAll('sets')).filter((entry) => !entry.created);
      return { events: found.flat(), sets };
    },
    forgetBefore: async (instant) => {
      const transaction = database.transaction(['events', 'sets'], 'readwrite', strict);
      const events = transaction.objectStore('events');
      for (const entry of await transaction.objectStore('sets').getAll()) {
        const { id } = entry.start.setup;
        const own = await events.index('set').getAll(id);
        if (entry.savedAt >= instant || !entry.created || own.some((one) => waiting.includes(one.standing))) continue;
        for (const { event } of own) await events.delete([event.pad, event.seq]);
        await transaction.objectStore('sets').delete(id);
      }
      await transaction.done;
    },
    close: () => database.close(),
  };
}

/** The same in memory, where the browser keeps nothing: it ends with the page. */
export function memoryStore(): OutboxStore {
  const events = new Map<string, StoredEvent>();
  const sets = new Map<string, StoredSet>();
  const key = (ref: EventRef): string => refKey(ref);
  return {
    putEvents: async (entries) => {
      for (const entry of entries) events.set(key(entry.event), entry);
    },
    putSet: async (entry) => {
      sets.set(entry.start.setup.id, entry);
    },
    set: async (id) => sets.get(id) ?? null,
    eventsOf: async (set) => [...events.values()].filter((entry) => entry.event.set === set),
    left: async () => ({
      events: [...events.values()].filter((entry) => waiting.includes(entry.standing)),
      sets: [...sets.values()].filter((entry) => !entry.created),
    }),
    forgetBefore: async () => {},
    close: () => {},
  };
}
