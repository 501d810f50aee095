import { type Axis, numberAxis, type Range } from '../../../parts/figure/axis.ts';

interface Seen {
  readonly attempts: number;
  readonly rate: { readonly value: number; readonly high: number } | null;
}

/** A bin or set with less than this share of the usual attempts says little, and its interval must not flatten the rest. */
const weighty = 0.2;

/**
 * The top of an axis of rates (0 to 1): above every value and interval that has some weight; what lies beyond is cut off
 * there and says so, and stands in the table.
 */
export function rateTop(seen: readonly Seen[], others: readonly number[]): number {
  const attempts = seen.map((item) => item.attempts).toSorted((a, b) => a - b);
  const usual = attempts[Math.floor(attempts.length / 2)] ?? 0;
  const heavy = seen.filter((item) => item.rate !== null && item.attempts >= weighty * usual);
  const tops = heavy.flatMap(({ rate }) => (rate === null ? [] : [rate.high]));
  const top = [...tops, ...others].reduce((most, value) => Math.max(most, value), 0.02);
  return Math.min(1, top);
}

export function rateAxis(top: number, range: Range, text: (value: number) => string): Axis {
  return numberAxis([0, top * 100], range, text, { fromZero: true });
}
