import { usualBlockLength } from '../bootstrap/moving-block.ts';
import { sampleMedian } from '../distributions/sample-quantile.ts';
import type { RandomGenerator } from '../random/generator.ts';
import { randomInteger } from '../random/variates.ts';
import { interpolate } from '../smoothing/interpolate.ts';
import { prepareLowess } from '../smoothing/lowess.ts';
import { linearSmoother } from './linear-smoother.ts';
import { kernelNoise } from './residual-noise.ts';

/** How the expected clean cycle of a set was found. */
export type CostMethod = 'local-fit' | 'median' | 'history' | 'not-estimable';

/** Clean cycles of the athlete's earlier sets at the same station and load, seconds: one list a set. */
export type CycleHistory = readonly (readonly number[])[];

/** From this many clean cycles on the set's own local fit is used, below it their median. */
const FEWEST_FOR_LOCAL_FIT = 10;
/** Below this many the set's own cycles say too little, and the athlete's history is asked. */
const FEWEST_FOR_MEDIAN = 3;

/**
 * One bootstrap draw at the places asked for: `noise` is what a single clean cycle there departs from the true
 * expectation, `shift` what the estimated expectation departs from it; both in seconds. The arrays are used again.
 */
export type CycleDraw = { readonly noise: Float64Array; readonly shift: Float64Array };

/** The expected clean cycle e(x) of one set, in seconds over the attempt number x, and how uncertain it is. */
export type ExpectedCycle = {
  readonly method: CostMethod;
  readonly cleanCycles: number;
  /** Clean cycles that the robust fit gave no weight: pauses that nobody marked, mostly. */
  readonly setAside: number;
  /** Earlier sets used; 0 unless the method is `history`. */
  readonly earlierSets: number;
  /** Degrees of freedom behind the noise; infinite where it counts as known. */
  readonly degrees: number;
  /** Null when not estimable. */
  readonly at: (attempt: number) => number | null;
  /** Prepares draws at the given attempt numbers, rising and distinct. */
  readonly drawsAt: (places: readonly number[]) => (generator: RandomGenerator) => CycleDraw;
};

export type CleanCycle = { readonly number: number; readonly seconds: number };

/**
 * The expected clean cycle over a set: LOWESS (Cleveland 1979) of its clean cycles over the attempt number, span 2/3;
 * from 3 to 9 of them their median; with fewer than 3 the median of the medians of the athlete's earlier sets; else
 * `not-estimable`.
 *
 * @param clean the set's clean cycles, rising by attempt number
 */
export function expectedCycle(clean: readonly CleanCycle[], history: CycleHistory = []): ExpectedCycle {
  if (clean.length >= FEWEST_FOR_LOCAL_FIT) return localFit(clean);
  if (clean.length >= FEWEST_FOR_MEDIAN) return medianOf(clean);
  const sets = history.filter((cycles) => cycles.length > 0);
  return sets.length > 0 ? fromHistory(sets, clean.length) : notEstimable(clean.length);
}

function localFit(clean: readonly CleanCycle[]): ExpectedCycle {
  const numbers = clean.map((cycle) => cycle.number);
  const seconds = clean.map((cycle) => cycle.seconds);
  const smoother = prepareLowess(numbers);
  if (!smoother.ok) return medianOf(clean);
  const fitted = smoother.value(seconds);
  const sizes = seconds.map((value, i) => Math.abs(value - (fitted[i] ?? 0)));
  // Cleveland's bisquare weight is 0 beyond six times the median residual.
  const limit = 6 * (sampleMedian(sizes) ?? 0);
  const kept = clean.flatMap((_, i) => (limit === 0 || (sizes[i] ?? 0) < limit ? [i] : []));
  const linear = linearSmoother(kept.map((i) => numbers[i] ?? 0));
  if (linear === null) return medianOf(clean);
  const raw = kept.map((i) => (seconds[i] ?? 0) - (fitted[i] ?? 0));
  const residuals = raw.map((value, i) => value * linear.residualInflation(i));
  return {
    method: 'local-fit',
    cleanCycles: clean.length,
    setAside: clean.length - kept.length,
    earlierSets: 0,
    degrees: Math.max(1, kept.length - linear.degrees),
    at: (attempt) => interpolate(numbers, fitted, attempt) ?? null,
    drawsAt: (places) =>
      blockDraws(
        kept.map((i) => numbers[i] ?? 0),
        residuals,
        places,
        linear.prepare(places),
      ),
  };
}

/**
 * Draws of the noise in moving blocks along the set, over the clean cycles and the places asked for together, so that
 * noise which hangs together over neighbours does so between a no-rep and the cycles around it too.
 */
function blockDraws(
  numbers: readonly number[],
  residuals: readonly number[],
  places: readonly number[],
  smoothAt: (values: Float64Array) => Float64Array,
): (generator: RandomGenerator) => CycleDraw {
  const order = [
    ...numbers.map((number, index) => ({ number, index, isPlace: false })),
    ...places.map((number, index) => ({ number, index, isPlace: true })),
  ].sort((one, other) => one.number - other.number);
  const block = Math.min(usualBlockLength(residuals.length), residuals.length);
  const kernel = kernelNoise(residuals);
  const own = new Float64Array(numbers.length);
  const noise = new Float64Array(places.length);
  return (generator) => {
    let from = 0;
    for (let i = 0; i < order.length; i += 1) {
      if (i % block === 0) from = randomInteger(generator, residuals.length - block + 1);
      const item = order[i];
      if (item === undefined) continue;
      (item.isPlace ? noise : own)[item.index] = (residuals[from + (i % block)] ?? 0) + kernel(generator);
    }
    return { noise, shift: smoothAt(own) };
  };
}

function medianOf(clean: readonly CleanCycle[]): ExpectedCycle {
  const seconds = clean.map((cycle) => cycle.seconds);
  const median = sampleMedian(seconds) ?? 0;
  const n = seconds.length;
  // The spread about a fitted centre is too small by (n - 1) / n.
  const inflation = Math.sqrt(n / (n - 1));
  const residuals = seconds.map((value) => (value - median) * inflation);
  const kernel = kernelNoise(residuals);
  const own = new Float64Array(n);
  return {
    method: 'median',
    cleanCycles: n,
    setAside: 0,
    earlierSets: 0,
    degrees: n - 1,
    at: () => median,
    drawsAt: (places) => {
      const noise = new Float64Array(places.length);
      const shift = new Float64Array(places.length);
      return (generator) => {
        const next = () => (residuals[randomInteger(generator, n)] ?? 0) + kernel(generator);
        for (let i = 0; i < n; i += 1) own[i] = next();
        for (let i = 0; i < noise.length; i += 1) noise[i] = next();
        shift.fill(sampleMedian(own) ?? 0);
        return { noise, shift };
      };
    },
  };
}

/** Each draw takes one earlier set's level and its own scatter: sets differ among themselves more than cycles do. */
function fromHistory(sets: CycleHistory, cleanCycles: number): ExpectedCycle {
  const levels = sets.map((cycles) => sampleMedian(cycles) ?? 0);
  const level = sampleMedian(levels) ?? 0;
  const m = sets.length;
  // Variance of a new set's level about the centre of m: (1 + 1/m), and m / (m - 1) for the fitted centre.
  const inflation = m > 1 ? Math.sqrt((m + 1) / (m - 1)) : 1;
  return {
    method: 'history',
    cleanCycles,
    setAside: 0,
    earlierSets: m,
    degrees: m > 1 ? m - 1 : Number.POSITIVE_INFINITY,
    at: () => level,
    drawsAt: (places) => {
      const noise = new Float64Array(places.length);
      const shift = new Float64Array(places.length);
      return (generator) => {
        const set = randomInteger(generator, m);
        const cycles = sets[set] ?? [];
        const own = levels[set] ?? level;
        for (let i = 0; i < noise.length; i += 1) {
          noise[i] = (own - level) * inflation + ((cycles[randomInteger(generator, cycles.length)] ?? own) - own);
        }
        return { noise, shift };
      };
    },
  };
}

function notEstimable(cleanCycles: number): ExpectedCycle {
  return {
    method: 'not-estimable',
    cleanCycles,
    setAside: 0,
    earlierSets: 0,
    degrees: 0,
    at: () => null,
    drawsAt: (places) => () => ({ noise: new Float64Array(places.length), shift: new Float64Array(places.length) }),
  };
}
