/**
 * Sample quantile of type 7 (Hyndman & Fan 1996, The American Statistician 50:361-365): linear between order
 * statistics, the default of R and of spreadsheets.
 *
 * @param sorted rising values, at least one
 * @param probability 0 to 1
 * @returns undefined for an empty sample
 */
export function sortedQuantile(sorted: ArrayLike<number>, probability: number): number | undefined {
  const position = (sorted.length - 1) * probability;
  const below = Math.floor(position);
  const low = sorted[below];
  if (low === undefined) return undefined;
  const high = sorted[below + 1] ?? low;
  return low + (position - below) * (high - low);
}

/** As `sortedQuantile` for values in any order; they are left as they are. */
export function sampleQuantile(values: ArrayLike<number>, probability: number): number | undefined {
  return sortedQuantile(Float64Array.from(values).sort(), probability);
}

/** Middle value, or the mean of the two middle ones; undefined for an empty sample. */
export function sampleMedian(values: ArrayLike<number>): number | undefined {
  return sampleQuantile(values, 0.5);
}
