export type CusumOptions = {
  /** Value the process should have. */
  readonly target: number;
  /** Allowance: half the shift worth finding; same unit as the values. */
  readonly slack: number;
  /** Decision limit on the sums. */
  readonly limit: number;
};

export type Cusum = {
  readonly upper: readonly number[];
  readonly lower: readonly number[];
  /** Position of the first value at which a sum passes the limit. */
  readonly firstSignal: number | undefined;
};

/**
 * Tabular cumulative sums on both sides of a target (Page 1954, Biometrika 41:100-115), for a slow drift such as a
 * judge's over a session: `upper` adds what each value lies above target + slack, `lower` below target - slack, neither
 * falling under 0. No values give empty sums and no signal.
 */
export function cusum(values: ArrayLike<number>, { target, slack, limit }: CusumOptions): Cusum {
  const upper: number[] = [];
  const lower: number[] = [];
  let high = 0;
  let low = 0;
  for (const value of Array.from(values)) {
    high = Math.max(0, high + (value - target) - slack);
    low = Math.max(0, low + (target - value) - slack);
    upper.push(high);
    lower.push(low);
  }
  const first = upper.findIndex((sum, i) => sum > limit || (lower[i] ?? 0) > limit);
  return { upper, lower, firstSignal: first < 0 ? undefined : first };
}
