import { describe, expect, it } from 'vitest';
import { psychometricFunction } from '../../main/analysis/detection/psychometric-function.ts';
import { normalCdf as exactCdf } from '../../main/analysis/distributions/normal.ts';
import { fitEye } from '../../main/analysis/drills/eye-fit.ts';
import { seededGenerator } from '../../main/analysis/random/generator.ts';
import { type Answer, eyeGrid, learn, noRepChance, openBelief, readBelief } from '../../shared-types/drills/eye.ts';
import { normalCdf } from '../../shared-types/drills/normal.ts';

const RANGE = { low: -25, high: 8 };

function answers(eye: { strictness: number; precision: number; lapse: number }, count: number, seed: number): Answer[] {
  const generator = seededGenerator(seed);
  return Array.from({ length: count }, (_, i) => {
    const margin = -15 + (23 * (i + 0.5)) / count;
    return { margin, noRep: generator.uniform() < noRepChance(eye, margin) };
  });
}

describe('the eye of a judge', () => {
  it('takes the normal distribution from a table that is right to a billionth', () => {
    for (let z = -7.5; z <= 7.5; z += 0.0137) expect(Math.abs(normalCdf(z) - exactCdf(z))).toBeLessThan(1e-9);
  });

  it('agrees with maximum likelihood on a large sample', () => {
    const told = answers({ strictness: -3, precision: 3, lapse: 0 }, 6_000, 1);
    const fit = fitEye(told, RANGE);
    const likelihood = psychometricFunction({
      margins: told.map((answer) => answer.margin),
      successes: told.map((answer) => Number(answer.noRep)),
      trials: told.map(() => 1),
    });
    if (!fit.ok || !likelihood.ok || likelihood.value.kind !== 'curve') throw new Error('both must tell');
    const { centre, centreInterval, slope } = likelihood.value;
    expect(Math.abs(fit.value.strictness.value - centre)).toBeLessThan(0.03);
    expect(Math.abs(fit.value.precision.value + 1 / slope.estimate)).toBeLessThan(0.05);
    expect(Math.abs(fit.value.strictness.low - (centreInterval?.lower ?? 0))).toBeLessThan(0.05);
    expect(Math.abs(fit.value.strictness.high - (centreInterval?.upper ?? 0))).toBeLessThan(0.05);
  });

  it('finds a line where the answers part at one margin', () => {
    const told = Array.from({ length: 24 }, (_, i) => ({ margin: i - 15.5, noRep: i - 15.5 < -4 }));
    const fit = fitEye(told, RANGE);
    if (!fit.ok) throw new Error(fit.error.message);
    expect(fit.value.strictness.value).toBeCloseTo(-4, 0);
    // Calls a centimetre apart, all on their side: a noise of 4 cm would have turned one of them, nineteen times of twenty.
    expect(fit.value.precision.value).toBeLessThan(1.5);
    expect(fit.value.precision.high).toBeLessThan(4);
  });

  it('the closer look reads what the whole grid reads', () => {
    const told = answers({ strictness: 0, precision: 3, lapse: 0.02 }, 60, 2);
    const grid = eyeGrid(RANGE.low, RANGE.high);
    const whole = readBelief(grid, learn(grid, openBelief(grid), told));
    const fit = fitEye(told, RANGE);
    if (!fit.ok) throw new Error(fit.error.message);
    expect(Math.abs(fit.value.strictness.value - whole.strictness.value)).toBeLessThan(0.15);
    expect(Math.abs(fit.value.precision.value / whole.precision.value - 1)).toBeLessThan(0.06);
  });

  it('learns a call at a time what it learns at once', () => {
    const told = answers({ strictness: -2, precision: 4, lapse: 0 }, 20, 3);
    const grid = eyeGrid(RANGE.low, RANGE.high);
    const atOnce = learn(grid, openBelief(grid), told);
    const oneByOne = told.reduce((belief, answer) => learn(grid, belief, [answer]), openBelief(grid));
    atOnce.forEach((weight, i) => {
      expect(Math.abs(weight - (oneByOne[i] ?? 0))).toBeLessThan(1e-12);
    });
  });

  it('says why it cannot tell', () => {
    const kind = (told: readonly Answer[]) => {
      const fit = fitEye(told, RANGE);
      return fit.ok ? 'told' : fit.error.kind;
    };
    const even = Array.from({ length: 40 }, (_, i) => -15 + (23 * i) / 39);
    expect(kind([])).toBe('no-data');
    expect(kind(even.slice(0, 9).map((margin) => ({ margin, noRep: margin < 0 })))).toBe('too-few-data');
    expect(kind(even.map((margin) => ({ margin, noRep: false })))).toBe('one-category');
    expect(kind(even.map((margin, i) => ({ margin, noRep: i % 2 === 0 })))).toBe('no-variation');
    // Only the very best rep of all that can be shown was counted: the line may lie anywhere beyond.
    expect(kind(even.map((margin) => ({ margin, noRep: margin < 7.5 })))).toBe('out-of-reach');
  });
});
