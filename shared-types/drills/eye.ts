import { normalCdf } from './normal.ts';

/**
 * A judge's eye for one fault: what they see is the margin plus normal noise of `precision`, and they call a no-rep when that
 * lies below `strictness`; `lapse` is the share of calls that are wrong whatever the margin. Margins count from the sheet's
 * tolerance: below 0 the rep is a no-rep. Strictness below 0 lets faults of that size through, above 0 takes good reps away.
 */
export interface Eye {
  readonly strictness: number;
  readonly precision: number;
  readonly lapse: number;
}

/** Chance that this eye calls a rep of this margin a no-rep. */
export function noRepChance({ strictness, precision, lapse }: Eye, margin: number): number {
  return lapse + (1 - 2 * lapse) * normalCdf((strictness - margin) / precision);
}

/** What one call says: the margin (from the tolerance) and whether it was called a no-rep for this fault. */
export interface Answer {
  readonly margin: number;
  readonly noRep: boolean;
  /** How many calls like this; 1 unless given. */
  readonly count?: number;
}

/** Every eye that is thought of: each strictness with each precision and each lapse. */
export interface EyeGrid {
  readonly strictness: readonly number[];
  readonly precision: readonly number[];
  readonly lapse: readonly number[];
}

/** Chances of the lapses before any call; our own choice, rare ones likelier. */
const LAPSES: readonly (readonly [lapse: number, weight: number])[] = [
  [0, 0.5],
  [0.02, 0.35],
  [0.05, 0.15],
];

/**
 * A grid for a fault whose margins can be shown from `low` to `high`: strictness a quarter of that span beyond both ends,
 * precision from a hundredth to the whole of it, in equal steps of its logarithm.
 */
export function eyeGrid(low: number, high: number): EyeGrid {
  const span = high - low;
  const even = (from: number, to: number, count: number) =>
    Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
  return {
    strictness: even(low - span / 4, high + span / 4, 49),
    precision: even(Math.log(span / 100), Math.log(span), 25).map(Math.exp),
    lapse: LAPSES.map(([lapse]) => lapse),
  };
}

/** Weights of a grid's eyes, adding up to 1, in the order strictness, precision, lapse (the last runs quickest). */
export type Belief = Float64Array;

/** What is thought before the first call: every strictness and every size of precision alike. */
export function openBelief(grid: EyeGrid): Belief {
  const places = grid.strictness.length * grid.precision.length;
  const belief = new Float64Array(places * grid.lapse.length);
  for (let i = 0; i < belief.length; i += 1) belief[i] = (LAPSES[i % LAPSES.length]?.[1] ?? 0) / places;
  return belief;
}

/** What is thought after further calls (Bayes' rule, each call on its own). */
export function learn(grid: EyeGrid, belief: Belief, answers: readonly Answer[]): Belief {
  const next = Float64Array.from(belief);
  for (const { margin, noRep, count = 1 } of answers) {
    let at = 0;
    let sum = 0;
    for (const strictness of grid.strictness) {
      for (const precision of grid.precision) {
        const seen = normalCdf((strictness - margin) / precision);
        for (const lapse of grid.lapse) {
          const called = lapse + (1 - 2 * lapse) * seen;
          const chance = noRep ? called : 1 - called;
          const weight = (next[at] ?? 0) * (count === 1 ? chance : chance ** count);
          next[at] = weight;
          sum += weight;
          at += 1;
        }
      }
    }
    if (sum > 0) for (let i = 0; i < next.length; i += 1) next[i] = (next[i] ?? 0) / sum;
  }
  return next;
}

/** Middle and 95 % limits of what is thought of one quantity. */
export interface Reading {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface EyeReadings {
  readonly strictness: Reading;
  readonly precision: Reading;
}

/** Median and equal-tailed limits of strictness and precision, between the grid's places by straight lines. */
export function readBelief(grid: EyeGrid, belief: Belief, level = 0.95): EyeReadings {
  const { strictness, precision, lapse } = grid;
  const byStrictness = new Float64Array(strictness.length);
  const byPrecision = new Float64Array(precision.length);
  for (let i = 0; i < belief.length; i += 1) {
    const cell = Math.floor(i / lapse.length);
    const row = Math.floor(cell / precision.length);
    const column = cell % precision.length;
    byStrictness[row] = (byStrictness[row] ?? 0) + (belief[i] ?? 0);
    byPrecision[column] = (byPrecision[column] ?? 0) + (belief[i] ?? 0);
  }
  const logs = precision.map(Math.log);
  const read = (places: readonly number[], weights: Float64Array): Reading => ({
    value: quantile(places, weights, 0.5),
    low: quantile(places, weights, (1 - level) / 2),
    high: quantile(places, weights, (1 + level) / 2),
  });
  const size = read(logs, byPrecision);
  return {
    strictness: read(strictness, byStrictness),
    precision: { value: Math.exp(size.value), low: Math.exp(size.low), high: Math.exp(size.high) },
  };
}

/** Each place's weight is spread evenly over the step around it. */
function quantile(places: readonly number[], weights: Float64Array, share: number): number {
  const step = (places[1] ?? 0) - (places[0] ?? 0);
  let sum = 0;
  for (const [i, place] of places.entries()) {
    const weight = weights[i] ?? 0;
    if (sum + weight >= share && weight > 0) return place - step / 2 + (step * (share - sum)) / weight;
    sum += weight;
  }
  return places.at(-1) ?? 0;
}
