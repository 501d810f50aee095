export type EwmaOptions = {
  /** Share of the newest value, above 0 to 1. */
  readonly weight: number;
  readonly start: number;
  readonly standardDeviation: number;
  /** Limits at this many standard deviations of the average (3). */
  readonly width?: number;
};

export type Ewma = { readonly averages: readonly number[]; readonly lower: number; readonly upper: number };

/**
 * Exponentially weighted moving average of a series (Roberts 1959, Technometrics 1:239-250), one average a value, and
 * its limits in the long run: start -/+ width * sd * sqrt(weight / (2 - weight)). No values give no averages.
 */
export function ewma(values: ArrayLike<number>, { weight, start, standardDeviation, width = 3 }: EwmaOptions): Ewma {
  const reach = width * standardDeviation * Math.sqrt(weight / (2 - weight));
  let average = start;
  const averages = Array.from(values, (value) => {
    average = weight * value + (1 - weight) * average;
    return average;
  });
  return { averages, lower: start - reach, upper: start + reach };
}
