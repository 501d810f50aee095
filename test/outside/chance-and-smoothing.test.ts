import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  movingBlockIndices,
  residualBlockResample,
  usualBlockLength,
} from '../../main/analysis/bootstrap/moving-block.ts';
import { percentileInterval } from '../../main/analysis/bootstrap/percentile-interval.ts';
import { betaCdf, betaQuantile, betaUpperTail } from '../../main/analysis/distributions/beta.ts';
import { betaBinomialProbability } from '../../main/analysis/distributions/beta-binomial.ts';
import {
  betaNegativeBinomialProbability,
  betaNegativeBinomialQuantiles,
} from '../../main/analysis/distributions/beta-negative-binomial.ts';
import { negativeBinomialCdf, negativeBinomialQuantile } from '../../main/analysis/distributions/negative-binomial.ts';
import { normalCdf, normalQuantile } from '../../main/analysis/distributions/normal.ts';
import { sampleMedian, sampleQuantile } from '../../main/analysis/distributions/sample-quantile.ts';
import { generatorFromState, seededGenerator } from '../../main/analysis/random/generator.ts';
import {
  randomBeta,
  randomExponential,
  randomGamma,
  randomInteger,
  randomNegativeBinomial,
  randomNormal,
  randomPoisson,
} from '../../main/analysis/random/variates.ts';
import { interpolate } from '../../main/analysis/smoothing/interpolate.ts';
import { lowess, prepareLowess } from '../../main/analysis/smoothing/lowess.ts';
import { errorKind, mean, standardDeviation, valueFrom } from './test-sums.ts';

describe('random numbers', () => {
  test("xoshiro128** from state 1 2 3 4 gives the stream of its authors' program (as public test files repeat it)", () => {
    const generator = generatorFromState([1, 2, 3, 4]);
    const stream = Array.from({ length: 10 }, () => generator.uint32());
    const reference = [
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ];
    expect(stream).toEqual(reference);
  });

  test('one seed, one stream; another seed, another stream', () => {
    const stream = (seed: number) => {
      const generator = seededGenerator(seed);
      return Array.from({ length: 20 }, () => generator.uint32());
    };
    expect(stream(42)).toEqual(stream(42));
    expect(stream(42)).not.toEqual(stream(43));
    expect(stream(1)).not.toEqual(stream(1 + 2 ** 32));
  });

  const generator = seededGenerator(2026);
  const moments: [string, () => number, number, number][] = [
    ['uniform', () => generator.uniform(), 0.5, Math.sqrt(1 / 12)],
    ['integer below 6', () => randomInteger(generator, 6), 2.5, Math.sqrt(35 / 12)],
    ['normal', () => randomNormal(generator), 0, 1],
    ['exponential', () => randomExponential(generator), 1, 1],
    ['gamma 0.4', () => randomGamma(generator, 0.4), 0.4, Math.sqrt(0.4)],
    ['gamma 7', () => randomGamma(generator, 7), 7, Math.sqrt(7)],
    ['beta 2, 6', () => randomBeta(generator, 2, 6), 0.25, Math.sqrt((2 * 6) / (64 * 9))],
    ['Poisson 3', () => randomPoisson(generator, 3), 3, Math.sqrt(3)],
    ['Poisson 40', () => randomPoisson(generator, 40), 40, Math.sqrt(40)],
    ['negative binomial 100, 0.94', () => randomNegativeBinomial(generator, 100, 0.94), 6.383, Math.sqrt(6.7904)],
  ];
  for (const [name, draw, expectedMean, expectedDeviation] of moments) {
    test(`${name}: mean and deviation of 40,000 draws`, () => {
      const values = Array.from({ length: 40_000 }, draw);
      expect(Math.abs(mean(values) - expectedMean)).toBeLessThan((5 * expectedDeviation) / 200);
      expect(standardDeviation(values) / expectedDeviation).toBeGreaterThan(0.96);
      expect(standardDeviation(values) / expectedDeviation).toBeLessThan(1.04);
    });
  }
});

describe('distributions', () => {
  const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
  const shape = fc.double({ min: 0.5, max: 500, noNaN: true });

  test('quantiles undo cdfs, also far out and for a million attempts', () => {
    fc.assert(
      fc.property(share, shape, shape, (p, a, b) => {
        expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 12);
        expect(betaCdf(betaQuantile(p, a, b), a, b)).toBeCloseTo(p, 9);
        expect(betaCdf(p, a, b) + betaUpperTail(p, a, b)).toBeCloseTo(1, 12);
      }),
    );
    expect(betaCdf(betaQuantile(0.025, 50_000, 950_000), 50_000, 950_000)).toBeCloseTo(0.025, 9);
    expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
    expect(Object.is(normalQuantile(0.5), 0)).toBe(true);
    expect(betaQuantile(0, 2, 3)).toBe(0);
    expect(betaQuantile(1, 2, 3)).toBe(1);
  });

  test('a count quantile is the smallest count that reaches the level', () => {
    fc.assert(
      fc.property(
        share,
        fc.integer({ min: 1, max: 300 }),
        fc.double({ min: 0.3, max: 0.99, noNaN: true }),
        (p, n, chance) => {
          const k = negativeBinomialQuantile(p, n, chance);
          expect(negativeBinomialCdf(k, n, chance)).toBeGreaterThanOrEqual(p * (1 - 1e-12));
          if (k > 0) expect(negativeBinomialCdf(k - 1, n, chance)).toBeLessThan(p);
        },
      ),
    );
    expect(negativeBinomialQuantile(0.95, 100, 1)).toBe(0);
  });

  test('predictive counts add up to 1, and sharpen to the known rate as it becomes known', () => {
    const all = Array.from({ length: 31 }, (_, k) => betaBinomialProbability(k, 30, 3.5, 40));
    expect(all.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 10);
    const [low = 0, middle = 0, high = 0] = betaNegativeBinomialQuantiles(
      [0.025, 0.5, 0.975],
      100,
      94_000_000,
      6_000_000,
    );
    expect([low, middle, high]).toEqual([0.025, 0.5, 0.975].map((p) => negativeBinomialQuantile(p, 100, 0.94)));
    let sum = 0;
    for (let k = 0; k <= middle; k += 1) sum += betaNegativeBinomialProbability(k, 100, 94_000_000, 6_000_000);
    expect(sum).toBeGreaterThanOrEqual(0.5);
    expect(betaNegativeBinomialQuantiles([0.5], 10, 1e-9, 50)).toEqual([Number.POSITIVE_INFINITY]);
  });

  test('sample quantiles: ends, middle, one value, none', () => {
    expect(sampleQuantile([3, 1, 2], 0)).toBe(1);
    expect(sampleQuantile([3, 1, 2], 1)).toBe(3);
    expect(sampleMedian([4, 1, 3, 2])).toBe(2.5);
    expect(sampleMedian([7])).toBe(7);
    expect(sampleMedian([])).toBeUndefined();
  });
});

describe('block bootstrap', () => {
  test('blocks are runs of neighbours within the series, and one seed gives one resample', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 70 }), fc.integer(), (n, block, seed) => {
        const indices = Array.from(movingBlockIndices(n, block, seededGenerator(seed)));
        expect(indices).toEqual(Array.from(movingBlockIndices(n, block, seededGenerator(seed))));
        expect(indices.length).toBe(n);
        const size = Math.min(n, block);
        for (const [i, index] of indices.entries()) {
          expect(index).toBeGreaterThanOrEqual(0);
          expect(index).toBeLessThan(n);
          if (i % size !== 0) expect(index).toBe((indices[i - 1] ?? 0) + 1);
        }
      }),
    );
    expect(movingBlockIndices(0, 3, seededGenerator(1)).length).toBe(0);
    expect([1, 8, 27, 28, 1000].map(usualBlockLength)).toEqual([1, 2, 3, 4, 10]);
  });

  test('residuals are centred: the mean of many resamples is the fit', () => {
    const fitted = [1, 2, 3, 4, 5, 6];
    const residuals = [0.5, -0.2, 0.9, 0.1, -0.4, 0.3];
    const generator = seededGenerator(5);
    const sums = fitted.map(() => 0);
    for (let round = 0; round < 4000; round += 1) {
      for (const [i, value] of residualBlockResample(fitted, residuals, 1, generator).entries())
        sums[i] = (sums[i] ?? 0) + value;
    }
    for (const [i, sum] of sums.entries()) expect(Math.abs(sum / 4000 - (fitted[i] ?? 0))).toBeLessThan(0.03);
  });

  test('percentile limits of replicates', () => {
    const replicates = Array.from({ length: 1001 }, (_, i) => 1000 - i);
    const { lower, upper, level } = valueFrom(percentileInterval(replicates));
    expect([lower, upper].map(Math.round)).toEqual([25, 975]);
    expect(Math.abs(lower - 25) + Math.abs(upper - 975)).toBeLessThan(1e-9);
    expect(level).toBe(0.95);
    expect(errorKind(percentileInterval([]))).toBe('no-data');
    expect(errorKind(percentileInterval([1, Number.NaN]))).toBe('invalid-input');
    expect(errorKind(percentileInterval([1, 2], 1))).toBe('invalid-input');
  });
});

describe('LOWESS', () => {
  const series = fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: 2, maxLength: 60 });

  test('keeps straight lines, follows shifts and scales, and prepared gives the same as in one go', () => {
    fc.assert(
      fc.property(series, fc.double({ min: 0.2, max: 1, noNaN: true }), (y, span) => {
        const x = y.map((_, i) => i + (i % 4) / 5);
        const line = valueFrom(
          lowess(
            x,
            x.map((at) => 3 - 0.7 * at),
            { span },
          ),
        );
        for (const [i, value] of line.entries()) expect(value).toBeCloseTo(3 - 0.7 * (x[i] ?? 0), 8);
        const plain = valueFrom(lowess(x, y, { span, iterations: 0 }));
        const moved = valueFrom(
          lowess(
            x,
            y.map((value) => 4 + 2 * value),
            { span, iterations: 0 },
          ),
        );
        for (const [i, value] of moved.entries()) expect(value).toBeCloseTo(4 + 2 * (plain[i] ?? 0), 6);
        const prepared = valueFrom(prepareLowess(x, { span, iterations: 0 }));
        expect(prepared(y)).toEqual(plain);
        expect(prepared(y)).toEqual(plain);
      }),
    );
  });

  test('one wild value does not pull the robust fit', () => {
    const x = Array.from({ length: 40 }, (_, i) => i);
    const y = x.map((at) => 2 + 0.05 * at + 0.1 * Math.sin(at * 2.1));
    const wild = y.with(20, 30);
    const robust = valueFrom(lowess(x, wild))[20] ?? 0;
    const plain = valueFrom(lowess(x, wild, { iterations: 0 }))[20] ?? 0;
    expect(Math.abs(robust - (2 + 0.05 * 20))).toBeLessThan(0.1);
    expect(Math.abs(plain - (2 + 0.05 * 20))).toBeGreaterThan(0.5);
  });

  test('few points, equal x, and what cannot be smoothed', () => {
    expect(Array.from(valueFrom(lowess([5], [2])))).toEqual([2]);
    expect(Array.from(valueFrom(lowess([1, 2], [3, 5])))).toEqual([3, 5]);
    expect(Array.from(valueFrom(lowess([4, 4, 4], [1, 2, 3], { iterations: 0 })))).toEqual([2, 2, 2]);
    expect(errorKind(lowess([], []))).toBe('no-data');
    expect(errorKind(lowess([2, 1], [1, 1]))).toBe('invalid-input');
    expect(errorKind(lowess([1, 2], [1]))).toBe('invalid-input');
    expect(errorKind(lowess([1, 2], [1, Number.NaN]))).toBe('invalid-input');
    expect(errorKind(lowess([1, 2], [1, 2], { span: 0 }))).toBe('invalid-input');
  });

  test('a set of 10,000 attempts is smoothed without the kept weights, to the same figures', () => {
    const x = Array.from({ length: 10_000 }, (_, i) => i);
    const y = x.map((at) => Math.sin(at / 900));
    const fitted = valueFrom(lowess(x, y, { span: 0.1, delta: 1, iterations: 0 }));
    const sparse = valueFrom(lowess(x, y, { span: 0.1, delta: 100, iterations: 0 }));
    for (let i = 0; i < x.length; i += 500) expect(fitted[i]).toBeCloseTo(sparse[i] ?? 0, 2);
  });

  test('interpolation runs straight between points and level beyond them', () => {
    expect(interpolate([1, 3], [10, 20], 2)).toBe(15);
    expect([0, 1, 3, 9].map((at) => interpolate([1, 3], [10, 20], at))).toEqual([10, 10, 20, 20]);
    expect(interpolate([1, 2, 2, 3], [1, 5, 5, 9], 2)).toBe(5);
    expect(interpolate([], [], 2)).toBeUndefined();
  });
});
