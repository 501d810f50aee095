import { expect, test } from 'vitest';
import { noChoice } from '../../renderer/areas/review/address/choice.ts';
import { rateTop } from '../../renderer/areas/review/figures/rate-axis.ts';
import { linesOf } from '../../renderer/areas/review/home/subject-lines.ts';
import { readSides, sideChoice, sideValues, usualSides, waysOf } from '../../renderer/areas/review/plans/sides.ts';
import { answerOf } from '../../renderer/areas/review/view/answer.ts';
import { roundAttempts } from '../../renderer/parts/figure/set-marks.ts';
import { en } from '../../renderer/parts/words/en.ts';
import { formatsFor } from '../../renderer/parts/words/formats.ts';
import type { Trend } from '../../shared-types/contract/review/figures.ts';

const rate = { value: 0.1, low: 0.08, high: 0.12 };
const nothing: Trend = {
  centre: null,
  sigmaZ: null,
  curve: [],
  fitted: null,
  verdict: { kind: 'too-few', why: 'few-sets' },
};
const fitted: Trend = {
  ...nothing,
  fitted: {
    method: 'maximum-likelihood',
    fromAt: 0,
    toAt: 1,
    from: { value: 0.13, low: 0.1, high: 0.16 },
    to: { value: 0.04, low: 0.02, high: 0.06 },
    difference: { value: -0.09, low: -0.13, high: -0.05 },
    dispersion: 1,
    pValue: 0.004,
    checkPValue: null,
  },
  verdict: { kind: 'fewer' },
};
const words = en(formatsFor('en-GB')).review.answer;

test('a change that can be told is told with both rates; one that cannot, with what would tell it', () => {
  const totals = { attempts: 1_000, noReps: 100, rate };
  expect(answerOf(totals, fitted)).toEqual({ kind: 'fewer', from: 0.13, to: 0.04, pValue: 0.004 });
  expect(answerOf(totals, { ...fitted, verdict: { kind: 'unclear', stillNeeded: 140 } })).toEqual({
    kind: 'unclear',
    rate: 0.1,
    stillNeeded: 140,
  });
  expect(answerOf(totals, nothing)).toEqual({ kind: 'no-trend', rate: 0.1, why: 'few-sets' });
});

test('no attempt, no no-rep and nothing but no-reps have answers of their own, whatever the trend', () => {
  expect(answerOf({ attempts: 0, noReps: 0, rate: null }, nothing)).toEqual({ kind: 'no-attempt' });
  expect(answerOf({ attempts: 50, noReps: 0, rate: { value: 0, low: 0, high: 0.07 } }, nothing)).toEqual({
    kind: 'clean',
    attempts: 50,
    high: 0.07,
  });
  expect(answerOf({ attempts: 3, noReps: 3, rate: { value: 1, low: 0.4, high: 1 } }, nothing)).toEqual({
    kind: 'only-no-reps',
    attempts: 3,
  });
});

test('the sentences: rates in a hundred, decimals only below two, an interval that runs from low to high', () => {
  expect(words.fewer(0.131, 0.042)).toBe('No-reps went from 13 in 100 to 4.');
  expect(words.steady(0.014)).toBe('1.4 no-reps in 100 attempts.');
  expect(words.change({ value: -0.09, low: -0.165, high: -0.02 })).toBe('9 fewer in 100 (2.0 to 16.5).');
  expect(words.change({ value: 0.03, low: 0.01, high: 0.05 })).toBe('3 more in 100 (1.0 to 5.0).');
  expect(words.unclear(140)).toContain('about 140 more reps would');
  expect(words.unclear(1_245)).toContain('about 1,300 more reps would');
  expect(words.unclear(7)).toContain('about 7 more reps would');
});

const person = { id: '00000000-0000-4000-8000-00000000000a', name: 'Ada' };
const station = {
  sheet: 'wall-throw',
  sets: 4,
  attempts: 400,
  noReps: 40,
  firstAt: new Date(2026, 8, 1, 18).getTime(),
  lastAt: new Date(2026, 9, 1, 18).getTime(),
  loadsKg: [6, 9],
  before: ['fresh' as const, 'run' as const, 'station' as const],
  tags: [{ tag: 'heat', sets: 2 }],
};

test('people in the list: all stations together, led to the one with the latest set', () => {
  const other = { ...station, sheet: 'jump-burpee', sets: 1, attempts: 50, noReps: 5, lastAt: station.lastAt + 1 };
  expect(linesOf([{ person, stations: [other, station] }])).toEqual([
    {
      id: person.id,
      name: 'Ada',
      station: 'jump-burpee',
      sets: 5,
      attempts: 450,
      noReps: 45,
      lastAt: station.lastAt + 1,
    },
  ]);
});

test('comparing: only what the sets differ in is offered, fresh against after work first', () => {
  expect(waysOf(station, [])).toEqual(['before', 'load', 'time']);
  expect(waysOf({ ...station, sets: 1, loadsKg: [6], before: ['run'] }, [{ id: 'j' }])).toEqual([]);
  expect(readSides(new URLSearchParams(), station, [])).toEqual({ way: 'before', a: 'fresh', b: 'work' });
  expect(readSides(new URLSearchParams('by=load&a=9&b=6'), station, [])).toEqual({ way: 'load', a: '9', b: '6' });
  expect(readSides(new URLSearchParams('by=load&a=12'), station, [])).toEqual({ way: 'load', a: '6', b: '9' });
  expect(readSides(new URLSearchParams(), { ...station, sets: 1, loadsKg: [], before: [], tags: [] }, [])).toBeNull();
});

test('comparing: the halves of the time share no day and leave none out', () => {
  const { a, b } = usualSides('time', station, []);
  expect([a, b]).toEqual(['2026-09-01..2026-09-16', '2026-09-17..2026-10-01']);
  expect(sideChoice(noChoice, 'time', a).span).toEqual({ kind: 'dates', from: '2026-09-01', to: '2026-09-16' });
});

test('comparing: each side narrows by its own value alone', () => {
  const judges = [{ id: '00000000-0000-4000-8000-00000000000b' }];
  for (const way of ['before', 'load', 'judge', 'tag'] as const) {
    for (const side of sideValues(way, station, judges)) {
      const { before, loadsKg, judge, tags } = sideChoice(noChoice, way, side);
      const changed = [before.length > 0, loadsKg.length > 0, judge !== '', tags.length > 0];
      expect(changed.filter(Boolean)).toHaveLength(1);
    }
  }
  expect(sideChoice(noChoice, 'before', 'work').before).toEqual(['run', 'station']);
});

test('an axis of rates is not flattened by a bin of two attempts, and holds every bin that has weight', () => {
  const bin = (attempts: number, value: number, high: number) => ({ attempts, rate: { value, high } });
  expect(rateTop([bin(100, 0.05, 0.11), bin(120, 0.08, 0.14), bin(2, 0.5, 0.9)], [])).toBe(0.14);
  expect(rateTop([bin(2, 0.5, 0.9)], [])).toBe(0.9);
  expect(rateTop([], [])).toBe(0.02);
});

test('round numbers of attempts for an axis', () => {
  expect(roundAttempts(120)).toEqual([20, 40, 60, 80, 100, 120]);
  expect(roundAttempts(3)).toEqual([1, 2, 3]);
  expect(roundAttempts(1)).toEqual([1]);
  for (let most = 1; most < 3_000; most += 7) {
    const ticks = roundAttempts(most);
    expect(ticks.length).toBeGreaterThan(0);
    expect(ticks.length).toBeLessThanOrEqual(6);
    expect(ticks.at(-1)).toBeLessThanOrEqual(most);
  }
});
