import { implement, ORPCError } from '@orpc/server';
import { contract } from '../../shared-types/contract/contract.ts';
import type { Acknowledgement } from '../../shared-types/contract/sets.ts';
import { refKey, type SetEvent, sameEvent } from '../../shared-types/log/events.ts';
import type { SetSetup } from '../../shared-types/log/setup.ts';
import type { Person } from '../../shared-types/people.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';

/** A desk that keeps its sets in memory: enough of the contract to test what carries it. */
export interface MemoryDesk {
  readonly router: ReturnType<typeof routerOver>;
  readonly log: SetEvent[];
  readonly sets: Map<string, SetSetup>;
  /** Streams that are being listened to. */
  readonly listeners: Set<(events: readonly SetEvent[]) => void>;
  /** Called before each append, so that a test can refuse or delay it. */
  beforeAppend: (events: readonly SetEvent[]) => Promise<void> | void;
  readonly append: (events: readonly SetEvent[]) => Acknowledgement[];
}

export function memoryDesk(host: 'electron' | 'browser' = 'browser'): MemoryDesk {
  const log: SetEvent[] = [];
  const byKey = new Map<string, SetEvent>();
  const listeners: MemoryDesk['listeners'] = new Set();
  const append = (events: readonly SetEvent[]): Acknowledgement[] => {
    const fresh: SetEvent[] = [];
    const answers = events.map((event): Acknowledgement => {
      const known = byKey.get(refKey(event));
      const { pad, seq } = event;
      if (known !== undefined) return { pad, seq, outcome: sameEvent(known, event) ? 'already' : 'conflict' };
      byKey.set(refKey(event), event);
      fresh.push(event);
      return { pad, seq, outcome: 'new' };
    });
    log.push(...fresh);
    for (const listener of listeners) listener(fresh);
    return answers;
  };
  const parts = { log, sets: new Map<string, SetSetup>(), listeners, beforeAppend: () => {}, append };
  return Object.assign(parts, { router: routerOver(parts, host) });
}

export const somebody: Person = {
  id: '0b5f6f2e-6d0c-4c60-8f43-0d1f5d0f9a01',
  name: 'Ada Example',
  nickname: '',
  athlete: true,
  judge: true,
  notes: '',
  archivedAt: null,
  createdAt: 0,
};

export const sheet = wallThrow;

export function someSetup(id: string): SetSetup {
  return {
    id,
    athlete: somebody.id,
    judge: somebody.id,
    sheet: { id: sheet.id, version: sheet.version },
    goal: { kind: 'reps', reps: 100 },
    loadKg: 6,
    heightM: 3,
    before: 'fresh',
    tags: [],
    note: '',
    role: 'main',
    practice: false,
    createdAt: 1_700_000_000_000,
  };
}

function routerOver(desk: Omit<MemoryDesk, 'router'>, host: 'electron' | 'browser') {
  const answer = implement({ desk: contract.desk, people: contract.people, sets: contract.sets });
  const unused = (): never => {
    throw new ORPCError('NOT_IMPLEMENTED');
  };
  const known = (id: string): SetSetup => {
    const setup = desk.sets.get(id);
    if (setup === undefined) throw new ORPCError('NOT_FOUND', { status: 404, data: { what: 'set', id } });
    return setup;
  };
  return answer.router({
    desk: {
      about: answer.desk.about.handler(() => ({ version: '0', host, databasePath: ':memory:', demo: false })),
      time: answer.desk.time.handler(() => ({ now: Date.now() })),
      changes: answer.desk.changes.handler(unused),
    },
    people: {
      list: answer.people.list.handler(() => []),
      save: answer.people.save.handler(({ input }) => input),
      archive: answer.people.archive.handler(unused),
      restore: answer.people.restore.handler(unused),
    },
    sets: {
      create: answer.sets.create.handler(({ input }) => {
        const outcome = desk.sets.has(input.id) ? 'already' : 'new';
        desk.sets.set(input.id, input);
        return { outcome } as const;
      }),
      append: answer.sets.append.handler(async ({ input }) => {
        for (const event of input.events) known(event.set);
        await desk.beforeAppend(input.events);
        return { acknowledgements: desk.append(input.events) };
      }),
      get: answer.sets.get.handler(({ input }) => ({
        setup: known(input.id),
        sheet,
        athlete: somebody,
        judge: somebody,
        events: desk.log.filter((event) => event.set === input.id),
      })),
      list: answer.sets.list.handler(() => ({ lines: [], total: 0, next: null })),
      unfinished: answer.sets.unfinished.handler(() => []),
      watch: answer.sets.watch.handler(async function* ({ input, signal }) {
        known(input.id);
        const waiting: SetEvent[][] = [desk.log.filter((event) => event.set === input.id)];
        let wake = Promise.withResolvers<void>();
        const listener = (events: readonly SetEvent[]): void => {
          waiting.push(events.filter((event) => event.set === input.id));
          wake.resolve();
        };
        desk.listeners.add(listener);
        signal?.addEventListener('abort', () => wake.resolve());
        try {
          while (!signal?.aborted) {
            for (const events of waiting.splice(0)) yield { events };
            if (waiting.length > 0) continue;
            await wake.promise;
            wake = Promise.withResolvers();
          }
        } finally {
          desk.listeners.delete(listener);
        }
      }),
      export: answer.sets.export.handler(unused),
    },
  });
}
