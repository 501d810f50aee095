import { type Belief, type EyeGrid, noRepChance } from './eye.ts';

/**
 * The margin to show next: the one after whose call the judge's strictness and precision will be known best on average, that
 * is with the least expected entropy (Kontsevich & Tyler 1999, Vision Research 39:2729-2737; the lapses are summed out first:
 * Prins 2013, Journal of Vision 13(7):3).
 * @param margins the margins that can be shown, counted from the tolerance
 */
export function mostTellingMargin(grid: EyeGrid, belief: Belief, margins: readonly number[]): number {
  let best = { margin: margins[0] ?? 0, entropy: Number.POSITIVE_INFINITY };
  for (const margin of margins) {
    const entropy = expectedEntropy(grid, belief, margin);
    if (entropy < best.entropy) best = { margin, entropy };
  }
  return best.margin;
}

function expectedEntropy(grid: EyeGrid, belief: Belief, margin: number): number {
  const lapses = grid.lapse.length;
  let at = 0;
  let [calledAll, passedAll, calledLogs, passedLogs] = [0, 0, 0, 0];
  for (const strictness of grid.strictness) {
    for (const precision of grid.precision) {
      const seen = noRepChance({ strictness, precision, lapse: 0 }, margin);
      let [called, passed] = [0, 0];
      for (let i = 0; i < lapses; i += 1) {
        const lapse = grid.lapse[i] ?? 0;
        const chance = lapse + (1 - 2 * lapse) * seen;
        const weight = belief[at] ?? 0;
        called += weight * chance;
        passed += weight * (1 - chance);
        at += 1;
      }
      calledAll += called;
      passedAll += passed;
      if (called > 0) calledLogs += called * Math.log(called);
      if (passed > 0) passedLogs += passed * Math.log(passed);
    }
  }
  // p * H after a no-rep and after a counted rep, each from the unnormalised weights.
  const part = (all: number, logs: number) => (all > 0 ? all * Math.log(all) - logs : 0);
  return part(calledAll, calledLogs) + part(passedAll, passedLogs);
}
