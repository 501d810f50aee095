import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignSpans, type Span } from '../../main/analysis/agreement/align.ts';
import { alignLogs } from '../../main/analysis/agreement/align-logs.ts';

const instants = (times: readonly number[]): Span[] => times.map((time) => ({ from: time, to: time }));

/** Least cost over every order-preserving pairing, by trying them all. */
function leastCost(first: readonly number[], second: readonly number[], tolerance: number): number {
  const [a, ...restA] = first;
  const [b, ...restB] = second;
  if (a === undefined || b === undefined) return ((first.length + second.length) * tolerance) / 2;
  const gap = Math.abs(a - b);
  return Math.min(
    tolerance / 2 + leastCost(restA, second, tolerance),
    tolerance / 2 + leastCost(first, restB, tolerance),
    gap <= tolerance ? gap + leastCost(restA, restB, tolerance) : Number.POSITIVE_INFINITY,
  );
}

const times = fc
  .array(fc.integer({ min: 0, max: 60 }), { maxLength: 6 })
  .map((list) => list.map((time) => time / 10).sort((a, b) => a - b));

describe('alignment of two lists of times', () => {
  it('is the cheapest of all order-preserving pairings', () => {
    fc.assert(
      fc.property(times, times, fc.constantFrom(0.3, 1, 2.5), (first, second, tolerance) => {
        const { pairs, onlyFirst, onlySecond } = alignSpans(instants(first), instants(second), tolerance);
        const gaps = pairs.map(([i, j]) => Math.abs((first[i] ?? 0) - (second[j] ?? 0)));
        const cost = gaps.reduce((sum, gap) => sum + gap, 0) + ((onlyFirst.length + onlySecond.length) * tolerance) / 2;
        expect(cost).toBeCloseTo(leastCost(first, second, tolerance), 9);
        expect(Math.max(0, ...gaps)).toBeLessThanOrEqual(tolerance);
        // Every element once, and in order on both sides.
        expect([...pairs.map(([i]) => i), ...onlyFirst].sort((a, b) => a - b)).toEqual(first.map((_, i) => i));
        expect([...pairs.map(([, j]) => j), ...onlySecond].sort((a, b) => a - b)).toEqual(second.map((_, j) => j));
        pairs.forEach(([i, j], k) => {
          const before = pairs[k - 1];
          if (before !== undefined) expect(i > before[0] && j > before[1]).toBe(true);
        });
      }),
      { numRuns: 300 },
    );
  });

  it('tells the missed tap from the late one', () => {
    const aligned = alignSpans(instants([2, 4, 6, 8]), instants([2.2, 6.1, 8.3, 9.9]), 1);
    expect(aligned.pairs).toEqual([
      [0, 0],
      [2, 1],
      [3, 2],
    ]);
    expect(aligned).toMatchObject({ onlyFirst: [1], onlySecond: [3] });
  });

  it('takes a call anywhere in the time of its rep', () => {
    const reps = [
      { from: 0.7, to: 2.5 },
      { from: 3.2, to: 5 },
    ];
    expect(alignSpans(reps, instants([0.9, 3.1]), 1).pairs).toEqual([
      [0, 0],
      [1, 1],
    ]);
    expect(alignSpans(reps, instants([2.9]), 1).pairs).toEqual([[1, 0]]);
  });

  it('takes out how much later one judge is', () => {
    const first = Array.from({ length: 20 }, (_, i) => 2 * i + (i % 3) / 10);
    const aligned = alignLogs(
      first,
      first.map((time) => time + 0.7),
      1,
    );
    expect(aligned.pairs).toHaveLength(20);
    expect(aligned.lag).toBeCloseTo(0.7, 9);
    expect(alignLogs([], [1], 1)).toEqual({ pairs: [], onlyFirst: [], onlySecond: [0], lag: undefined });
  });
});
