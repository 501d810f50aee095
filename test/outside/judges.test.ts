import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { brennanPrediger, scottPi, specificAgreement } from '../../main/analysis/agreement/chance-corrected.ts';
import { cohenKappa } from '../../main/analysis/agreement/cohen-kappa.ts';
import { fleissKappa } from '../../main/analysis/agreement/fleiss-kappa.ts';
import { gwetAC1 } from '../../main/analysis/agreement/gwet-ac1.ts';
import { krippendorffAlpha } from '../../main/analysis/agreement/krippendorff-alpha.ts';
import { psychometricFunction } from '../../main/analysis/detection/psychometric-function.ts';
import { detectionFromRates, signalDetection } from '../../main/analysis/detection/signal-detection.ts';
import { nextUpDown, startUpDown, upDownEstimate, upDownTarget } from '../../main/analysis/detection/up-down.ts';
import { normalCdf } from '../../main/analysis/distributions/normal.ts';
import { seededGenerator } from '../../main/analysis/random/generator.ts';
import { errorKind, holdsNaN, valueFrom } from './test-sums.ts';

const ratings = fc.integer({ min: 2, max: 4 }).chain((size) =>
  fc.array(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: size, maxLength: size }), {
    minLength: size,
    maxLength: size,
  }),
);
const turned = (rows: number[][]) => rows.map((_, j) => rows.map((row) => row[j] ?? 0));
const relabelled = (rows: number[][]) => rows.map((row) => row.toReversed()).toReversed();
/** The verdict pairs behind a table of two judges. */
const pairsOf = (rows: number[][]) =>
  rows.flatMap((row, i) => row.flatMap((count, j) => Array.from({ length: count }, () => [i, j])));

describe('agreement', () => {
  test('no coefficient cares which judge is first or how categories are ordered', () => {
    fc.assert(
      fc.property(ratings, (rows) => {
        for (const method of [cohenKappa, gwetAC1] as const) {
          const result = method(rows);
          if (!result.ok) continue;
          expect(holdsNaN(result.value)).toBe(false);
          for (const variant of [turned(rows), relabelled(rows)]) {
            const other = valueFrom(method(variant));
            expect(other.estimate).toBeCloseTo(result.value.estimate, 10);
            expect(other.standardError).toBeCloseTo(result.value.standardError, 10);
          }
        }
      }),
    );
  });

  test("Fleiss' kappa of two judges is Scott's pi, and alpha is pi with its small-sample share", () => {
    fc.assert(
      fc.property(ratings, (rows) => {
        const pi = scottPi(rows);
        fc.pre(pi.ok);
        const pairs = pairsOf(rows);
        const counts = pairs.map((pair) =>
          rows.map((_, category) => pair.filter((value) => value === category).length),
        );
        expect(valueFrom(fleissKappa(counts)).kappa).toBeCloseTo(valueFrom(pi), 9);
        const expected = valueFrom(pi) + (1 - valueFrom(pi)) / (2 * pairs.length);
        expect(valueFrom(krippendorffAlpha(pairs)).alpha).toBeCloseTo(expected, 9);
      }),
    );
  });

  test('perfect agreement is 1 on every scale; rare no-reps bring kappa down and leave AC1 up', () => {
    const perfect = [
      [7, 0],
      [0, 5],
    ];
    for (const method of [cohenKappa, gwetAC1] as const) expect(valueFrom(method(perfect)).estimate).toBeCloseTo(1, 12);
    expect(valueFrom(brennanPrediger(perfect))).toBe(1);
    expect(valueFrom(specificAgreement(perfect))).toMatchObject({ first: 1, second: 1, biasIndex: 0 });
    const rare = [
      [95, 2],
      [2, 1],
    ];
    expect(valueFrom(cohenKappa(rare)).estimate).toBeLessThan(0.4);
    expect(valueFrom(gwetAC1(rare)).estimate).toBeGreaterThan(0.95);
    expect(valueFrom(specificAgreement(rare)).second).toBeCloseTo(1 / 3, 12);
  });

  test('weights of 1 on the diagonal alone give the plain kappa', () => {
    const rows = [
      [20, 5, 1],
      [3, 15, 4],
      [2, 6, 12],
    ];
    const identity = rows.map((row, i) => row.map((_, j) => Number(i === j)));
    expect(valueFrom(cohenKappa(rows, { weights: identity }))).toEqual(valueFrom(cohenKappa(rows)));
  });

  test('one category, nothing, missing verdicts: stated results or typed errors', () => {
    expect(
      errorKind(
        cohenKappa([
          [9, 0],
          [0, 0],
        ]),
      ),
    ).toBe('one-category');
    expect(
      errorKind(
        scottPi([
          [9, 0],
          [0, 0],
        ]),
      ),
    ).toBe('one-category');
    expect(
      valueFrom(
        gwetAC1([
          [9, 0],
          [0, 0],
        ]),
      ),
    ).toMatchObject({ estimate: 1, standardError: 0 });
    expect(
      valueFrom(
        specificAgreement([
          [9, 0],
          [0, 0],
        ]),
      ).second,
    ).toBeUndefined();
    for (const method of [cohenKappa, gwetAC1, scottPi, brennanPrediger, specificAgreement] as const) {
      expect(
        errorKind(
          method([
            [0, 0],
            [0, 0],
          ]),
        ),
      ).toBe('no-data');
      expect(errorKind(method([[1, 2]]))).toBe('invalid-input');
    }
    expect(errorKind(fleissKappa([]))).toBe('no-data');
    expect(
      errorKind(
        fleissKappa([
          [3, 0],
          [3, 0],
        ]),
      ),
    ).toBe('one-category');
    expect(
      errorKind(
        fleissKappa([
          [3, 0],
          [2, 0],
        ]),
      ),
    ).toBe('invalid-input');
    expect(
      errorKind(
        krippendorffAlpha([
          ['a', undefined],
          [null, 'b'],
        ]),
      ),
    ).toBe('no-data');
    expect(
      errorKind(
        krippendorffAlpha([
          ['a', 'a'],
          ['a', 'a', null],
        ]),
      ),
    ).toBe('one-category');
    const complete = krippendorffAlpha([
      ['a', 'a'],
      ['a', 'b'],
    ]);
    expect(
      valueFrom(
        krippendorffAlpha([
          ['a', 'a', null],
          ['a', undefined, 'b'],
          ['b', null],
        ]),
      ),
    ).toEqual(valueFrom(complete));
  });
});

describe('detection', () => {
  const cell = fc.integer({ min: 0, max: 60 });

  test('swapping signal and noise turns d-prime round; calling the other way turns the criterion round', () => {
    fc.assert(
      fc.property(cell, cell, cell, cell, (hits, misses, falseAlarms, correctRejections) => {
        fc.pre(hits + misses > 0 && falseAlarms + correctRejections > 0);
        const plain = valueFrom(signalDetection({ hits, misses, falseAlarms, correctRejections }));
        expect(holdsNaN(plain)).toBe(false);
        const swapped = valueFrom(
          signalDetection({
            hits: falseAlarms,
            misses: correctRejections,
            falseAlarms: hits,
            correctRejections: misses,
          }),
        );
        expect(swapped.dPrime.estimate).toBeCloseTo(-plain.dPrime.estimate, 10);
        expect(swapped.criterion.estimate).toBeCloseTo(plain.criterion.estimate, 10);
        const opposite = valueFrom(
          signalDetection({
            hits: misses,
            misses: hits,
            falseAlarms: correctRejections,
            correctRejections: falseAlarms,
          }),
        );
        expect(opposite.criterion.estimate).toBeCloseTo(-plain.criterion.estimate, 10);
      }),
    );
    expect(errorKind(signalDetection({ hits: 0, misses: 0, falseAlarms: 1, correctRejections: 2 }))).toBe('no-data');
    const perfect = { hits: 9, misses: 0, falseAlarms: 0, correctRejections: 9 };
    expect(errorKind(signalDetection(perfect, { logLinear: false }))).toBe('invalid-input');
    expect(errorKind(detectionFromRates(1, 0.2))).toBe('invalid-input');
  });

  test('intervals of d-prime cover the truth about as often as they say', () => {
    const generator = seededGenerator(31);
    const truth = 1.5;
    const drawn = (chance: number, n: number) =>
      Array.from({ length: n }, () => generator.uniform() < chance).filter(Boolean).length;
    let covered = 0;
    const rounds = 2000;
    for (let round = 0; round < rounds; round += 1) {
      const hits = drawn(normalCdf(truth / 2), 80);
      const falseAlarms = drawn(normalCdf(-truth / 2), 80);
      const counts = { hits, misses: 80 - hits, falseAlarms, correctRejections: 80 - falseAlarms };
      const { lower, upper } = valueFrom(signalDetection(counts)).dPrime;
      if (lower <= truth && truth <= upper) covered += 1;
    }
    expect(covered / rounds).toBeGreaterThan(0.93);
    expect(covered / rounds).toBeLessThan(0.97);
  });

  const margins = [-6, -4, -2, 0, 2, 4, 6];
  const answers = (centre: number, sd: number, trials: number, guess = 0, lapse = 0) =>
    margins.map((margin) => Math.round(trials * (guess + (1 - guess - lapse) * normalCdf((margin - centre) / sd))));

  test('the psychometric function finds the centre and slope behind the answers, also with guesses and lapses', () => {
    for (const [guess, lapse] of [
      [0, 0],
      [0, 0.03],
      [0.1, 0.02],
    ] as const) {
      const trials = margins.map(() => 4000);
      const successes = answers(0.7, 2.5, 4000, guess, lapse);
      const fit = valueFrom(psychometricFunction({ margins, successes, trials }, { guess, lapse }));
      if (fit.kind !== 'curve') throw new Error('There is a curve in these answers.');
      expect(fit.centre).toBeCloseTo(0.7, 1);
      expect(1 / fit.slope.estimate).toBeCloseTo(2.5, 1);
      expect(fit.centreInterval?.lower).toBeLessThan(fit.centre);
      expect(fit.centreInterval?.upper).toBeGreaterThan(fit.centre);
    }
  });

  test('shifting and scaling the margins shifts and scales the centre with its interval', () => {
    const trials = margins.map(() => 20);
    const successes = answers(1, 3, 20);
    const plain = valueFrom(psychometricFunction({ margins, successes, trials }));
    const inMetres = valueFrom(psychometricFunction({ margins: margins.map((m) => (m + 5) / 100), successes, trials }));
    if (plain.kind !== 'curve' || inMetres.kind !== 'curve') throw new Error('There is a curve in these answers.');
    expect(inMetres.centre).toBeCloseTo((plain.centre + 5) / 100, 9);
    expect(inMetres.centreInterval?.upper).toBeCloseTo(((plain.centreInterval?.upper ?? 0) + 5) / 100, 8);
    expect(inMetres.slope.estimate).toBeCloseTo(plain.slope.estimate * 100, 6);
  });

  test('a judge without a single slip is a step between two margins; a blind one has no bounded centre', () => {
    const trials = [5, 5, 5, 5];
    expect(valueFrom(psychometricFunction({ margins: [-2, -1, 1, 3], successes: [0, 0, 5, 5], trials }))).toEqual({
      kind: 'step',
      centreBetween: [-1, 1],
    });
    expect(valueFrom(psychometricFunction({ margins: [-2, -1, 1, 3], successes: [5, 5, 0, 0], trials }))).toEqual({
      kind: 'step',
      centreBetween: [-1, 1],
    });
    // With lapses the slips at the top are allowed for, and one mixed margin leaves the step there.
    const slips = { margins: [-2, -1, 1, 3], successes: [0, 0, 49, 50], trials: [5, 5, 50, 50] };
    const lapsing = valueFrom(psychometricFunction(slips, { lapse: 0.02 }));
    expect(lapsing).toEqual({ kind: 'step', centreBetween: [-1, 1] });
    const mixed = { margins: [-2, -1, 1, 3], successes: [0, 2, 5, 5], trials };
    expect(valueFrom(psychometricFunction(mixed))).toEqual({ kind: 'step', centreBetween: [-1, -1] });
    const blind = valueFrom(psychometricFunction({ margins: [-2, -1, 1, 3], successes: [2, 3, 3, 2], trials }));
    expect(blind.kind === 'curve' && blind.centreInterval).toBeUndefined();
    expect(errorKind(psychometricFunction({ margins: [1, 2], successes: [0, 0], trials: [4, 4] }))).toBe(
      'one-category',
    );
    expect(errorKind(psychometricFunction({ margins: [2, 2], successes: [1, 3], trials: [4, 4] }))).toBe(
      'no-variation',
    );
    expect(errorKind(psychometricFunction({ margins: [], successes: [], trials: [] }))).toBe('no-data');
    const data = { margins: [1, 2], successes: [1, 3], trials: [4, 4] };
    expect(errorKind(psychometricFunction(data, { guess: 0.6, lapse: 0.5 }))).toBe('invalid-input');
  });

  test('the up-down rule settles where its share of right answers says', () => {
    const generator = seededGenerator(71);
    for (const downAfter of [1, 2, 3]) {
      const rule = { downAfter, step: 0.1, lowest: -10, highest: 10 };
      let state = startUpDown(3);
      for (let answer = 0; answer < 6_000; answer += 1) {
        state = nextUpDown(state, generator.uniform() < normalCdf(state.level), rule);
      }
      expect(normalCdf(valueFrom(upDownEstimate(state)))).toBeCloseTo(upDownTarget(downAfter), 1);
    }
    expect(errorKind(upDownEstimate(startUpDown(3)))).toBe('too-few-data');
    const bounded = nextUpDown(startUpDown(1), true, { downAfter: 1, step: 5, lowest: 0, highest: 2 });
    expect(bounded.level).toBe(0);
  });
});
