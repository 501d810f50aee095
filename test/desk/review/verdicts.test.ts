import { describe, expect, test } from 'vitest';
import { EXACT_JUDGE } from '../../../main/analysis/simulator/models.ts';
import type { AthleteFilter } from '../../../shared-types/contract/review/filter.ts';
import { athlete, judge } from '../fixtures.ts';
import { athleteModel, DAY_MS, deskWith, faultModel, firstDay, second, simulated, strict } from './gym.ts';

const filter: AthleteFilter = { athlete: athlete.id, sheet: 'wall-throw' };

describe('the rate over time', () => {
  test('falls where an athlete learns, is told apart from another span, and rises where form goes', async () => {
    const learning = Array.from({ length: 20 }, (_, number) =>
      simulated(number, athleteModel({ faults: [faultModel('depth', 0.2 * 0.86 ** number)] })),
    );
    const { calls } = await deskWith(learning);
    const view = await calls.review.athlete({ filter });
    expect(view.trend.verdict).toEqual({ kind: 'fewer' });
    expect(view.trend.fitted?.difference.high).toBeLessThan(0);
    expect(view.trend.fitted?.checkPValue).toBeLessThan(0.05);
    expect(view.trend.curve).toHaveLength(61);
    const middle = firstDay + 9.5 * DAY_MS;
    const a = { ...filter, to: middle };
    const b = { ...filter, from: middle };
    const compared = await calls.review.compare({ a, b });
    expect(compared.verdict).toEqual({ kind: 'fewer-in-b' });
    expect(compared.shared).toBe(0);
    expect(compared.difference?.value).toBeCloseTo(
      (compared.a.totals.rate?.value ?? 0) - (compared.b.totals.rate?.value ?? 0),
      12,
    );
    expect((await calls.review.compare({ a: b, b: a })).verdict).toEqual({ kind: 'fewer-in-a' });
    expect((await calls.review.compare({ a: filter, b })).verdict).toEqual({ kind: 'shared-sets' });
  });

  test('can’t be told from a few even sets, and says how many more reps would', async () => {
    const steady = Array.from({ length: 6 }, (_, number) =>
      simulated(number, athleteModel({ faults: [faultModel('depth', 0.05 + 0.004 * number)] }), { seed: 40 + number }),
    );
    const { calls } = await deskWith(steady);
    const { verdict } = (await calls.review.athlete({ filter })).trend;
    expect(verdict.kind).toBe('unclear');
    expect(verdict).toMatchObject({ stillNeeded: expect.any(Number) });
  });
});

describe('where in the set, and at which pace', () => {
  test('rises with fatigue', async () => {
    const tiring = Array.from({ length: 16 }, (_, number) =>
      simulated(number, athleteModel({ faults: [faultModel('depth', 0.03, { fatigue: 2.2 })] })),
    );
    const { calls } = await deskWith(tiring);
    const { place } = await calls.review.athlete({ filter });
    expect(place.verdict).toEqual({ kind: 'rises' });
    // The model's log-odds grow by 2.2 from the first rep to the last.
    expect(Math.log(place.fitted?.oddsRatio.low ?? 0)).toBeLessThan(2.2);
    expect(Math.log(place.fitted?.oddsRatio.high ?? 0)).toBeGreaterThan(2.2);
    expect(place.fitted?.clusters).toBe(16);
  });

  test('comes with haste', async () => {
    const noisy = athleteModel().pace;
    const hasty = Array.from({ length: 20 }, (_, number) =>
      simulated(
        number,
        athleteModel({
          pace: { ...noisy, noise: 0.12, autocorrelation: 0 },
          faults: [{ ...faultModel('line', 0.06, { hurry: 0.9 }), attempt: 1 }],
        }),
      ),
    );
    const { calls } = await deskWith(hasty);
    const { hurry } = await calls.review.athlete({ filter });
    expect(hurry.verdict).toEqual({ kind: 'hurried' });
    expect(hurry.fitted?.from.value).toBeGreaterThan(hurry.fitted?.to.value ?? 1);
    expect(hurry.bins).toHaveLength(12);
  });
});

describe('pacing', () => {
  test('fades where the cycles grow, is even where they do not', async () => {
    const paced = (fade: number) =>
      Array.from({ length: 8 }, (_, number) =>
        simulated(number, athleteModel({ pace: { ...athleteModel().pace, fade, noise: 0.03 } })),
      );
    const fading = await (await deskWith(paced(0.3))).calls.review.athlete({ filter });
    expect(fading.pacing.overall.verdict).toEqual({ kind: 'fading' });
    expect(fading.pacing.sets).toHaveLength(8);
    expect(fading.pacing.sets.every((set) => set.verdict.kind === 'fading')).toBe(true);
    const even = await (await deskWith(paced(0))).calls.review.athlete({ filter });
    expect(even.pacing.overall.verdict).toEqual({ kind: 'even' });
  });
});

describe('a judge beside the others', () => {
  const judged = (severity: number) =>
    Array.from({ length: 32 }, (_, number) =>
      simulated(number, athleteModel(), {
        athlete: number % 2 === 0 ? athlete.id : second.id,
        judge: number % 4 < 2 ? judge.id : strict.id,
        judgeModel: number % 4 < 2 ? EXACT_JUDGE : { ...EXACT_JUDGE, severity },
      }),
    );

  test('who calls good reps no-reps calls more; the other calls fewer', async () => {
    const { calls } = await deskWith(judged(0.12));
    const view = await calls.review.judge({ filter: { judge: strict.id } });
    expect(view.overall.verdict).toEqual({ kind: 'more' });
    expect(view.overall.strata).toBe(2);
    const other = await calls.review.judge({ filter: { judge: judge.id } });
    expect(other.overall.verdict).toEqual({ kind: 'fewer' });
    expect(other.overall.difference?.value).toBeCloseTo(-(view.overall.difference?.value ?? 0), 12);
  });

  test('two alike are alike, or not told apart yet', async () => {
    const { calls } = await deskWith(judged(0));
    const view = await calls.review.judge({ filter: { judge: strict.id } });
    expect(['alike', 'unclear']).toContain(view.overall.verdict.kind);
  });

  test('a judge who hardens through the session drifts', async () => {
    const sessions = Array.from({ length: 8 }, (_, day) =>
      Array.from({ length: 4 }, (_unused, turn) =>
        simulated(day * 4 + turn, athleteModel({ faults: [faultModel('depth', 0.02 + 0.05 * turn)] }), {
          at: firstDay + day * DAY_MS + turn * 1_800_000,
        }),
      ),
    ).flat();
    const { calls } = await deskWith(sessions);
    const { drift } = await calls.review.judge({ filter: { judge: judge.id } });
    expect(drift.sessions).toBe(8);
    expect(drift.verdict).toEqual({ kind: 'rises' });
    expect(drift.fitted?.toX).toBeCloseTo(1.5, 6);
    expect(drift.bins.map((bin) => bin.attempts > 0)).toEqual([true, true, true, true]);
  });
});
