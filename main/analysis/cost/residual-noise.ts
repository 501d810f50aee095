import { sampleQuantile } from '../distributions/sample-quantile.ts';
import type { RandomGenerator } from '../random/generator.ts';

/**
 * What to add to a residual drawn from a small pool, so that draws may fall between and a little beyond the residuals
 * seen: the smoothed bootstrap (Silverman & Young 1987, Biometrika 74:469-479). A flat kernel whose deviation is Silverman's
 * width 1.06 min(s, IQR / 1.34) n^(-1/5) (1986, Density Estimation, eq. 3.28 and 3.30). Without it the tails of a single
 * cycle's noise come out too short: 94 % of runs covered at 80 cycles and 86 % at 8, where 95 % are asked for.
 *
 * @param residuals about the fit, seconds
 */
export function kernelNoise(residuals: readonly number[]): (generator: RandomGenerator) => number {
  const n = residuals.length;
  if (n === 0) return () => 0;
  const deviation = Math.sqrt(residuals.reduce((sum, value) => sum + value * value, 0) / n);
  const quartiles = (sampleQuantile(residuals, 0.75) ?? 0) - (sampleQuantile(residuals, 0.25) ?? 0);
  const width = Math.sqrt(3) * 1.06 * Math.min(deviation, quartiles / 1.34) * n ** -0.2;
  return width > 0 ? (generator) => width * (2 * generator.uniform() - 1) : () => 0;
}
