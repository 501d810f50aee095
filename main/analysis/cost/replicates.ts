import { percentileInterval } from '../bootstrap/percentile-interval.ts';
import { studentTQuantile } from '../distributions/student-t.ts';
import { type EstimateWithInterval, twoSidedDeviate } from '../interval.ts';
import { seededGenerator } from '../random/generator.ts';
import type { ExpectedCycle } from './expected-cycle.ts';
import type { RunTerms } from './run-terms.ts';

/** A weighted run of a sum: a set's total has weight 1 for each. */
export type RunPart = { readonly run: number; readonly weight: number };

/** For each run, what its true cost may depart from its estimate in each resample, seconds. */
export type Replicates = readonly Float64Array[];

/**
 * Bootstrap of the runs' costs: in each resample the clean cycles and the rep that each run held up draw their noise anew
 * (see `ExpectedCycle.drawsAt`), so that both the fitted curve and the single cycle it stands for vary. All runs of a
 * resample share one draw; sums over runs keep their dependence.
 */
export function replicateRuns(
  runs: readonly RunTerms[],
  expected: ExpectedCycle,
  { level, resamples, seed }: { level: number; resamples: number; seed: number },
): Replicates {
  const places = [...new Set(runs.flatMap((run) => run.terms.map((term) => term.place)))].sort((a, b) => a - b);
  const indexOf = new Map(places.map((place, index) => [place, index]));
  const terms = runs.map((run) => run.terms.map((term) => ({ ...term, index: indexOf.get(term.place) ?? 0 })));
  const draw = expected.drawsAt(places);
  const generator = seededGenerator(seed);
  const stretch = smallSampleStretch(expected.degrees, level);
  const replicates = runs.map(() => new Float64Array(resamples));
  for (let b = 0; b < resamples; b += 1) {
    const { noise, shift } = draw(generator);
    for (let r = 0; r < terms.length; r += 1) {
      let sum = 0;
      for (const term of terms[r] ?? []) {
        sum += term.noise * (noise[term.index] ?? 0) - term.expected * (shift[term.index] ?? 0);
      }
      const row = replicates[r];
      if (row !== undefined) row[b] = stretch * sum;
    }
  }
  return replicates;
}

/** A percentile interval of n - p residuals is too narrow by about Student's t over the normal deviate. */
function smallSampleStretch(degrees: number, level: number): number {
  if (!Number.isFinite(degrees)) return 1;
  return studentTQuantile((1 + level) / 2, Math.max(1, degrees)) / twoSidedDeviate(level);
}

/** The estimate with the percentile interval of a weighted sum over runs. */
export function intervalAround(
  estimate: number,
  replicates: Replicates,
  parts: readonly RunPart[],
  level: number,
): EstimateWithInterval {
  const sums = new Float64Array(replicates[0]?.length ?? 1);
  for (const { run, weight } of parts) {
    const row = replicates[run];
    for (let b = 0; row !== undefined && b < sums.length; b += 1) sums[b] = (sums[b] ?? 0) + weight * (row[b] ?? 0);
  }
  const interval = percentileInterval(sums, level);
  if (!interval.ok) return { estimate, lower: estimate, upper: estimate, level };
  return { estimate, lower: estimate + interval.value.lower, upper: estimate + interval.value.upper, level };
}
