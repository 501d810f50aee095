/** Series longer than this, or with ties, use the normal approximation. */
const LONGEST_EXACT = 50;

const tailsByLength = new Map<number, Float64Array>();

/**
 * Exact distribution of Kendall's S under no trend and no ties, as P(at least i discordant pairs fewer than all):
 * element i is P(S >= n(n - 1)/2 - 2i). Counts permutations by inversions (Kendall 1938, Biometrika 30:81-93).
 */
function upperTails(n: number): Float64Array {
  const known = tailsByLength.get(n);
  if (known) return known;
  let chances = Float64Array.of(1);
  for (let size = 2; size <= n; size += 1) {
    const next = new Float64Array(chances.length + size - 1);
    for (let moved = 0; moved < size; moved += 1) {
      for (let i = 0; i < chances.length; i += 1) next[moved + i] = (next[moved + i] ?? 0) + (chances[i] ?? 0) / size;
    }
    chances = next;
  }
  let sum = 0;
  const tails = chances.map((chance) => {
    sum += chance;
    return sum;
  });
  tailsByLength.set(n, tails);
  return tails;
}

/** P(S >= s) for a series of `n` different values in random order; undefined for n too long to count exactly. */
export function kendallUpperTail(n: number, s: number): number | undefined {
  if (n > LONGEST_EXACT) return undefined;
  const pairs = (n * (n - 1)) / 2;
  if (s > pairs) return 0;
  if (s <= -pairs) return 1;
  return upperTails(n)[Math.floor((pairs - s) / 2)] ?? 1;
}

/** Variance of S with ties in the values and, if any, in the times (Kendall 1970, Rank Correlation Methods, ch. 4). */
export function kendallVariance(
  values: ArrayLike<number>,
  times: ArrayLike<number>,
): { variance: number; ties: boolean } {
  const n = values.length;
  const inValues = tieSizes(values);
  const inTimes = tieSizes(times);
  const term = (sizes: readonly number[], f: (t: number) => number) => sizes.reduce((sum, t) => sum + f(t), 0);
  const cubic = (t: number) => t * (t - 1) * (2 * t + 5);
  const triple = (t: number) => t * (t - 1) * (t - 2);
  const double = (t: number) => t * (t - 1);
  let variance = (cubic(n) - term(inValues, cubic) - term(inTimes, cubic)) / 18;
  if (n > 2) variance += (term(inValues, triple) * term(inTimes, triple)) / (9 * triple(n));
  if (n > 1) variance += (term(inValues, double) * term(inTimes, double)) / (2 * double(n));
  return { variance, ties: inValues.length > 0 || inTimes.length > 0 };
}

/** Sizes, above 1, of the groups of equal values. */
function tieSizes(values: ArrayLike<number>): number[] {
  const counts = new Map<number, number>();
  for (const value of Array.from(values)) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].filter((count) => count > 1);
}
