import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { repsStillNeeded } from '../../main/analysis/power/reps-still-needed.ts';
import {
  detectableRate,
  powerTwoProportions,
  sampleSizeTwoProportions,
} from '../../main/analysis/power/two-proportions.ts';
import { binomialRegression } from '../../main/analysis/regression/binomial-regression.ts';
import { clusterRobustCovariance } from '../../main/analysis/regression/cluster-robust.ts';
import { firthInterval, firthLogistic } from '../../main/analysis/regression/firth.ts';
import { cloglog, logit, probit } from '../../main/analysis/regression/links.ts';
import { logisticRegression } from '../../main/analysis/regression/logistic-regression.ts';
import { waldTest } from '../../main/analysis/regression/wald.ts';
import { errorKind, holdsNaN, valueFrom } from './test-sums.ts';

const rows = fc.array(
  fc.tuple(fc.integer({ min: -5, max: 5 }), fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 })),
  { minLength: 3, maxLength: 10 },
);
const dataOf = (all: readonly (readonly [number, number, number])[]) => ({
  successes: all.map(([, yes]) => yes),
  trials: all.map(([, yes, no]) => yes + no),
  predictors: [all.map(([x]) => x)],
});

/** Whether one predictor parts successes from failures, found by looking at their ends. */
function partedByHand(all: readonly (readonly [number, number, number])[]): boolean {
  const yes = all.filter(([, count]) => count > 0).map(([x]) => x);
  const no = all.filter(([, , count]) => count > 0).map(([x]) => x);
  return Math.min(...yes) >= Math.max(...no) || Math.max(...yes) <= Math.min(...no);
}

describe('binomial regression', () => {
  test('separation is found exactly when one predictor parts the outcomes, for every link', () => {
    fc.assert(
      fc.property(rows, fc.constantFrom(logit, probit, cloglog), (all, link) => {
        const used = all.filter(([, yes, no]) => yes + no > 0);
        fc.pre(new Set(used.map(([x]) => x)).size > 1);
        fc.pre(used.some(([, yes]) => yes > 0) && used.some(([, , no]) => no > 0));
        const fit = binomialRegression(dataOf(all), { link });
        expect(fit.ok ? 'fit' : fit.error.kind).toBe(partedByHand(used) ? 'separation' : 'fit');
        if (fit.ok) expect(holdsNaN(fit.value)).toBe(false);
      }),
      { numRuns: 400 },
    );
  });

  test('turning outcomes round turns logit and probit round; moving the predictor moves only the intercept', () => {
    fc.assert(
      fc.property(rows, fc.constantFrom(logit, probit), (all, link) => {
        const data = dataOf(all);
        const fit = binomialRegression(data, { link });
        fc.pre(fit.ok);
        const [b0 = 0, b1 = 0] = valueFrom(fit).coefficients;
        const opposite = { ...data, successes: data.successes.map((yes, i) => (data.trials[i] ?? 0) - yes) };
        const [o0 = 0, o1 = 0] = valueFrom(binomialRegression(opposite, { link })).coefficients;
        expect(o0).toBeCloseTo(-b0, 6);
        expect(o1).toBeCloseTo(-b1, 6);
        const day = 86_400_000;
        const dates = all.map(([x]) => 1_760_000_000_000 + x * day);
        const dated = valueFrom(binomialRegression({ ...data, predictors: [dates] }, { link }));
        expect((dated.coefficients[1] ?? 0) * day).toBeCloseTo(b1, 5);
        expect(dated.deviance).toBeCloseTo(valueFrom(fit).deviance, 6);
      }),
      { numRuns: 60 },
    );
  });

  test('single attempts and grouped rows give one fit; rows of no trials do not count', () => {
    const grouped = { successes: [2, 5, 6, 0], trials: [10, 12, 9, 0], predictors: [[1, 2, 3, 99]] };
    const single = { successes: [] as number[], predictors: [[] as number[]] };
    for (const [i, n] of grouped.trials.entries()) {
      for (let k = 0; k < n; k += 1) {
        single.successes.push(k < (grouped.successes[i] ?? 0) ? 1 : 0);
        single.predictors[0]?.push(grouped.predictors[0]?.[i] ?? 0);
      }
    }
    const [a, b] = [valueFrom(binomialRegression(grouped)), valueFrom(binomialRegression(single))];
    for (const [i, coefficient] of a.coefficients.entries()) expect(b.coefficients[i]).toBeCloseTo(coefficient, 9);
    expect(a.degrees).toBe(1);
    expect(a.nullDeviance - a.deviance).toBeCloseTo(b.nullDeviance - b.deviance, 9);
  });

  test('two groups give the log odds ratio and its well-known variance', () => {
    const fit = valueFrom(binomialRegression({ successes: [12, 5], trials: [40, 50], predictors: [[0, 1]] }));
    expect(fit.coefficients[1]).toBeCloseTo(Math.log(5 / 45 / (12 / 28)), 9);
    expect(fit.covariance[1]?.[1]).toBeCloseTo(1 / 12 + 1 / 28 + 1 / 5 + 1 / 45, 9);
  });

  test('data that cannot be fitted are typed errors', () => {
    const predictors = [[1, 2, 3, 4]];
    expect(errorKind(binomialRegression({ successes: [], predictors: [[]] }))).toBe('no-data');
    expect(errorKind(binomialRegression({ successes: [0, 0, 0, 0], predictors }))).toBe('one-category');
    expect(errorKind(binomialRegression({ successes: [1, 1, 1, 1], predictors }))).toBe('one-category');
    expect(errorKind(binomialRegression({ successes: [0, 1, 0, 1], predictors: [[2, 2, 2, 2]] }))).toBe('no-variation');
    expect(errorKind(binomialRegression({ successes: [0, 1, 2, 1], predictors }))).toBe('invalid-input');
    expect(errorKind(binomialRegression({ successes: [0, 1], predictors }))).toBe('invalid-input');
    expect(errorKind(binomialRegression({ successes: [0, 1, 0, 1], predictors: [[1, 2, Number.NaN, 4]] }))).toBe(
      'invalid-input',
    );
    const doubled = [
      [1, 2, 3, 4],
      [2, 4, 6, 8],
    ];
    expect(errorKind(binomialRegression({ successes: [0, 1, 0, 1], predictors: doubled }))).toBe('collinear');
    expect(errorKind(binomialRegression({ successes: [1], trials: [2], predictors: [[1], [2]] }))).not.toBe('');
  });
});

describe('robust covariance', () => {
  const successes = [1, 0, 0, 1, 0, 1, 1, 0, 0, 1, 1, 1];
  const predictors = [successes.map((_, i) => (i * 7) % 5)];
  const fit = valueFrom(binomialRegression({ successes, predictors }));

  test('the order of rows and the names of clusters do not matter', () => {
    const clusters = successes.map((_, i) => Math.floor(i / 3));
    const plain = valueFrom(clusterRobustCovariance(fit, predictors, clusters));
    const named = valueFrom(
      clusterRobustCovariance(
        fit,
        predictors,
        clusters.map((cluster) => `set ${cluster}`),
      ),
    );
    expect(named).toEqual(plain);
    expect(plain.clusters).toBe(4);
    const without = valueFrom(clusterRobustCovariance(fit, predictors, clusters, { smallSample: false }));
    expect(plain.covariance[1]?.[1]).toBeCloseTo(((without.covariance[1]?.[1] ?? 0) * 4) / 3, 12);
  });

  test('repeating every attempt within its set leaves the robust error and shrinks the plain one', () => {
    const clusters = successes.map((_, i) => i);
    const twice = <T>(values: readonly T[]) => [...values, ...values];
    const doubled = valueFrom(
      binomialRegression({ successes: twice(successes), predictors: [twice(predictors[0] ?? [])] }),
    );
    const once = valueFrom(clusterRobustCovariance(fit, predictors, clusters));
    const again = valueFrom(clusterRobustCovariance(doubled, [twice(predictors[0] ?? [])], twice(clusters)));
    expect(again.covariance[1]?.[1]).toBeCloseTo(once.covariance[1]?.[1] ?? 0, 9);
    expect(doubled.covariance[1]?.[1]).toBeCloseTo((fit.covariance[1]?.[1] ?? 0) / 2, 9);
  });

  test('too few clusters, or other columns than the fit was made with, are errors', () => {
    expect(
      errorKind(
        clusterRobustCovariance(
          fit,
          predictors,
          successes.map(() => 1),
        ),
      ),
    ).toBe('too-few-data');
    expect(errorKind(clusterRobustCovariance(fit, [...predictors, ...predictors, ...predictors], successes))).toBe(
      'invalid-input',
    );
  });
});

describe("Firth's penalised likelihood", () => {
  test('on two groups it is the log odds ratio with half a case added to each cell, whatever the counts', () => {
    const cell = fc.integer({ min: 0, max: 20 });
    fc.assert(
      fc.property(cell, cell, cell, cell, (a, b, c, d) => {
        fc.pre(a + b > 0 && c + d > 0);
        const fit = valueFrom(firthLogistic({ successes: [a, c], trials: [a + b, c + d], predictors: [[0, 1]] }));
        const odds = (yes: number, no: number) => Math.log((yes + 0.5) / (no + 0.5));
        expect(fit.coefficients[0]).toBeCloseTo(odds(a, b), 7);
        expect(fit.coefficients[1]).toBeCloseTo(odds(c, d) - odds(a, b), 7);
      }),
    );
  });

  test('parted data and data of one outcome get finite figures, and the report says by which method', () => {
    const parted = { successes: [0, 0, 0, 1, 1, 1], predictors: [[1, 2, 3, 4, 5, 6]] };
    const report = valueFrom(logisticRegression(parted));
    expect(report.fit.method).toBe('Firth penalised likelihood');
    expect(holdsNaN(report)).toBe(false);
    const { estimate, lower, upper } = valueFrom(firthInterval(parted, 0));
    expect(lower).toBeLessThan(estimate);
    expect(upper).toBeGreaterThan(estimate);
    expect(upper).toBeLessThan(100);
    const alike = valueFrom(logisticRegression({ successes: [0, 0, 0, 0], predictors: [[1, 2, 3, 5]] }));
    expect(holdsNaN(alike)).toBe(false);
    const overlapping = { successes: [0, 0, 1, 0, 1, 1], predictors: [[1, 2, 3, 4, 5, 6]] };
    expect(valueFrom(logisticRegression(overlapping)).fit.method).toBe('maximum likelihood');
    expect(valueFrom(logisticRegression(overlapping, [1, 1, 2, 2, 3, 3])).clusters).toBe(3);
    expect(errorKind(firthInterval(parted, 1))).toBe('invalid-input');
  });

  test('with many attempts it comes to plain maximum likelihood', () => {
    const data = { successes: [900, 1500, 2100], trials: [9000, 9000, 9000], predictors: [[0, 1, 2]] };
    const [plain, penalised] = [valueFrom(binomialRegression(data)), valueFrom(firthLogistic(data))];
    expect(penalised.coefficients[1]).toBeCloseTo(plain.coefficients[1] ?? 0, 3);
  });
});

describe('Wald test', () => {
  const fit = {
    coefficients: [0.4, -1.2],
    covariance: [
      [0.04, 0.01],
      [0.01, 0.09],
    ],
  };

  test('one coefficient, a sum of two, dispersion and degrees of freedom', () => {
    const slope = valueFrom(waldTest(fit, [0, 1]));
    expect(slope).toMatchObject({ estimate: -1.2, standardError: 0.3 });
    expect(slope.lower).toBeCloseTo(-1.2 - 1.959964 * 0.3, 6);
    expect(valueFrom(waldTest(fit, [1, 2])).standardError).toBeCloseTo(Math.sqrt(0.04 + 0.04 + 0.36), 12);
    expect(valueFrom(waldTest(fit, [0, 1], { dispersion: 4 })).standardError).toBeCloseTo(0.6, 12);
    // t(0.975, 5) = 2.570582: any table of Student's distribution.
    expect(valueFrom(waldTest(fit, [0, 1], { degrees: 5 })).upper).toBeCloseTo(-1.2 + 2.570582 * 0.3, 6);
    expect(errorKind(waldTest(fit, [1]))).toBe('invalid-input');
    expect(errorKind(waldTest({ coefficients: [1], covariance: [[0]] }, [1]))).toBe('no-variation');
  });
});

describe('how many reps', () => {
  const rate = fc.double({ min: 0.02, max: 0.98, noNaN: true });

  test('power and sample size undo each other, and the detectable rate lies where the power is reached', () => {
    fc.assert(
      fc.property(rate, rate, (a, b) => {
        fc.pre(Math.abs(a - b) > 0.02);
        const n = valueFrom(sampleSizeTwoProportions(a, b));
        expect(valueFrom(powerTwoProportions(n, a, b))).toBeCloseTo(0.8, 8);
        expect(valueFrom(powerTwoProportions(2 * n, a, b))).toBeGreaterThan(0.8);
        expect(valueFrom(sampleSizeTwoProportions(b, a))).toBeCloseTo(n, 6);
        const found = detectableRate(n, a, b > a ? 'above' : 'below');
        if (found.ok) expect(found.value).toBeCloseTo(b, 6);
      }),
    );
    expect(errorKind(sampleSizeTwoProportions(0.1, 0.1))).toBe('no-variation');
    expect(errorKind(sampleSizeTwoProportions(0.1, 1.1))).toBe('invalid-input');
    expect(errorKind(detectableRate(3, 0.5, 'above'))).toBe('out-of-reach');
  });

  test('reps still needed: none once there are enough, and adding them is enough', () => {
    const first = { count: 90, total: 1000 };
    const needed = valueFrom(repsStillNeeded(first, { count: 4, total: 100 }));
    expect(needed).toBeGreaterThan(0);
    expect(valueFrom(repsStillNeeded(first, { count: 4 * (1 + needed), total: 100 * (1 + needed) }))).toBe(0);
    const half = 2 / (1 / 1000 + 1 / (100 + needed));
    expect(valueFrom(powerTwoProportions(half, 0.09, 0.04))).toBeGreaterThanOrEqual(0.8);
    expect(errorKind(repsStillNeeded({ count: 1, total: 10 }, { count: 2, total: 21 }))).toBe('out-of-reach');
    expect(errorKind(repsStillNeeded({ count: 1, total: 10 }, { count: 2, total: 20 }))).toBe('no-variation');
    expect(errorKind(repsStillNeeded({ count: 0, total: 0 }, { count: 2, total: 20 }))).toBe('no-data');
  });
});
