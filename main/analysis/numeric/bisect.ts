/**
 * Where a function changes sign between `low` and `high`, by halving until the two ends are neighbours in floating
 * point. `f(low)` and `f(high)` must differ in sign (the caller knows that they do); with a flat stretch of zeros any
 * of its points may be given.
 */
export function bisect(f: (x: number) => number, low: number, high: number): number {
  let left = low;
  let right = high;
  const rising = f(left) < 0;
  for (let step = 0; step < 1100; step += 1) {
    const middle = left + (right - left) / 2;
    if (middle === left || middle === right) break;
    if (f(middle) < 0 === rising) left = middle;
    else right = middle;
  }
  return left + (right - left) / 2;
}
