import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import type { NightEvent } from '../../shared-types/night/events.ts';
import { foldNight } from '../../shared-types/night/fold.ts';
import { freshLedger, furnish, id, refusal, setup } from './helpers.ts';

const night = { id: id(0x7000_0001), name: 'A night', date: '2026-09-07', createdAt: 1 };
const base = { night: night.id, pad: 'desk', at: 2 };
const arrived: NightEvent = { ...base, seq: 1, kind: 'presence', person: id(1), state: 'arrived' };

test('a night and its log come back as they were written', async () => {
  const ledger = await freshLedger();
  expect(ledger.nights.create(night, [arrived])).toBe('new');
  expect(ledger.nights.create(night, [arrived])).toBe('already');
  expect((await refusal(() => ledger.nights.create({ ...night, name: 'Other' }, []))).code).toBe('conflict');
  const open: NightEvent = { ...base, seq: 2, kind: 'open' };
  ledger.nights.append([open], []);
  expect(ledger.nights.events(night.id)).toEqual([arrived, open]);
  expect(ledger.nights.list()).toEqual([night]);
  expect((await refusal(() => ledger.nights.append([open], []))).code).toBe('conflict');
  expect((await refusal(() => ledger.nights.events(id(9)))).code).toBe('unknown-night');
  // What the log holds the fold reads, also where it has no effect.
  expect(foldNight(night.id, ledger.nights.events(night.id)).clashes.map(({ kind }) => kind)).toEqual([
    'no-such-person',
    'not-arranged',
  ]);
});

test('sets and the events that link them are written together or not at all', async () => {
  const ledger = await freshLedger();
  furnish(ledger);
  ledger.nights.create(night, []);
  const second = setup(2);
  const link = (seq: number, set: string): NightEvent => ({
    ...base,
    seq,
    kind: 'set',
    heat: 1,
    lane: '1',
    role: 'main',
    set,
  });
  const wrong = await refusal(() => ledger.nights.append([link(1, second.id), link(2, id(99))], [second]));
  expect(wrong.code).toBe('unknown-set');
  expect(ledger.sets.has(second.id)).toBe(false);
  expect(ledger.nights.events(night.id)).toEqual([]);
  ledger.nights.append([link(1, second.id)], [second]);
  expect(ledger.nights.ofSet(second.id)).toEqual({ night: night.id, heat: 1, lane: '1' });
  expect(ledger.nights.ofSet(setup(1).id)).toBeNull();
});

test.each(['nights', 'night_events', 'night_sets'])('nothing in %s is changed or deleted', async (table) => {
  const ledger = await freshLedger();
  furnish(ledger);
  ledger.nights.create(night, [arrived]);
  ledger.nights.append(
    [{ ...base, seq: 2, kind: 'set', heat: 1, lane: '1', role: 'main', set: setup(3).id }],
    [setup(3)],
  );
  const { path } = ledger;
  ledger.close();
  const database = new Database(path);
  try {
    expect(() => database.exec(`DELETE FROM ${table}`)).toThrow('never deleted');
    const column = table === 'night_sets' ? 'heat' : 'crc';
    expect(() => database.exec(`UPDATE ${table} SET ${column} = ${column} + 1`)).toThrow('never changes');
  } finally {
    database.close();
  }
});
