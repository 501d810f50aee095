import type { RandomGenerator } from '../random/generator.ts';
import { randomInteger, randomNormal } from '../random/variates.ts';

/** Fewer observed costs than this are no distribution. */
const FEWEST_COSTS = 3;
/** More observed costs than this are as good as the whole distribution; resampling them would only take time. */
const MOST_RESAMPLED = 500;

/** Seconds of a number of no-reps in one set to come. */
export type CostDraw = (noReps: number, generator: RandomGenerator) => number;

/**
 * The cost distribution, from the observed costs of no-reps, one list a set. Each draw first resamples the observed
 * costs, since they are a sample themselves, then takes one for each no-rep, and moves them all by the set's own level: the
 * variance between sets by the one-way analysis of variance (Searle, Casella & McCulloch 1992, Variance Components, 3.6).
 * Null with fewer than three costs.
 */
export function costDraws(sets: readonly (readonly number[])[]): CostDraw | null {
  const costs = sets.flat();
  const n = costs.length;
  if (n < FEWEST_COSTS) return null;
  const between = deviationBetween(sets.filter((set) => set.length > 0));
  // The centre of a resample of n costs varies by (n - 1) / n too little.
  const inflation = Math.sqrt(n / (n - 1));
  const mean = costs.reduce((sum, cost) => sum + cost, 0) / n;
  const pool = Float64Array.from(costs);
  return (noReps, generator) => {
    if (noReps === 0) return 0;
    for (let i = 0; i < n && n <= MOST_RESAMPLED; i += 1)
      pool[i] = mean + inflation * ((costs[randomInteger(generator, n)] ?? mean) - mean);
    let sum = noReps * between * randomNormal(generator);
    for (let i = 0; i < noReps; i += 1) sum += pool[randomInteger(generator, n)] ?? mean;
    // No-reps give no time back, however the draws fall.
    return Math.max(0, sum);
  };
}

/** Standard deviation between sets of the mean cost of a no-rep; 0 where sets do not differ more than no-reps do. */
function deviationBetween(sets: readonly (readonly number[])[]): number {
  const n = sets.reduce((sum, set) => sum + set.length, 0);
  const groups = sets.length;
  if (groups < 2 || n <= groups) return 0;
  const grand = sets.flat().reduce((sum, cost) => sum + cost, 0) / n;
  let within = 0;
  let among = 0;
  for (const set of sets) {
    const mean = set.reduce((sum, cost) => sum + cost, 0) / set.length;
    within += set.reduce((sum, cost) => sum + (cost - mean) ** 2, 0);
    among += set.length * (mean - grand) ** 2;
  }
  const size = (n - sets.reduce((sum, set) => sum + set.length ** 2, 0) / n) / (groups - 1);
  return Math.sqrt(Math.max(0, (among / (groups - 1) - within / (n - groups)) / size));
}
