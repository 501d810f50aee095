import type { SetRecord } from '../../shared-types/contract/sets.ts';
import type { SetEvent } from '../../shared-types/log/events.ts';
import type { SetSetup } from '../../shared-types/log/setup.ts';
import type { Person } from '../../shared-types/people.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';

/** Invented people of an invented gym. */
export function somebody(index: number, name: string, roles: { athlete?: boolean; judge?: boolean } = {}): Person {
  return {
    id: `00000000-0000-4000-8000-0000000001${String(index).padStart(2, '0')}`,
    name,
    nickname: '',
    athlete: roles.athlete ?? true,
    judge: roles.judge ?? true,
    notes: '',
    archivedAt: null,
    createdAt: 1_700_000_000_000,
  };
}

export const athlete = somebody(1, 'Ines Marrow');
export const judge = somebody(2, 'Tobias Quill');
const started = Date.UTC(2026, 8, 7, 17, 30);

export function setupOf(changes: Partial<SetSetup> = {}): SetSetup {
  return {
    id: '00000000-0000-4000-8000-000000000001',
    athlete: athlete.id,
    judge: judge.id,
    sheet: { id: 'wall-throw', version: 1 },
    goal: { kind: 'reps', reps: 10 },
    loadKg: 6,
    heightM: 2.7,
    before: 'fresh',
    tags: [],
    note: '',
    role: 'main',
    practice: false,
    createdAt: started - 60_000,
    ...changes,
  };
}

type Body = SetEvent extends infer E ? (E extends SetEvent ? Omit<E, 'set' | 'pad' | 'seq'> : never) : never;

/** A log of one pad: a go, then the given bodies, numbered from 1. */
export function logOf(setup: SetSetup, bodies: readonly Body[], pad = 'pad-a'): SetEvent[] {
  const all: Body[] = [{ kind: 'go', at: 0, wallClock: setup.createdAt + 60_000 }, ...bodies];
  return all.map((body, index) => ({ set: setup.id, pad, seq: index + 1, ...body }));
}

/** Calls at a steady pace: one character an attempt, "." counted, "!" caution, a letter a no-rep for that fault. */
export function calls(pattern: string, everyMs = 2_000, first = 2_000): Body[] {
  const faults: Record<string, string> = { D: 'depth', L: 'line', A: 'aim', T: 'stand', B: 'bounce' };
  return pattern.split('').map((mark, index) => {
    const at = first + index * everyMs;
    if (mark === '.') return { kind: 'call', at, verdict: 'counted', faults: [] };
    if (mark === '!') return { kind: 'call', at, verdict: 'caution', faults: [] };
    const fault = faults[mark];
    return { kind: 'call', at, verdict: 'no-rep', faults: fault === undefined ? [] : [fault] };
  });
}

export function recordOf(setup: SetSetup, events: SetEvent[]): SetRecord {
  return { setup, sheet: wallThrow, athlete, judge, events };
}
