import { type Computed, computed, failed } from '../result.ts';

/** One sample of a chart of proportions: its own limits, and whether it lies outside them. */
export type ChartPoint = {
  readonly proportion: number;
  readonly lower: number;
  readonly upper: number;
  readonly outside: boolean;
};

export type ProportionChart = {
  /** Pooled proportion: the centre line. */
  readonly centre: number;
  /** Laney's sigma z: how much wider than binomial the samples spread from one to the next; 1 on a plain p-chart. */
  readonly sigmaZ: number;
  readonly points: readonly ChartPoint[];
};

/** Expected range of two standard normal values is 2 / sqrt(pi) = 1.128 standard deviations (d2 of control charts). */
const MEAN_MOVING_RANGE = 1.128;

/**
 * Control chart of proportions with limits at 3 standard errors (Shewhart 1931; p-chart), samples of `counts[i]` of
 * `totals[i]`, cut off at 0 and 1. A sample of nothing is refused.
 * Errors: `no-data`, `one-category` when nothing or everything is a success, `invalid-input`.
 */
export function pChart(counts: ArrayLike<number>, totals: ArrayLike<number>): Computed<ProportionChart> {
  const samples = checkedSamples(counts, totals);
  return samples.ok ? computed(chart(samples.value, 1)) : samples;
}

/**
 * The same with Laney's correction for over- or under-dispersion (Laney 2002, Quality Engineering 14:531-537, p'-chart):
 * the limits are times sigma z, the mean moving range of the standardised proportions over 1.128.
 * Errors: as `pChart`, and `too-few-data` below two samples.
 */
export function laneyChart(counts: ArrayLike<number>, totals: ArrayLike<number>): Computed<ProportionChart> {
  const samples = checkedSamples(counts, totals);
  if (!samples.ok) return samples;
  const { count, total } = samples.value;
  if (count.length < 2) return failed('too-few-data', 'The spread from sample to sample needs at least two of them.');
  const centre = pooled(samples.value);
  const standardised = count.map((value, i) => {
    const size = total[i] ?? 1;
    return (value / size - centre) / Math.sqrt((centre * (1 - centre)) / size);
  });
  let ranges = 0;
  for (let i = 1; i < standardised.length; i += 1)
    ranges += Math.abs((standardised[i] ?? 0) - (standardised[i - 1] ?? 0));
  return computed(chart(samples.value, ranges / (standardised.length - 1) / MEAN_MOVING_RANGE));
}

type Samples = { readonly count: readonly number[]; readonly total: readonly number[] };

function checkedSamples(counts: ArrayLike<number>, totals: ArrayLike<number>): Computed<Samples> {
  const count = Array.from(counts);
  const total = Array.from(totals);
  const sound = count.every((value, i) => {
    const size = total[i] ?? 0;
    return Number.isSafeInteger(value) && Number.isSafeInteger(size) && size > 0 && value >= 0 && value <= size;
  });
  if (count.length !== total.length || !sound) {
    return failed('invalid-input', 'Each sample needs a whole count out of a whole total above 0.');
  }
  if (count.length === 0) return failed('no-data', 'There are no samples.');
  const centre = pooled({ count, total });
  if (centre === 0 || centre === 1) return failed('one-category', 'Every trial ended alike, so there are no limits.');
  return computed({ count, total });
}

function pooled({ count, total }: Samples): number {
  const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
  return sum(count) / sum(total);
}

function chart(samples: Samples, sigmaZ: number): ProportionChart {
  const centre = pooled(samples);
  const points = samples.count.map((count, i) => {
    const size = samples.total[i] ?? 1;
    const reach = 3 * sigmaZ * Math.sqrt((centre * (1 - centre)) / size);
    const proportion = count / size;
    const outside = proportion > centre + reach || proportion < centre - reach;
    return { proportion, lower: Math.max(0, centre - reach), upper: Math.min(1, centre + reach), outside };
  });
  return { centre, sigmaZ, points };
}
