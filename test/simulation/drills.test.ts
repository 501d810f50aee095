import { describe, expect, it } from 'vitest';
import { proveAlignment } from './align-proof.ts';
import { EYE_CASES, proveEfficiency, proveEye, timesAsMany } from './drills-proof.ts';

// A short form of `npm run simulate -- drills`: fewer runs, so the tolerance is that of their number.
const RUNS = 40;
const SLACK = 4 * Math.sqrt((0.95 * 0.05) / RUNS);

describe('drills against judges whose eye is known', () => {
  for (const one of EYE_CASES.filter((_, i) => i % 4 === 1)) {
    it(`recovers it: ${one.name}`, { timeout: 90_000 }, () => {
      const line = proveEye(one, RUNS, 40_000);
      expect(line.notTold).toBeLessThan(RUNS / 20);
      expect(Math.abs(line.strictnessBias)).toBeLessThan(0.05 + 3 * line.biasError);
      expect(Math.abs(line.precisionBias)).toBeLessThan(0.2);
      expect(line.strictnessCovered).toBeGreaterThan(0.95 - SLACK);
      expect(line.precisionCovered).toBeGreaterThan(0.95 - SLACK);
    });
  }

  it('adapting takes fewer reps than constant stimuli', { timeout: 90_000 }, () => {
    const line = proveEfficiency({ strictness: -3, precision: 1.5, lapse: 0.01 }, 40, 40, 50_000);
    expect(timesAsMany(line.even, line.adaptive).strictness).toBeGreaterThan(1.3);
    expect(timesAsMany(line.even, line.adaptive).precision).toBeGreaterThan(1.3);
  });

  it('pairs two judges’ calls of one set', () => {
    for (const [cycle, lag] of [
      [1.5, 0],
      [1.5, 0.4],
      [3, 0.7],
    ] as const) {
      expect(proveAlignment(cycle, lag, 60, 7).right).toBeGreaterThan(0.995);
    }
  });
});
