import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { setSums } from '../../main/analysis/cost/set-sums.ts';
import { EXACT_JUDGE } from '../../main/analysis/simulator/models.ts';
import { type SetPlan, simulateSet } from '../../main/analysis/simulator/simulate-set.ts';
import { setEvent } from '../../shared-types/log/events.ts';
import { foldSet, goalReached, tally } from '../../shared-types/log/fold.ts';
import type { Goal } from '../../shared-types/log/setup.ts';
import { GOAL_SCENARIOS, proofSet, SCENARIOS, SHORT_SCENARIOS } from './cost-proof.ts';

const SET = '00000000-0000-4000-8000-000000000001';
const scenario = fc.constantFrom(...SCENARIOS, ...SHORT_SCENARIOS, ...GOAL_SCENARIOS);
const rate = fc.constantFrom(0.02, 0.1, 0.3);
const seed = fc.integer({ min: 0, max: 2 ** 31 });

describe('simulated sets', () => {
  it('are logs that the schemas and the fold accept, and the same from the same seed', () => {
    fc.assert(
      fc.property(scenario, rate, seed, (one, share, start) => {
        const { events, truth } = proofSet(one, share, start);
        for (const event of events) setEvent.parse(event);
        const state = foldSet(SET, events);
        expect(state.clashes).toEqual([]);
        expect(state.phase).toBe('finished');
        const standing = state.attempts.filter((attempt) => !attempt.withdrawn);
        expect(standing.map((attempt) => attempt.verdict !== 'no-rep')).toEqual(
          truth.attempts.map((item) => item.counted),
        );
        const goal: Goal = one.goal ?? { kind: 'reps', reps: one.reps };
        expect(goalReached(goal, state, state.endedAt ?? 0)).toBe(true);
        expect(proofSet(one, share, start).events).toEqual(events);
      }),
      { numRuns: 60 },
    );
  });

  it('keep a ledger that adds up and sums that agree, whatever the set', () => {
    fc.assert(
      fc.property(scenario, rate, seed, fc.double({ min: 0, max: 1, noNaN: true }), (one, share, start, part) => {
        const { events } = proofSet(one, share, start);
        // A log cut anywhere is a set that still runs.
        const state = foldSet(SET, events.slice(0, Math.ceil(part * events.length)));
        const { ledger, cost, attempts } = setSums(state, { resamples: 10, now: state.lastAt + 700 });
        const lines = [ledger.start, ledger.work, ledger.noRep, ledger.break];
        expect(lines.reduce((sum, line) => sum + line, 0)).toBe(ledger.clock);
        expect(lines.every((line) => Number.isInteger(line) && line >= 0)).toBe(true);
        expect(attempts).toHaveLength(tally(state).attempts);
        if (cost.total === null || cost.runs.some((run) => run.flags.includes('below-zero'))) return;
        // Each run is rounded to a whole millisecond.
        expect(Math.abs(ledger.noRep / 1000 - cost.total.estimate)).toBeLessThanOrEqual(
          0.0006 * cost.runs.length + 0.001,
        );
      }),
      { numRuns: 150 },
    );
  });

  it('lose exactly what the truth says where nothing is left to chance', () => {
    // Every cycle 2 s, every no-rep 2 s and 1 s of reset, an exact judge: the estimate has nothing to be wrong about.
    const plan: SetPlan = {
      set: SET,
      pad: 'a',
      wallClock: 1_780_000_000_000,
      athlete: {
        pace: { cycle: 2, fade: 0, fastStart: 0, noise: 0, autocorrelation: 0, rhythm: { share: 0, period: 10 } },
        faults: [{ fault: 'depth', rate: 0.1, fatigue: 0, hurry: 0, attempt: 1, reset: { mean: 1, deviation: 0 } }],
        breaks: { every: { mean: 20, deviation: 0 }, seconds: { mean: 8, deviation: 0 }, recovery: 0 },
        start: { mean: 3, deviation: 0 },
        pause: { chance: 0, seconds: { mean: 0, deviation: 0 } },
        metresPerJump: { mean: 0, deviation: 0 },
      },
      judge: EXACT_JUDGE,
      goal: { kind: 'reps', reps: 100 },
      usualAttempts: 100,
      markEvery: null,
      metresBack: 0,
      seed: 11,
    };
    const { events, truth } = simulateSet(plan);
    const noReps = truth.attempts.filter((attempt) => !attempt.counted).length;
    expect(noReps).toBeGreaterThan(3);
    const { ledger, cost } = setSums(foldSet(SET, events));
    expect(cost.total?.estimate).toBeCloseTo(3 * noReps, 6);
    expect(cost.repeat).toBeCloseTo(2 * noReps, 6);
    expect(ledger).toMatchObject({
      start: 5_000,
      work: 99 * 2_000,
      noRep: 3_000 * noReps,
      break: Math.round(1000 * truth.breaks),
    });
  });
});
