import { expect, test } from 'vitest';
import { newId } from '../../renderer/areas/judge/home/new-id.ts';
import { usualGoals } from '../../renderer/areas/judge/home/usual-amounts.ts';
import { keyWish } from '../../renderer/areas/judge/live/key-intent.ts';
import { ownPads } from '../../renderer/areas/judge/live/own-pads.ts';
import { filterOf, filtersInUse, noFilter } from '../../renderer/areas/judge/sets/filter-choice.ts';
import { setFilter } from '../../shared-types/contract/sets.ts';
import { setSetup } from '../../shared-types/log/setup.ts';
import { jumpBurpee } from '../../shared-types/sheets/jump-burpee.ts';
import { wallThrow } from '../../shared-types/sheets/wall-throw.ts';

test('an untouched form narrows nothing but practice', () => {
  expect(filterOf(noFilter)).toEqual({ practice: 'without' });
  expect(filtersInUse(noFilter)).toBe(0);
});

test('each filter reaches the contract as it is meant, and is counted', () => {
  const choice = {
    ...noFilter,
    search: '  mara ',
    loadKg: 6,
    before: 'run',
    tag: 'heat 2',
    from: '2026-03-01',
    to: '2026-03-31',
    phase: 'finished' as const,
    unexplained: true,
    practice: 'only' as const,
  };
  const filter = filterOf(choice);
  expect(setFilter.parse(filter)).toEqual(filter);
  expect(filter).toMatchObject({ search: 'mara', loadKg: 6, before: 'run', tag: 'heat 2', phase: 'finished' });
  expect(filter.from).toBe(new Date(2026, 2, 1).getTime());
  expect(filter.to).toBe(new Date(2026, 3, 1).getTime());
  expect(filtersInUse(choice)).toBe(8);
});

test('half a date is no date', () => {
  for (const from of ['2026', '2026-03', 'yesterday'])
    expect(filterOf({ ...noFilter, from })).not.toHaveProperty('from');
});

test('a new id is a UUID that a setup accepts, each another', () => {
  const ids = Array.from({ length: 200 }, newId);
  expect(new Set(ids).size).toBe(200);
  for (const id of ids) expect(setSetup.shape.id.safeParse(id).success).toBe(true);
});

test('usual goals hold the sheet’s own', () => {
  expect(usualGoals('reps', wallThrow)).toEqual([25, 50, 100].map((reps) => ({ kind: 'reps', reps })));
  expect(usualGoals('metres', jumpBurpee)).toEqual([20, 40, 80].map((metres) => ({ kind: 'metres', metres })));
  expect(usualGoals('open', wallThrow)).toEqual([{ kind: 'open' }]);
});

test('keys: a fault’s key calls it, with Shift it names the call before; what the sheet lacks means nothing', () => {
  const context = { sheet: wallThrow, nextMark: null, shift: false };
  expect(keyWish('fault-1', context)).toEqual({ kind: 'no-rep', faults: ['line'] });
  expect(keyWish('fault-1', { ...context, shift: true })).toEqual({ kind: 'explain', fault: 'line' });
  expect(keyWish('fault-6', context)).toBeNull();
  expect(keyWish('mark', context)).toBeNull();
  expect(keyWish('mark', { ...context, nextMark: 20 })).toEqual({ kind: 'mark', metres: 20 });
  expect(keyWish('slip', { ...context, shift: true })).toEqual({ kind: 'put-back' });
  expect(keyWish('no-rep-later', context)).toEqual({ kind: 'no-rep', faults: [] });
});

test('the names of earlier loads are remembered, the latest twenty, and a broken storage costs only them', () => {
  const kept = new Map<string, string>();
  const storage = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  };
  for (let load = 0; load < 25; load += 1) ownPads(`pad ${load}`, storage);
  const pads = ownPads('pad 24', storage);
  expect(pads.size).toBe(20);
  expect(pads.has('pad 5')).toBe(true);
  expect(pads.has('pad 4')).toBe(false);
  kept.set('own-pads', '{broken');
  expect([...ownPads('now', storage)]).toEqual(['now']);
  expect([...ownPads('now', null)]).toEqual(['now']);
});
