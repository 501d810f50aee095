import { expect, test } from 'vitest';
import { openDrillLog } from '../../renderer/areas/eye/run/drill-log.ts';
import type { DrillEvent } from '../../shared-types/drills/events.ts';
import { drillWith, tasks } from './drills.ts';

test('events are kept until the desk has them, in their order, each once', async () => {
  const got: DrillEvent[] = [];
  let failures = 2;
  const log = openDrillLog(drillWith(tasks.single), [], 'pad', async (events) => {
    if (failures > 0) {
      failures -= 1;
      throw new Error('away');
    }
    got.push(...events);
  });
  log.put({ kind: 'begin', wallClock: 1 });
  log.put({ kind: 'end', why: 'stopped' });
  expect(log.waiting.get()).toBe(2);
  expect(log.state.get().phase).toBe('ended');
  await log.sent();
  expect(got.map((event) => [event.kind, event.seq, event.pad])).toEqual([
    ['begin', 1, 'pad'],
    ['end', 2, 'pad'],
  ]);
  expect(log.waiting.get()).toBe(0);
  expect(log.refused.get()).toBe(null);
});

test('a refusal of the desk is told in its own words, and taken back when it takes the events', async () => {
  let refuse = true;
  const log = openDrillLog(drillWith(tasks.single), [], 'pad', async () => {
    if (refuse) throw Object.assign(new Error('The disk is full.'), { code: 'STORAGE' });
  });
  log.put({ kind: 'begin', wallClock: 1 });
  await expect.poll(() => log.refused.get()).toBe('The disk is full.');
  refuse = false;
  await log.sent();
  expect(log.refused.get()).toBe(null);
});

test('a drill taken up again goes on after its last event', () => {
  const known: DrillEvent[] = [
    { drill: drillWith(tasks.single).id, pad: 'old', seq: 1, at: 0, kind: 'begin', wallClock: 1 },
    {
      drill: drillWith(tasks.single).id,
      pad: 'old',
      seq: 2,
      at: 90_000,
      kind: 'spoil',
      trial: null,
      fromMs: 0,
      toMs: 1,
      why: 'asked',
    },
  ];
  let now = 500;
  const log = openDrillLog(
    drillWith(tasks.single),
    known,
    'new',
    async () => {},
    () => now,
  );
  now = 1_700;
  expect(log.put({ kind: 'end', why: 'stopped' }).at).toBe(91_201);
});
