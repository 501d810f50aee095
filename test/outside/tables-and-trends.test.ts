import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cusum } from '../../main/analysis/charts/cusum.ts';
import { ewma } from '../../main/analysis/charts/ewma.ts';
import { laneyChart, pChart } from '../../main/analysis/charts/p-chart.ts';
import { theilSen } from '../../main/analysis/regression/theil-sen.ts';
import { binomialTest } from '../../main/analysis/tests/binomial-test.ts';
import { chiSquareTest } from '../../main/analysis/tests/chi-square.ts';
import { cochranArmitage } from '../../main/analysis/tests/cochran-armitage.ts';
import { fisherExact } from '../../main/analysis/tests/fisher-exact.ts';
import { mannKendall } from '../../main/analysis/tests/mann-kendall.ts';
import { mcNemar } from '../../main/analysis/tests/mcnemar.ts';
import { errorKind, holdsNaN, valueFrom } from './test-sums.ts';

const table = (least: number, most: number) =>
  fc.tuple(fc.integer({ min: 2, max: 3 }), fc.integer({ min: 2, max: 3 })).chain(([rows, columns]) =>
    fc.array(fc.array(fc.integer({ min: least, max: most }), { minLength: columns, maxLength: columns }), {
      minLength: rows,
      maxLength: rows,
    }),
  );
const turned = (rows: number[][]) => (rows[0] ?? []).map((_, j) => rows.map((row) => row[j] ?? 0));

/** Choose(n, k) by multiplying, for the independent count of 2 x 2 tables. */
const choose = (n: number, k: number) =>
  Array.from({ length: k }, (_, i) => (n - i) / (k - i)).reduce((a, b) => a * b, 1);

describe('tables of counts', () => {
  test('chi-square and Fisher do not care about the order or side of rows and columns', () => {
    fc.assert(
      fc.property(table(1, 12), (rows) => {
        const variants = [turned(rows), rows.toReversed(), rows.map((row) => row.toReversed())];
        const [square, exact] = [valueFrom(chiSquareTest(rows)), valueFrom(fisherExact(rows))];
        expect(exact).toBeGreaterThan(0);
        expect(exact).toBeLessThanOrEqual(1);
        for (const variant of variants) {
          expect(valueFrom(chiSquareTest(variant)).statistic).toBeCloseTo(square.statistic, 9);
          expect(valueFrom(fisherExact(variant))).toBeCloseTo(exact, 9);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('Fisher on 2 x 2 tables is the sum of hypergeometric chances', () => {
    const cell = fc.integer({ min: 0, max: 12 });
    fc.assert(
      fc.property(cell, cell, cell, cell, (a, b, c, d) => {
        fc.pre((a + b) * (c + d) * (a + c) * (b + d) > 0);
        const chance = (x: number) => (choose(a + b, x) * choose(c + d, a + c - x)) / choose(a + b + c + d, a + c);
        let sum = 0;
        for (let x = Math.max(0, a - d); x <= Math.min(a + b, a + c); x += 1) {
          if (chance(x) <= chance(a) * (1 + 1e-7)) sum += chance(x);
        }
        expect(
          valueFrom(
            fisherExact([
              [a, b],
              [c, d],
            ]),
          ),
        ).toBeCloseTo(sum, 10);
      }),
    );
  });

  test('empty lines do not count; nothing to compare is an error', () => {
    const plain = valueFrom(
      chiSquareTest([
        [3, 5],
        [7, 2],
      ]),
    );
    expect(
      valueFrom(
        chiSquareTest([
          [3, 0, 5],
          [0, 0, 0],
          [7, 0, 2],
        ]),
      ).statistic,
    ).toBeCloseTo(plain.statistic, 12);
    for (const test of [chiSquareTest, fisherExact] as const) {
      expect(
        errorKind(
          test([
            [0, 0],
            [0, 0],
          ]),
        ),
      ).toBe('no-data');
      expect(errorKind(test([]))).toBe('no-data');
      expect(
        errorKind(
          test([
            [4, 0],
            [3, 0],
          ]),
        ),
      ).toBe('one-category');
      expect(errorKind(test([[1, 2], [3]]))).toBe('invalid-input');
      expect(
        errorKind(
          test([
            [1.5, 2],
            [3, 4],
          ]),
        ),
      ).toBe('invalid-input');
    }
    const large = Array.from({ length: 6 }, (_, i) => Array.from({ length: 6 }, (__, j) => 30 + i * j));
    expect(errorKind(fisherExact(large, { mostTables: 10_000 }))).toBe('out-of-reach');
  });

  test('the binomial test is 1 at the likeliest count and falls away from it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 80 }), fc.double({ min: 0.05, max: 0.95, noNaN: true }), (n, rate) => {
        const p = Array.from({ length: n + 1 }, (_, x) => valueFrom(binomialTest(x, n, rate)));
        const mode = Math.min(n, Math.floor((n + 1) * rate));
        expect(p[mode]).toBe(1);
        for (let x = 1; x <= n; x += 1) {
          const [before = 0, here = 0] = [p[x - 1], p[x]];
          if (x <= mode) expect(here).toBeGreaterThanOrEqual(before - 1e-12);
          else expect(here).toBeLessThanOrEqual(before + 1e-12);
        }
      }),
      { numRuns: 40 },
    );
    expect(valueFrom(binomialTest(0, 5, 0))).toBe(1);
    expect(valueFrom(binomialTest(2, 5, 0))).toBe(0);
    expect(valueFrom(binomialTest(5, 5, 1))).toBe(1);
    expect(errorKind(binomialTest(0, 0, 0.5))).toBe('no-data');
  });

  test('McNemar does not care which is first, and mid-p lies below the exact one', () => {
    const cell = fc.integer({ min: 0, max: 80 });
    fc.assert(
      fc.property(cell, cell, (b, c) => {
        fc.pre(b + c > 0);
        const [one, other] = [valueFrom(mcNemar(b, c)), valueFrom(mcNemar(c, b))];
        expect(one).toEqual(other);
        expect(one.midPValue).toBeLessThan(one.exactPValue);
        expect(holdsNaN(one)).toBe(false);
      }),
    );
    expect(errorKind(mcNemar(0, 0))).toBe('no-variation');
    expect(errorKind(mcNemar(-1, 2))).toBe('invalid-input');
  });
});

describe('trends', () => {
  const groups = fc.array(
    fc.integer({ min: 1, max: 60 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n))),
    { minLength: 2, maxLength: 7 },
  );

  test('Cochran-Armitage: linear changes of the scores do not matter, two groups are a 2 x 2 chi-square', () => {
    fc.assert(
      fc.property(groups, fc.integer({ min: -50, max: 50 }), fc.integer({ min: 1, max: 9 }), (all, shift, scale) => {
        const counts = all.map(([x]) => x);
        const totals = all.map(([, n]) => n);
        const result = cochranArmitage(counts, totals);
        fc.pre(result.ok);
        const { z, chiSquare } = valueFrom(result);
        const moved = valueFrom(
          cochranArmitage(
            counts,
            totals,
            totals.map((_, i) => shift + scale * i),
          ),
        );
        const reversed = valueFrom(
          cochranArmitage(
            counts,
            totals,
            totals.map((_, i) => -i),
          ),
        );
        expect(moved.z).toBeCloseTo(z, 9);
        expect(reversed.z).toBeCloseTo(-z, 9);
        if (all.length === 2) {
          const square = valueFrom(chiSquareTest([counts, totals.map((n, i) => n - (counts[i] ?? 0))]));
          expect(square.statistic).toBeCloseTo(chiSquare, 9);
        }
      }),
    );
    expect(errorKind(cochranArmitage([0, 0], [5, 6]))).toBe('one-category');
    expect(errorKind(cochranArmitage([0, 0], [0, 0]))).toBe('no-data');
    expect(errorKind(cochranArmitage([1, 2], [5, 6], [3, 3]))).toBe('no-variation');
    expect(errorKind(cochranArmitage([1, 2], [5]))).toBe('invalid-input');
  });

  const series = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 3, maxLength: 25 });

  test('Mann-Kendall turns round with the series and keeps to order alone', () => {
    fc.assert(
      fc.property(series, (values) => {
        fc.pre(new Set(values).size > 1);
        const there = valueFrom(mannKendall(values));
        expect(holdsNaN(there)).toBe(false);
        const back = valueFrom(mannKendall(values.toReversed()));
        expect(back.s + there.s).toBe(0);
        expect(back.pValue).toBeCloseTo(there.pValue, 12);
        expect(valueFrom(mannKendall(values.map((value) => value ** 3 + 5))).s).toBe(there.s);
        expect(there.pValue).toBeLessThanOrEqual(1);
      }),
    );
    expect(valueFrom(mannKendall([1, 2, 3, 4, 5]))).toMatchObject({ s: 10, tau: 1, exact: true });
    expect(valueFrom(mannKendall([1, 2, 3, 4, 5])).pValue).toBeCloseTo(2 / 120, 12);
    expect(errorKind(mannKendall([1, 2]))).toBe('too-few-data');
    expect(errorKind(mannKendall([4, 4, 4]))).toBe('no-variation');
    expect(errorKind(mannKendall([1, Number.NaN, 3]))).toBe('invalid-input');
  });

  test('Theil-Sen follows shifts, scales and added lines; a straight line has no spread', () => {
    fc.assert(
      fc.property(series, fc.integer({ min: -9, max: 9 }), (values, slope) => {
        const x = values.map((_, i) => 2 * i + (i % 3));
        const plain = valueFrom(theilSen(x, values));
        const tilted = valueFrom(
          theilSen(
            x,
            values.map((value, i) => 3 + slope * (x[i] ?? 0) + value),
          ),
        );
        expect(tilted.slope.estimate).toBeCloseTo(plain.slope.estimate + slope, 9);
        expect(plain.slope.lower).toBeLessThanOrEqual(plain.slope.estimate);
        expect(plain.slope.upper).toBeGreaterThanOrEqual(plain.slope.estimate);
      }),
    );
    const x = Array.from({ length: 12 }, (_, i) => i);
    const straight = valueFrom(
      theilSen(
        x,
        x.map((at) => 7 - 2 * at),
      ),
    );
    expect(straight).toMatchObject({ slope: { estimate: -2, lower: -2, upper: -2 }, intercept: 7 });
    expect(errorKind(theilSen([1], [2]))).toBe('too-few-data');
    expect(errorKind(theilSen([1, 1], [2, 3]))).toBe('no-variation');
    expect(errorKind(theilSen([1, 2], [2]))).toBe('invalid-input');
  });
});

describe('control charts', () => {
  test('with sigma z 1 the p-chart of Laney is the plain one; edges are errors', () => {
    const counts = [4, 7, 3, 6, 5];
    const totals = [50, 60, 40, 55, 45];
    const [plain, laney] = [valueFrom(pChart(counts, totals)), valueFrom(laneyChart(counts, totals))];
    expect(plain.sigmaZ).toBe(1);
    expect(laney.centre).toBe(plain.centre);
    for (const [i, point] of laney.points.entries()) {
      const half = (plain.points[i]?.upper ?? 0) - plain.centre;
      expect(point.upper - laney.centre).toBeCloseTo(half * laney.sigmaZ, 12);
    }
    for (const chart of [pChart, laneyChart]) {
      expect(errorKind(chart([], []))).toBe('no-data');
      expect(errorKind(chart([0, 0], [5, 5]))).toBe('one-category');
      expect(errorKind(chart([5, 5], [5, 5]))).toBe('one-category');
      expect(errorKind(chart([1], [0]))).toBe('invalid-input');
    }
    expect(errorKind(laneyChart([1], [5]))).toBe('too-few-data');
  });

  test('cumulative sums start anew at 0, mirror, and find a shift; averages keep between the values', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { maxLength: 30 }), (values) => {
        const options = { target: 0, slack: 0.5, limit: 4 };
        const [there, mirrored] = [
          cusum(values, options),
          cusum(
            values.map((value) => -value),
            options,
          ),
        ];
        expect(mirrored.lower).toEqual(there.upper);
        expect(mirrored.firstSignal).toBe(there.firstSignal);
        expect(there.upper.every((sum) => sum >= 0)).toBe(true);
        const { averages } = ewma(values, { weight: 0.2, start: 0, standardDeviation: 1 });
        expect(averages.every((average) => Math.abs(average) <= 5)).toBe(true);
      }),
    );
    expect(cusum([0, 0, 2, 2, 2, 2], { target: 0, slack: 0.5, limit: 4 }).firstSignal).toBe(4);
    expect(cusum([], { target: 0, slack: 1, limit: 4 })).toEqual({ upper: [], lower: [], firstSignal: undefined });
    expect(ewma([5, 5], { weight: 1, start: 0, standardDeviation: 1 }).averages).toEqual([5, 5]);
  });
});
