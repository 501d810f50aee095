import { describe, expect, test } from 'vitest';
import {
  clusteredDifference,
  clusteredProportion,
  clusteredStillNeeded,
} from '../../../main/analysis/clusters/clustered-proportion.ts';
import { ratioOfSums } from '../../../main/analysis/clusters/ratio.ts';
import { fastStarts } from '../../../main/analysis/pacing/fast-starts.ts';
import { repsStillNeeded } from '../../../main/analysis/power/reps-still-needed.ts';
import { newcombeDifference } from '../../../main/analysis/proportions/newcombe.ts';
import { wilsonInterval } from '../../../main/analysis/proportions/wilson.ts';
import { seededGenerator } from '../../../main/analysis/random/generator.ts';
import { randomBeta } from '../../../main/analysis/random/variates.ts';
import type { Computed } from '../../../main/analysis/result.ts';
import { stratifiedDifference } from '../../../main/analysis/stratified/mantel-haenszel.ts';
import { clusteredDependence } from '../../../main/analysis/trends/clustered-dependence.ts';
import { rateTrend } from '../../../main/analysis/trends/rate-trend.ts';
import { trialsStillNeeded } from '../../../main/analysis/trends/still-needed.ts';

function taken<T>(given: Computed<T>): T {
  if (!given.ok) throw new Error(given.error.message);
  return given.value;
}

/** Weil's litters as in Rao & Scott 1992, table 1: pups alive after three weeks out of pups after four days (from memory). */
const litters = {
  control: {
    counts: [13, 12, 9, 9, 8, 8, 12, 11, 9, 9, 8, 11, 4, 5, 7, 7],
    totals: [13, 12, 9, 9, 8, 8, 13, 12, 10, 10, 9, 13, 5, 7, 10, 10],
  },
  treated: {
    counts: [12, 11, 10, 9, 10, 9, 9, 8, 8, 4, 7, 4, 5, 3, 3, 0],
    totals: [12, 11, 10, 9, 11, 10, 10, 9, 9, 5, 9, 7, 10, 6, 10, 7],
  },
};

describe('proportions over clusters', () => {
  test('design effects of the litters: 1.232495 and 3.952861 (documentation of the R package PF, function rsb)', () => {
    expect(taken(clusteredProportion(litters.control)).designEffect).toBeCloseTo(1.232495, 6);
    expect(taken(clusteredProportion(litters.treated)).designEffect).toBeCloseTo(3.952861, 6);
  });

  test('where clusters vary no more than chance brings, all is as for independent trials', () => {
    const a = taken(clusteredProportion({ counts: [20, 20, 20], totals: [200, 200, 200] }));
    const b = taken(clusteredProportion({ counts: [4, 4], totals: [26, 26] }));
    expect(a.designEffect).toBe(1);
    expect(a).toMatchObject(taken(wilsonInterval(60, 600)));
    const expected = taken(newcombeDifference({ count: 60, total: 600 }, { count: 8, total: 52 }));
    const found = clusteredDifference(a, b);
    expect(found.lower).toBeCloseTo(expected.lower, 12);
    expect(found.upper).toBeCloseTo(expected.upper, 12);
    expect(taken(clusteredStillNeeded(a, b))).toBe(
      taken(repsStillNeeded({ count: 60, total: 600 }, { count: 8, total: 52 })),
    );
  });

  test('edges: no trials, none, all, one cluster, no proportion', () => {
    expect(clusteredProportion({ counts: [], totals: [] })).toMatchObject({ ok: false, error: { kind: 'no-data' } });
    expect(taken(clusteredProportion({ counts: [0, 0], totals: [5, 0] }))).toMatchObject({ lower: 0, clusters: 1 });
    expect(taken(clusteredProportion({ counts: [5, 7], totals: [5, 7] }))).toMatchObject({
      upper: 1,
      designEffect: 1,
    });
    expect(clusteredProportion({ counts: [6], totals: [5] })).toMatchObject({ error: { kind: 'invalid-input' } });
  });
});

describe('ratio of sums', () => {
  test('with denominators of one it is the mean with Student’s interval', () => {
    // 1, 2, 4, 5: mean 3, standard error sqrt(10 / 3 / 4) = 0.912871, Student's t with 3 degrees 3.182446 (tables).
    const found = taken(ratioOfSums([1, 2, 4, 5], [1, 1, 1, 1]));
    expect(found.estimate).toBe(3);
    expect(found.upper - 3).toBeCloseTo(3.182446 * 0.912871, 5);
  });

  test('edges', () => {
    expect(ratioOfSums([1], [2])).toMatchObject({ error: { kind: 'too-few-data' } });
    expect(ratioOfSums([1, 2], [0, 0])).toMatchObject({ error: { kind: 'no-data' } });
    expect(ratioOfSums([1, Number.NaN], [1, 1])).toMatchObject({ error: { kind: 'invalid-input' } });
    expect(taken(ratioOfSums([2, 4, 6], [1, 2, 3]))).toMatchObject({ estimate: 2, lower: 2, upper: 2 });
  });
});

describe('difference over strata', () => {
  test('one stratum has the variance of two independent proportions', () => {
    for (const [a, n, c, m] of [
      [7, 50, 3, 60],
      [20, 31, 15, 90],
    ] as const) {
      const found = taken(stratifiedDifference([{ firstCount: a, firstTotal: n, secondCount: c, secondTotal: m }]));
      const [p, q] = [a / n, c / m];
      expect(found.estimate).toBeCloseTo(p - q, 12);
      // Sato's estimator of a single table: close to the usual sum of the two binomial variances, equal where n = m.
      expect(found.standardError).toBeCloseTo(Math.sqrt((p * (1 - p)) / n + (q * (1 - q)) / m), 2);
    }
    const equal = { firstCount: 9, firstTotal: 40, secondCount: 4, secondTotal: 40 };
    const error = Math.sqrt((9 * 31 + 4 * 36) / 40 ** 3);
    expect(taken(stratifiedDifference([equal])).standardError).toBeCloseTo(error, 12);
  });

  test('changes sign with the groups, ignores strata of one group, widens with the dispersion', () => {
    const strata = [
      { firstCount: 5, firstTotal: 40, secondCount: 2, secondTotal: 55 },
      { firstCount: 9, firstTotal: 30, secondCount: 11, secondTotal: 80 },
    ];
    const turned = strata.map((s) => ({
      firstCount: s.secondCount,
      firstTotal: s.secondTotal,
      secondCount: s.firstCount,
      secondTotal: s.firstTotal,
    }));
    const found = taken(stratifiedDifference(strata));
    const other = taken(stratifiedDifference(turned));
    expect(other.estimate).toBeCloseTo(-found.estimate, 12);
    expect(other.standardError).toBeCloseTo(found.standardError, 12);
    const alone = { firstCount: 3, firstTotal: 9, secondCount: 0, secondTotal: 0 };
    expect(taken(stratifiedDifference([...strata, alone]))).toEqual(found);
    const wide = taken(stratifiedDifference(strata, { dispersion: 4 }));
    expect(wide.standardError).toBeCloseTo(2 * found.standardError, 12);
    expect(stratifiedDifference([alone])).toMatchObject({ error: { kind: 'no-data' } });
    const none = { firstCount: 0, firstTotal: 9, secondCount: 0, secondTotal: 4 };
    expect(stratifiedDifference([none])).toMatchObject({ error: { kind: 'no-variation' } });
  });

  test('its intervals hold the truth in 94 to 96.5 of 100 simulated nights', () => {
    const generator = seededGenerator(7);
    const drawn = (n: number, p: number) =>
      Array.from({ length: n }, () => generator.uniform()).filter((u) => u < p).length;
    let held = 0;
    const nights = 2_000;
    for (let night = 0; night < nights; night += 1) {
      const strata = [0.05, 0.1, 0.2, 0.08, 0.15].map((rate, i) => ({
        firstCount: drawn(40 + 10 * i, rate + 0.04),
        firstTotal: 40 + 10 * i,
        secondCount: drawn(90 - 10 * i, rate),
        secondTotal: 90 - 10 * i,
      }));
      const found = taken(stratifiedDifference(strata));
      if (found.lower <= 0.04 && found.upper >= 0.04) held += 1;
    }
    expect(held / nights).toBeGreaterThan(0.94);
    expect(held / nights).toBeLessThan(0.965);
  });
});

describe('trend of a rate', () => {
  test('holds its level where the sets of an athlete who does not change vary beyond chance', () => {
    const generator = seededGenerator(11);
    let alarms = 0;
    const athletes = 2_000;
    for (let who = 0; who < athletes; who += 1) {
      const totals = Array.from({ length: 14 }, () => 60);
      // Beta-binomial sets: mean 8 %, correlation 0.03 within a set.
      const counts = totals.map((total) => {
        const rate = randomBeta(generator, 0.08 * 32, 0.92 * 32);
        return Array.from({ length: total }, () => generator.uniform()).filter((u) => u < rate).length;
      });
      const found = rateTrend(
        counts,
        totals,
        totals.map((_, day) => day),
      );
      if (found.ok && found.value.pValue < 0.05) alarms += 1;
    }
    expect(alarms / athletes).toBeGreaterThan(0.035);
    expect(alarms / athletes).toBeLessThan(0.062);
  });

  test('edges', () => {
    expect(rateTrend([1, 2], [9, 9], [1, 2])).toMatchObject({ error: { kind: 'too-few-data' } });
    expect(rateTrend([0, 0, 0], [9, 9, 9], [1, 2, 3])).toMatchObject({ error: { kind: 'one-category' } });
    expect(rateTrend([1, 2, 3], [9, 9, 9], [4, 4, 4])).toMatchObject({ error: { kind: 'no-variation' } });
    expect(rateTrend([], [], [])).toMatchObject({ error: { kind: 'no-data' } });
    // Perfectly parted: a finite answer by the penalised likelihood.
    expect(taken(rateTrend([5, 0, 0, 0], [5, 5, 5, 5], [1, 2, 3, 4])).method).toBe('Firth penalised likelihood');
  });
});

describe('dependence on a scale', () => {
  test('pooling rows of one place leaves the answer as it is, however the rows of a cluster are split', () => {
    const x = [0.1, 0.5, 0.9, 0.1, 0.5, 0.9, 0.1, 0.9, 0.5, 0.1, 0.9, 0.5];
    const counts = [1, 2, 4, 0, 1, 2, 1, 5, 2, 0, 3, 1];
    const totals = [20, 20, 20, 22, 20, 18, 20, 20, 20, 15, 15, 15];
    const clusters = [1, 1, 1, 2, 2, 2, 3, 3, 4, 5, 5, 6];
    const range = { fromX: 0, toX: 1, curveFrom: 0, curveTo: 1 };
    const whole = taken(clusteredDependence({ x, counts, totals, clusters }, range));
    const single = { x: [] as number[], counts: [] as number[], totals: [] as number[], clusters: [] as number[] };
    x.forEach((place, row) => {
      for (let attempt = 0; attempt < (totals[row] ?? 0); attempt += 1) {
        single.x.push(place);
        single.counts.push(attempt < (counts[row] ?? 0) ? 1 : 0);
        single.totals.push(1);
        single.clusters.push(clusters[row] ?? 0);
      }
    });
    const parted = taken(clusteredDependence(single, range));
    expect(parted.oddsRatio.estimate).toBeCloseTo(whole.oddsRatio.estimate, 9);
    expect(parted.oddsRatio.upper).toBeCloseTo(whole.oddsRatio.upper, 8);
    expect(parted.clusters).toBe(6);
    expect(whole.from.estimate).toBeLessThan(whole.to.estimate);
    expect(whole.difference.estimate).toBeCloseTo(whole.to.estimate - whole.from.estimate, 12);
  });

  test('edges', () => {
    const range = { fromX: 0, toX: 1, curveFrom: 0, curveTo: 1 };
    const rows = { x: [0, 1, 0, 1], counts: [0, 1, 1, 2], totals: [9, 9, 9, 9], clusters: [1, 1, 2, 2] };
    expect(clusteredDependence(rows, range)).toMatchObject({ error: { kind: 'too-few-data' } });
    const many = {
      ...rows,
      x: [1, 1, 1, 1, 1, 1],
      counts: [1, 0, 1, 0, 1, 0],
      totals: [9, 9, 9, 9, 9, 9],
      clusters: [1, 2, 3, 4, 5, 6],
    };
    expect(clusteredDependence(many, range)).toMatchObject({ error: { kind: 'no-variation' } });
  });
});

test('trials still needed: four times the trials halve the standard error', () => {
  // A statistic of half of 1.959964 + 0.841621 needs four times the trials: three times as many more.
  expect(trialsStillNeeded(100_000, (1.959964 + 0.841621) / 2)).toBeCloseTo(300_000, -1);
  expect(trialsStillNeeded(100, 0)).toBeNull();
  expect(trialsStillNeeded(100, 1e-6)).toBeNull();
  expect(trialsStillNeeded(100, 9)).toBe(1);
});

test('no-reps that follow a fast start are seen, and none where sets began alike', () => {
  const starts = [-0.2, -0.15, -0.1, -0.05, 0, 0.05].map((change) => ({
    change,
    attemptsAfter: 100,
    noRepsAfter: Math.round(6 - 60 * change),
  }));
  const found = taken(fastStarts(starts));
  expect(found.oddsRatio.lower).toBeGreaterThan(1);
  expect(found.pValue).toBeLessThan(0.05);
  const alike = starts.map((start) => ({ ...start, change: 0.1 }));
  expect(fastStarts(alike)).toMatchObject({ error: { kind: 'no-variation' } });
  expect(fastStarts(starts.slice(0, 4))).toMatchObject({ error: { kind: 'too-few-data' } });
});
