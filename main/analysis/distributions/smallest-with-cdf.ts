// The last digits of a computed cdf must not push a quantile one count too high (0.5 reached as 0.49999999999999994).
const ROUNDING = 1 - 64 * Number.EPSILON;

/**
 * Quantile of a count: the smallest k >= 0 with cdf(k) >= level, by doubling from near `guess` and then halving.
 * `cdf` must not decrease and must reach `level`; 0 <= level < 1.
 */
export function smallestWithCdf(cdf: (k: number) => number, level: number, guess: number): number {
  const wanted = level * ROUNDING;
  let below = -1;
  let reaching = Math.max(0, Math.ceil(guess));
  for (let step = 1; cdf(reaching) < wanted; step *= 2) {
    below = reaching;
    reaching += step;
  }
  while (reaching - below > 1) {
    const middle = Math.floor((below + reaching) / 2);
    if (cdf(middle) >= wanted) reaching = middle;
    else below = middle;
  }
  return reaching;
}
