/**
 * Value of a curve at any place: straight lines between its points, and the end values beyond them.
 *
 * @param x rising or equal values; the first of equal ones counts
 * @param y the curve at each x
 * @returns undefined for an empty curve
 */
export function interpolate(x: ArrayLike<number>, y: ArrayLike<number>, at: number): number | undefined {
  let low = 0;
  let high = x.length - 1;
  if (high < 0) return undefined;
  if (at <= (x[0] ?? 0)) return y[0];
  if (at >= (x[high] ?? 0)) return y[high];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((x[middle] ?? 0) < at) low = middle;
    else high = middle;
  }
  const start = x[low] ?? 0;
  const share = (at - start) / ((x[high] ?? 0) - start);
  return (1 - share) * (y[low] ?? 0) + share * (y[high] ?? 0);
}
