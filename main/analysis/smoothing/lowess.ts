import { sampleMedian } from '../distributions/sample-quantile.ts';
import { type Computed, computed, failed } from '../result.ts';

export type LowessOptions = {
  /** Share of the points in each local fit, above 0 to 1 (2/3 unless told otherwise). */
  readonly span?: number;
  /** Robust iterations after the first fit (3). */
  readonly iterations?: number;
  /** Points closer than this to the last one fitted are interpolated; in units of x (1 % of the range of x; 0 fits all). */
  readonly delta?: number;
};

/** Smooths any y over the x it was prepared for: finite values, as many as x; gives as many fitted values. */
export type LowessSmoother = (y: ArrayLike<number>) => Float64Array;

/** A place where a local line is fitted: the tricube weights of the points from `from` on. */
type LocalFit = { readonly at: number; readonly from: number; readonly weights: Float64Array };

/** Kept weights above this many are worth less than their memory and are computed anew each time. */
const MOST_KEPT_WEIGHTS = 4_000_000;

/**
 * Robust locally weighted regression, local lines with tricube weights and bisquare robustness weights (Cleveland 1979,
 * JASA 74:829-836; the details of span, delta and ties as in his 1981 program LOWESS, which R's lowess follows).
 * Preparing takes what depends on x alone out of the repeated fits of a bootstrap.
 *
 * @param x rising or equal values, finite, at least one
 */
export function prepareLowess(x: ArrayLike<number>, options: LowessOptions = {}): Computed<LowessSmoother> {
  const { span = 2 / 3, iterations = 3 } = options;
  const points = Float64Array.from(x);
  const n = points.length;
  const first = points[0];
  const last = points[n - 1];
  if (first === undefined || last === undefined) return failed('no-data', 'There are no points to smooth.');
  if (!points.every((value, i) => Number.isFinite(value) && value >= (points[i - 1] ?? value))) {
    return failed('invalid-input', 'The x values must be finite and must not fall.');
  }
  const delta = options.delta ?? (last - first) / 100;
  if (!(span > 0 && span <= 1) || !(iterations >= 0) || !(delta >= 0)) {
    return failed('invalid-input', 'The span must lie above 0 and up to 1; iterations and delta must not be negative.');
  }
  const neighbours = Math.max(2, Math.min(n, Math.floor(span * n + 1e-7)));
  const bare = placesToFit(points, Math.min(neighbours, n), delta);
  const keep = bare.length * neighbours <= MOST_KEPT_WEIGHTS;
  const places = keep ? bare.map((place) => localWeights(points, place)) : bare;
  const range = last - first;

  const fitAll = (y: ArrayLike<number>, robustness: Float64Array, fitted: Float64Array) => {
    let before = -1;
    for (const place of places) {
      const local = 'weights' in place ? place : localWeights(points, place);
      const at = local.at;
      fitted[at] = fitLocalLine(points, y, local, robustness, range) ?? y[at] ?? 0;
      fillBetween(points, fitted, before, at);
      before = at;
    }
    // Points equal to the last one fitted share its value.
    for (let i = before + 1; i < n; i += 1) fitted[i] = fitted[before] ?? 0;
  };

  return computed((y) => {
    const fitted = new Float64Array(n);
    const sizes = new Float64Array(n);
    const robustness = new Float64Array(n).fill(1);
    fitAll(y, robustness, fitted);
    let largest = 0;
    for (let i = 0; i < n; i += 1) largest = Math.max(largest, Math.abs(y[i] ?? 0));
    for (let iteration = 0; iteration < iterations; iteration += 1) {
      let meanSize = 0;
      for (let i = 0; i < n; i += 1) {
        const size = Math.abs((y[i] ?? 0) - (fitted[i] ?? 0));
        sizes[i] = size;
        meanSize += size / n;
      }
      const sixMedians = 6 * (sampleMedian(sizes) ?? 0);
      // More than half the points are fitted exactly, or to rounding: there is no scale to judge the others by.
      if (sixMedians < 1e-7 * meanSize || sixMedians <= 1e-12 * largest) break;
      for (let i = 0; i < n; i += 1) robustness[i] = bisquare(sizes[i] ?? 0, sixMedians);
      fitAll(y, robustness, fitted);
    }
    return fitted;
  });
}

/**
 * Smooths y over x in one go: see `prepareLowess`. Gives the fitted values in the order of x. One point, or all x equal,
 * gives the (robust) mean. Errors: `no-data` for no points, `invalid-input` for unordered x, unequal lengths or
 * values that are not finite.
 */
export function lowess(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  options: LowessOptions = {},
): Computed<Float64Array> {
  if (x.length !== y.length || !Array.from(y).every(Number.isFinite)) {
    return failed('invalid-input', 'There must be one finite y for each x.');
  }
  const smoother = prepareLowess(x, options);
  return smoother.ok ? computed(smoother.value(y)) : smoother;
}

type Place = { readonly at: number; readonly from: number; readonly to: number };

/** Which points get a local fit of their own and which neighbours (from..to) it uses. */
function placesToFit(x: Float64Array, neighbours: number, delta: number): Place[] {
  const n = x.length;
  const value = (i: number) => x[i] ?? Number.POSITIVE_INFINITY;
  const places: Place[] = [];
  let from = 0;
  let to = neighbours - 1;
  let last = -1;
  for (let at = 0; last < n - 1; ) {
    while (to < n - 1 && value(at) - value(from) > value(to + 1) - value(at)) {
      from += 1;
      to += 1;
    }
    places.push({ at, from, to });
    last = at;
    const cut = value(at) + delta;
    let next = at + 1;
    for (; next < n && value(next) <= cut; next += 1) {
      if (value(next) === value(last)) last = next;
    }
    at = Math.max(last + 1, next - 1);
  }
  return places;
}

function localWeights(x: Float64Array, { at, from, to }: Place): LocalFit {
  const centre = x[at] ?? 0;
  const reach = Math.max(centre - (x[from] ?? 0), (x[to] ?? 0) - centre);
  const weights: number[] = [];
  for (let j = from; j < x.length; j += 1) {
    const distance = Math.abs((x[j] ?? 0) - centre);
    if (distance <= 0.999 * reach) {
      weights.push(distance <= 0.001 * reach ? 1 : (1 - (distance / reach) ** 3) ** 3);
    } else if ((x[j] ?? 0) > centre) break;
    else weights.push(0);
  }
  return { at, from, weights: Float64Array.from(weights) };
}

/** Value at the place of the weighted line through its neighbours; undefined when no weight is left. */
function fitLocalLine(
  x: Float64Array,
  y: ArrayLike<number>,
  { at, from, weights }: LocalFit,
  robustness: Float64Array,
  range: number,
): number | undefined {
  const centre = x[at] ?? 0;
  let sum = 0;
  let sumX = 0;
  let sumY = 0;
  let sumXX = 0;
  let sumXY = 0;
  // x is counted from the place itself, so that the one pass loses no digits.
  for (let k = 0; k < weights.length; k += 1) {
    const weight = (weights[k] ?? 0) * (robustness[from + k] ?? 0);
    const offset = (x[from + k] ?? 0) - centre;
    const value = y[from + k] ?? 0;
    const weightedOffset = weight * offset;
    sum += weight;
    sumX += weightedOffset;
    sumY += weight * value;
    sumXX += weightedOffset * offset;
    sumXY += weightedOffset * value;
  }
  if (sum <= 0) return undefined;
  const meanX = sumX / sum;
  const meanY = sumY / sum;
  const variance = sumXX / sum - meanX * meanX;
  // Neighbours that all but coincide carry no slope.
  if (variance <= (0.001 * range) ** 2) return meanY;
  return meanY - ((sumXY / sum - meanX * meanY) / variance) * meanX;
}

function bisquare(size: number, limit: number): number {
  if (size <= 0.001 * limit) return 1;
  return size > 0.999 * limit ? 0 : (1 - (size / limit) ** 2) ** 2;
}

/** Straight line from the last fitted point to this one; equal x take the earlier value. */
function fillBetween(x: Float64Array, fitted: Float64Array, before: number, at: number): void {
  if (before < 0) return;
  const start = x[before] ?? 0;
  const width = (x[at] ?? 0) - start;
  for (let i = before + 1; i < at; i += 1) {
    const share = ((x[i] ?? 0) - start) / width;
    fitted[i] = share * (fitted[at] ?? 0) + (1 - share) * (fitted[before] ?? 0);
  }
}
