import { expect, test } from 'vitest';
import { eventTime, resumeClock, startClock } from '../../renderer/link/clock.ts';

function source(timeOrigin: number, now: number) {
  return { wall: () => timeOrigin + now, now: () => now };
}

test('a set that begins here counts whole milliseconds from the tap, not from when the tap was handled', () => {
  const clock = startClock(1_000.4, source(1_700_000_000_000, 1_090));
  expect(clock.wallClock).toBe(1_700_000_001_000);
  expect(clock.at(1_000.4)).toBe(0);
  expect(clock.at(3_512.9)).toBe(2_513);
  expect(clock.now()).toBe(90);
  expect(clock.behind).toBe(false);
});

test('a tap from before go counts as at go', () => {
  expect(startClock(1_000, source(0, 1_000)).at(990)).toBe(0);
});

test('after a reload the clock goes on from the wall clock of the go', () => {
  const before = startClock(2_000, source(1_700_000_000_000, 2_000));
  const after = resumeClock(before.wallClock, 31_000, source(1_700_000_040_000, 500));
  expect(after.now()).toBe(38_500);
  expect(after.wallClock).toBe(before.wallClock);
  expect(after.behind).toBe(false);
});

test('a set that begins after the computer slept carries the time of day of its go', () => {
  // Ten seconds of the page's clock, an hour of the day's: the rest was sleep.
  const clock = startClock(9_800, { wall: () => 1_700_003_600_000, now: () => 10_000 });
  expect(clock.wallClock).toBe(1_700_003_599_800);
});

test('where the wall clock was set back, the clock stands no earlier than the last event and says so', () => {
  const clock = resumeClock(1_700_000_000_000, 60_000, source(1_700_000_010_000, 1_000));
  expect(clock.behind).toBe(true);
  expect(clock.now()).toBe(60_000);
  expect(clock.at(1_250)).toBe(60_250);
});

test('an input event gives its own time stamp; one that carries no usable stamp happens now', () => {
  const page = source(0, 50_000);
  expect(eventTime({ timeStamp: 49_900.5 }, page)).toBe(49_900.5);
  expect(eventTime({ timeStamp: 0 }, page)).toBe(50_000);
  expect(eventTime({ timeStamp: 1_700_000_000_000 }, page)).toBe(50_000);
  expect(eventTime({ timeStamp: 10_000 }, page)).toBe(50_000);
});
