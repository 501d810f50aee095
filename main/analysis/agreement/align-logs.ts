import { sampleMedian } from '../distributions/sample-quantile.ts';
import { type Alignment, alignSpans, type Span } from './align.ts';

export type LogAlignment = Alignment & {
  /** How much later the second list is than the first, on the median of the pairs; undefined without a pair. */
  readonly lag: number | undefined;
};

const MOST_ROUNDS = 8;

/**
 * Two judges' calls of one set, as times in rising order: pairs and calls that only one of them made. One judge may be
 * habitually later than the other, so the median difference of the pairs is taken out and the lists aligned again until the
 * pairs stay the same. The lag found is the one nearest to 0: in a regular rhythm no log tells a lag of a whole cycle.
 * @param tolerance in the unit of the times; about a second
 */
export function alignLogs(first: readonly number[], second: readonly number[], tolerance: number): LogAlignment {
  let lag = 0;
  let best = alignSpans(first.map(instant), second.map(instant), tolerance);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const median = medianLag(first, second, best);
    if (median === undefined || median === lag) break;
    lag = median;
    const next = alignSpans(
      first.map((time) => instant(time + lag)),
      second.map(instant),
      tolerance,
    );
    const same = samePairs(best, next);
    best = next;
    if (same) break;
  }
  return { ...best, lag: medianLag(first, second, best) };
}

const instant = (time: number): Span => ({ from: time, to: time });

function medianLag(first: readonly number[], second: readonly number[], { pairs }: Alignment): number | undefined {
  return sampleMedian(pairs.map(([i, j]) => (second[j] ?? 0) - (first[i] ?? 0)));
}

function samePairs(one: Alignment, other: Alignment): boolean {
  return (
    one.pairs.length === other.pairs.length &&
    one.pairs.every(([i, j], k) => other.pairs[k]?.[0] === i && other.pairs[k]?.[1] === j)
  );
}
