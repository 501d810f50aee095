import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { LedgerError } from '../../main/ledger/errors.ts';
import type { Ledger } from '../../main/ledger/ledger.ts';
import { type OpenOptions, openLedger } from '../../main/ledger/open.ts';
import type { EventOf, SetEvent } from '../../shared-types/log/events.ts';
import type { SetSetup } from '../../shared-types/log/setup.ts';
import type { Person } from '../../shared-types/people.ts';
import type { StandardSheet } from '../../shared-types/sheets/sheet.ts';

/** A folder of the test's own, removed when it has finished. */
export function folder(): string {
  const path = mkdtempSync(join(tmpdir(), 'plumbline-ledger-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  return path;
}

export async function openOk(path: string, options: OpenOptions = {}): Promise<Ledger> {
  const opened = await openLedger(path, options);
  if (opened.state !== 'open') throw new Error(`damaged: ${opened.problems.join('; ')}`);
  return opened.ledger;
}

/** A ledger in a folder of its own, closed when the test has finished. */
export async function freshLedger(options: OpenOptions = {}): Promise<Ledger> {
  const ledger = await openOk(join(folder(), 'plumbline.db'), options);
  onTestFinished(() => ledger.close());
  return ledger;
}

/** The code and the sentence of the `LedgerError` that `work` ends in. */
export async function refusal(work: () => unknown): Promise<{ code: string; message: string }> {
  try {
    await work();
  } catch (error) {
    if (error instanceof LedgerError) return { code: error.code, message: error.message };
    throw error;
  }
  throw new Error('It was not refused.');
}

/** An id for the number: the same number gives the same id. */
export function id(number: number): string {
  return `00000000-0000-4000-8000-${number.toString(16).padStart(12, '0')}`;
}

export function person(number: number, change: Partial<Person> = {}): Person {
  return {
    id: id(number),
    name: `Person ${number}`,
    nickname: '',
    athlete: true,
    judge: true,
    notes: '',
    archivedAt: null,
    createdAt: 1_000 + number,
    ...change,
  };
}

export function sheet(change: Partial<StandardSheet> = {}): StandardSheet {
  return {
    id: 'lunge',
    version: 1,
    station: 'Lunge',
    repsName: 'lunges',
    movement: 'other',
    summary: 'Knee to the floor, stand tall.',
    goals: ['reps', 'open'],
    usualGoal: { kind: 'reps', amount: 50 },
    consequence: { kind: 'repeat' },
    loadsKg: [10, 20],
    heightsM: [],
    heightName: '',
    markEveryM: null,
    equipment: [],
    cautions: [],
    faults: [fault('knee', 'K'), fault('tall', 'T')],
    shipped: false,
    createdAt: 5_000,
    ...change,
  };
}

function fault(code: string, initial: string) {
  return {
    code,
    name: code,
    initial,
    standard: 'It is met.',
    stand: 'Beside.',
    look: 'The knee.',
    cue: 'Down!',
    remedy: 'Slow ones.',
    bodyHeight: 0.3,
    margin: null,
  };
}

export function setup(number: number, change: Partial<SetSetup> = {}): SetSetup {
  return {
    id: id(0x5000_0000 + number),
    athlete: id(1),
    judge: id(2),
    sheet: { id: 'lunge', version: 1 },
    goal: { kind: 'reps', reps: 50 },
    loadKg: 10,
    heightM: null,
    before: 'fresh',
    tags: [],
    note: '',
    role: 'main',
    practice: false,
    createdAt: 100_000 + number,
    ...change,
  };
}

/** Two people, one sheet and set 1: what a log needs under it. */
export function furnish(ledger: Ledger): SetSetup {
  ledger.people.create(person(1, { name: 'Ada Lind', nickname: 'Addie' }));
  ledger.people.create(person(2, { name: 'Bo Zoë Marsh' }));
  ledger.sheets.publish(sheet());
  const first = setup(1);
  ledger.sets.create(first);
  return first;
}

export function go(set: string, change: Partial<EventOf<'go'>> = {}): SetEvent {
  return { set, pad: 'pad-a', seq: 1, at: 0, kind: 'go', wallClock: 200_000, ...change };
}

export function call(set: string, seq: number, change: Partial<EventOf<'call'>> = {}): SetEvent {
  return { set, pad: 'pad-a', seq, at: seq * 2_000, kind: 'call', verdict: 'counted', faults: [], ...change };
}

/** A go, calls 2 to n-1 of which every fifth is a no-rep, and a finish. */
export function wholeLog(set: string, events: number, pad = 'pad-a'): SetEvent[] {
  return Array.from({ length: events }, (_, index): SetEvent => {
    const seq = index + 1;
    if (seq === 1) return go(set, { pad });
    if (seq === events) return { set, pad, seq, at: seq * 2_000, kind: 'finish' };
    return seq % 5 === 0 ? call(set, seq, { pad, verdict: 'no-rep', faults: ['knee'] }) : call(set, seq, { pad });
  });
}
