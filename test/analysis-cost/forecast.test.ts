import { describe, expect, it } from 'vitest';
import { betaNegativeBinomialProbability } from '../../main/analysis/distributions/beta-negative-binomial.ts';
import { type EarlierSet, type Forecast, type ForecastGoal, forecast } from '../../main/analysis/forecast/forecast.ts';
import { costDraws } from '../../main/analysis/forecast/no-rep-costs.ts';
import { rateModel } from '../../main/analysis/forecast/no-rep-rate.ts';
import { seededGenerator } from '../../main/analysis/random/generator.ts';

const set = (noReps: number, attempts: number, cost = 4): EarlierSet => ({
  noReps,
  attempts,
  costs: Array.from({ length: noReps }, (_, i) => cost + (i % 3) - 1),
  cleanCycles: [2.4, 2.5, 2.6],
});
const reps: ForecastGoal = { kind: 'reps', reps: 100 };

function made(sets: readonly EarlierSet[], goal: ForecastGoal, options = {}): Forecast {
  const answer = forecast(sets, goal, options);
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.value;
}

describe('forecast', () => {
  it('draws the no-reps of one earlier set as the beta negative binomial has them', () => {
    // One set tells nothing of how sets differ, so that the exact law is Beta(8.5, 92.5) mixed into NB(100, 1 - rate).
    const one = made([set(8, 100)], reps, { draws: 40_000 });
    expect(one.correlation).toBeNull();
    for (const limit of [one.noReps.lower, one.noReps.upper]) expect(Number.isInteger(limit)).toBe(true);
    let upTo = 0;
    const cdf = Array.from({ length: 200 }, (_, k) => {
      upTo += betaNegativeBinomialProbability(k, 100, 92.5, 8.5);
      return upTo;
    });
    expect(cdf[one.noReps.lower]).toBeGreaterThan(0.02);
    expect(cdf[one.noReps.lower - 1]).toBeLessThan(0.03);
    expect(cdf[one.noReps.upper]).toBeGreaterThan(0.97);
    expect(cdf[one.noReps.upper - 1]).toBeLessThan(0.98);
    // Mean of the beta negative binomial: r b / (a - 1) with a = 92.5, b = 8.5.
    expect(one.noReps.estimate).toBeCloseTo((100 * 8.5) / 91.5, 0);
    expect(one.extraAttempts).toEqual(one.noReps);
  });

  it('costs as much as the observed costs, and half at half the rate', () => {
    const sets = Array.from({ length: 6 }, () => set(9, 100));
    const now = made(sets, reps);
    const half = made(sets, reps, { rate: now.rate.estimate / 2 });
    expect(now.seconds?.estimate ?? 0).toBeCloseTo(4 * now.noReps.estimate, -1);
    expect((half.seconds?.estimate ?? 0) / (now.seconds?.estimate ?? 1)).toBeCloseTo(0.48, 1);
    expect(half.rate).toMatchObject({ lower: half.rate.estimate, upper: half.rate.estimate });
    expect(made(sets, reps, { rate: 0 })).toMatchObject({ chanceOfNone: 1, seconds: { estimate: 0, upper: 0 } });
  });

  it('is wider where sets differ among themselves', () => {
    const alike = made(
      Array.from({ length: 8 }, () => set(10, 110)),
      reps,
    );
    const apart = made(
      [2, 18, 4, 16, 1, 19, 5, 15].map((noReps) => set(noReps, 110)),
      reps,
    );
    expect(alike.correlation).toBe(0);
    expect(apart.correlation).toBeGreaterThan(0.03);
    const width = (one: Forecast) => one.noReps.upper - one.noReps.lower;
    expect(width(apart)).toBeGreaterThan(1.5 * width(alike));
  });

  it('counts metres in jumps, and metres taken back as further jumps', () => {
    // One set alone leaves out how sets differ, which would raise the mean.
    const sets = [set(30, 300)];
    const plain = made(sets, { kind: 'metres', metres: 80, perJump: 1.6, back: 0 }, { rate: 0.1 });
    expect(plain.counted.estimate).toBe(50);
    const back = made(sets, { kind: 'metres', metres: 80, perJump: 1.6, back: 1.6 }, { rate: 0.1 });
    // n = 50 + x with x no-reps in n counted reps: x = n / 9, so n = 56.25.
    expect(Math.abs(back.counted.estimate - 56.25)).toBeLessThan(0.3);
    expect(Math.abs((back.extraAttempts?.estimate ?? 0) - 2 * 6.25)).toBeLessThan(0.6);
    // Ten metres back for a jump that fails nine times in ten: no set would end, and the draw is cut off.
    const hopeless = made(sets, { kind: 'metres', metres: 80, perJump: 1.6, back: 10 }, { rate: 0.9, draws: 50 });
    expect(Number.isFinite(hopeless.extraAttempts?.upper)).toBe(true);
  });

  it('counts reps against the clock', () => {
    const sets = [set(10, 100), set(9, 100), set(11, 100)];
    const timed = made(sets, { kind: 'clock', seconds: 300 }, { rate: 0.1 });
    // 120 cycles of 2.5 s without no-reps; n (2.5 + 4 / 9) = 300 with them.
    expect(timed.counted.estimate).toBeCloseTo(300 / (2.5 + 4 / 9), -1);
    expect(timed.repsLost?.estimate ?? 0).toBeCloseTo(120 - 300 / (2.5 + 4 / 9), 0);
    expect(timed.extraAttempts).toBeNull();
  });

  it('says in types what it cannot tell', () => {
    expect(made([set(0, 100)], reps)).toMatchObject({ seconds: null, repsLost: null });
    const kinds = (sets: readonly EarlierSet[], goal: ForecastGoal, options = {}) => {
      const answer = forecast(sets, goal, options);
      return answer.ok ? 'ok' : answer.error.kind;
    };
    expect(kinds([], reps)).toBe('no-data');
    expect(kinds([set(0, 0)], reps)).toBe('no-data');
    expect(kinds([set(1, 100)], { kind: 'clock', seconds: 300 })).toBe('too-few-data');
    expect(kinds([set(1, 100)], { kind: 'reps', reps: 0 })).toBe('invalid-input');
    expect(kinds([set(1, 100)], reps, { rate: 1 })).toBe('invalid-input');
    expect(kinds([{ ...set(1, 100), noReps: 200 }], reps)).toBe('invalid-input');
    expect(kinds([set(5, 5)], reps)).toBe('ok');
  });
});

describe('parts of the forecast', () => {
  it('finds the correlation that sets were made with', () => {
    // Of 100 attempts 0 or 20 no-reps: variance 100 against 100 x 0.1 x 0.9 = 9, dispersion 100 / 9 x 10 / 9 by degrees.
    const model = rateModel(Array.from({ length: 10 }, (_, i) => ({ noReps: i % 2 === 0 ? 0 : 20, attempts: 100 })));
    expect(model.correlation).toBeCloseTo((1000 / 9 / 9 - 1) / 99, 6);
  });

  it('has no cost distribution of fewer than three costs, and draws the mean of more', () => {
    expect(costDraws([[3], [4]])).toBeNull();
    const draw = costDraws([
      [3, 4],
      [5, 4],
    ]);
    const generator = seededGenerator(3);
    let sum = 0;
    for (let i = 0; i < 4_000; i += 1) sum += draw?.(5, generator) ?? 0;
    expect(sum / 4_000 / 5).toBeCloseTo(4, 1);
    expect(draw?.(0, generator)).toBe(0);
  });
});
