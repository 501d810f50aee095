import { describe, expect, it } from 'vitest';
import { foldSet } from '../../shared-types/log/fold.ts';
import { proofSet, proveCost, RATES, SCENARIOS } from './cost-proof.ts';

// A short form of `npm run simulate`: fewer sets, so the tolerance is that of their number. Four standard errors of a
// coverage of 95 % over 160 sets are 6.9 points.
const SETS = 160;
const SLACK = 4 * Math.sqrt((0.95 * 0.05) / SETS);

describe('cost of no-reps against known truths', { timeout: 60_000 }, () => {
  for (const scenario of SCENARIOS) {
    for (const rate of [RATES[1], RATES[3]]) {
      it(`is unbiased and covers: ${scenario.name}, ${100 * rate} % no-reps`, () => {
        const line = proveCost(scenario, rate, SETS, 70_000, 199);
        expect(line.notEstimable).toBe(0);
        expect(Math.abs(line.bias)).toBeLessThan(0.02);
        expect(line.coverage).toBeGreaterThan(0.95 - SLACK);
        // An interval that always covers tells nothing.
        expect(line.coverage).toBeLessThanOrEqual(0.95 + SLACK);
        expect(line.width).toBeLessThan(line.meanTruth);
      });
    }
  }

  it('folds every simulated log without a clash, and counts what the truth counts', () => {
    for (const scenario of SCENARIOS) {
      const { events, truth } = proofSet(scenario, 0.15, 5);
      const state = foldSet(events[0]?.set ?? '', events);
      expect(state.clashes).toEqual([]);
      const standing = state.attempts.filter((attempt) => !attempt.withdrawn);
      expect(standing.map((attempt) => attempt.verdict !== 'no-rep')).toEqual(truth.attempts.map((one) => one.counted));
    }
  });
});
