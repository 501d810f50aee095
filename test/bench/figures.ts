/** The p-th percentile of some times, 0 to 100, by nearest rank. */
export function percentile(times: readonly number[], p: number): number {
  const sorted = times.toSorted((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil((p / 100) * sorted.length) - 1))] ?? 0;
}

export interface Measured {
  readonly what: string;
  /** Milliseconds. */
  readonly times: readonly number[];
}

/** One line: p50 and p99 of a measurement and of its reference in the same run, and their ratios. */
export function compare(measured: Measured, reference: Measured): string[] {
  const cells = [50, 99].map((p) => {
    const own = percentile(measured.times, p);
    const other = percentile(reference.times, p);
    return `p${p} ${own.toFixed(3)} ms against ${other.toFixed(3)} ms, ratio ${(own / other).toFixed(2)}`;
  });
  return [
    `${measured.what} (${measured.times.length}) against ${reference.what} (${reference.times.length})`,
    ...cells.map((cell) => `    ${cell}`),
  ];
}
