import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { agrestiCaffoDifference } from '../../main/analysis/proportions/agresti-caffo.ts';
import { agrestiCoullInterval } from '../../main/analysis/proportions/agresti-coull.ts';
import { clopperPearsonInterval } from '../../main/analysis/proportions/clopper-pearson.ts';
import type { Proportion } from '../../main/analysis/proportions/difference.ts';
import { jeffreysInterval } from '../../main/analysis/proportions/jeffreys.ts';
import { midPInterval } from '../../main/analysis/proportions/mid-p.ts';
import { newcombeDifference } from '../../main/analysis/proportions/newcombe.ts';
import { pairedDifference } from '../../main/analysis/proportions/paired-difference.ts';
import { scoreDifference } from '../../main/analysis/proportions/score-difference.ts';
import { wilsonContinuityInterval, wilsonInterval } from '../../main/analysis/proportions/wilson.ts';
import { errorKind, holdsNaN, valueFrom } from './test-sums.ts';

const methods = {
  wilsonInterval,
  wilsonContinuityInterval,
  jeffreysInterval,
  clopperPearsonInterval,
  midPInterval,
  agrestiCoullInterval,
};

const counts = fc.integer({ min: 1, max: 300 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
const level = fc.constantFrom(0.8, 0.9, 0.95, 0.99);
const proportion = counts.map(([count, total]): Proportion => ({ count, total }));

describe('intervals for one proportion', () => {
  for (const [name, method] of Object.entries(methods)) {
    test(`${name}: holds the estimate, stays within 0 and 1, mirrors, grows with the level`, () => {
      fc.assert(
        fc.property(counts, level, ([x, n], at) => {
          const { estimate, lower, upper } = valueFrom(method(x, n, at));
          expect(lower).toBeLessThanOrEqual(estimate);
          expect(upper).toBeGreaterThanOrEqual(estimate);
          expect(lower).toBeGreaterThanOrEqual(0);
          expect(upper).toBeLessThanOrEqual(1);
          const mirrored = valueFrom(method(n - x, n, at));
          expect(mirrored.lower).toBeCloseTo(1 - upper, 10);
          expect(mirrored.upper).toBeCloseTo(1 - lower, 10);
          const wider = valueFrom(method(x, n, 0.999));
          expect(wider.lower).toBeLessThanOrEqual(lower);
          expect(wider.upper).toBeGreaterThanOrEqual(upper);
        }),
        { numRuns: 60 },
      );
    });

    test(`${name}: one more success never lowers a limit`, () => {
      fc.assert(
        fc.property(counts, ([x, n]) => {
          fc.pre(x < n);
          const [fewer, more] = [valueFrom(method(x, n)), valueFrom(method(x + 1, n))];
          expect(more.lower).toBeGreaterThanOrEqual(fewer.lower);
          expect(more.upper).toBeGreaterThanOrEqual(fewer.upper);
        }),
        { numRuns: 60 },
      );
    });

    test(`${name}: edges are stated results or typed errors`, () => {
      expect(errorKind(method(0, 0))).toBe('no-data');
      for (const [x, n] of [
        [-1, 5],
        [6, 5],
        [1.5, 5],
        [Number.NaN, 5],
        [1, Number.POSITIVE_INFINITY],
      ] as const) {
        expect(errorKind(method(x, n))).toBe('invalid-input');
      }
      for (const at of [0, 1, -1, Number.NaN]) expect(errorKind(method(1, 5, at))).toBe('invalid-input');
      for (const n of [1, 2, 20, 1_000_000]) {
        expect(valueFrom(method(0, n))).toMatchObject({ estimate: 0, lower: 0 });
        expect(valueFrom(method(n, n))).toMatchObject({ estimate: 1, upper: 1 });
        expect(valueFrom(method(0, n)).upper).toBeGreaterThan(0);
        expect(valueFrom(method(n, n)).lower).toBeLessThan(1);
      }
    });

    test(`${name}: with many trials comes to the plain normal interval`, () => {
      const { estimate, lower, upper } = valueFrom(method(300_000, 1_000_000));
      const half = 1.959964 * Math.sqrt((estimate * (1 - estimate)) / 1_000_000);
      expect(lower).toBeCloseTo(estimate - half, 5);
      expect(upper).toBeCloseTo(estimate + half, 5);
    });
  }

  test('the exact interval holds the mid-p one, the corrected the plain Wilson, Agresti-Coull the Wilson', () => {
    fc.assert(
      fc.property(counts, level, ([x, n], at) => {
        const within = [
          [midPInterval, clopperPearsonInterval],
          [wilsonInterval, wilsonContinuityInterval],
          [wilsonInterval, agrestiCoullInterval],
        ] as const;
        for (const [inner, outer] of within) {
          const [a, b] = [valueFrom(inner(x, n, at)), valueFrom(outer(x, n, at))];
          expect(b.lower).toBeLessThanOrEqual(a.lower + 1e-9);
          expect(b.upper).toBeGreaterThanOrEqual(a.upper - 1e-9);
        }
      }),
    );
  });
});

describe('differences of two proportions', () => {
  const differences = {
    newcombe10: (a: Proportion, b: Proportion) => newcombeDifference(a, b),
    newcombe11: (a: Proportion, b: Proportion) => newcombeDifference(a, b, { continuity: true }),
    miettinenNurminen: (a: Proportion, b: Proportion) => scoreDifference(a, b),
    mee: (a: Proportion, b: Proportion) => scoreDifference(a, b, { varianceCorrection: false }),
  };
  for (const [name, method] of Object.entries({ ...differences, agrestiCaffoDifference })) {
    test(`${name}: swapping the groups turns the interval round; nothing to compare is an error`, () => {
      fc.assert(
        fc.property(proportion, proportion, (first, second) => {
          const [there, back] = [valueFrom(method(first, second)), valueFrom(method(second, first))];
          expect(holdsNaN(there)).toBe(false);
          expect(back.estimate).toBeCloseTo(-there.estimate, 12);
          expect(back.lower).toBeCloseTo(-there.upper, 8);
          expect(back.upper).toBeCloseTo(-there.lower, 8);
          expect(there.lower).toBeGreaterThanOrEqual(-1);
          expect(there.upper).toBeLessThanOrEqual(1);
        }),
        { numRuns: 60 },
      );
      expect(errorKind(method({ count: 0, total: 0 }, { count: 1, total: 4 }))).toBe('no-data');
      expect(errorKind(method({ count: 1, total: 4 }, { count: 5, total: 4 }))).toBe('invalid-input');
    });
  }

  test('the score intervals hold the estimate, and the corrected one holds the plain one', () => {
    fc.assert(
      fc.property(proportion, proportion, (first, second) => {
        const wide = valueFrom(scoreDifference(first, second));
        const narrow = valueFrom(scoreDifference(first, second, { varianceCorrection: false }));
        expect(wide.lower).toBeLessThanOrEqual(narrow.lower + 1e-9);
        expect(wide.upper).toBeGreaterThanOrEqual(narrow.upper - 1e-9);
        expect(narrow.lower).toBeLessThanOrEqual(narrow.estimate);
        expect(narrow.upper).toBeGreaterThanOrEqual(narrow.estimate);
      }),
    );
  });

  test('paired: swapping the two turns the interval round; all edges give a result', () => {
    const cell = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(cell, cell, cell, cell, fc.boolean(), (both, firstOnly, secondOnly, neither, plainCorrelation) => {
        fc.pre(both + firstOnly + secondOnly + neither > 0);
        const there = valueFrom(pairedDifference({ both, firstOnly, secondOnly, neither }, { plainCorrelation }));
        const swapped = { both, firstOnly: secondOnly, secondOnly: firstOnly, neither };
        const back = valueFrom(pairedDifference(swapped, { plainCorrelation }));
        expect(holdsNaN(there)).toBe(false);
        expect(there.lower).toBeLessThanOrEqual(there.estimate);
        expect(there.upper).toBeGreaterThanOrEqual(there.estimate);
        expect(back.lower).toBeCloseTo(-there.upper, 10);
        expect(back.upper).toBeCloseTo(-there.lower, 10);
      }),
    );
    expect(errorKind(pairedDifference({ both: 0, firstOnly: 0, secondOnly: 0, neither: 0 }))).toBe('no-data');
  });
});
