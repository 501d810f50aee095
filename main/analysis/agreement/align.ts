/** When something happened, or a span in which it may be expected; any unit, the same everywhere. */
export type Span = { readonly from: number; readonly to: number };

export type Alignment = {
  /** Places in the first and in the second list that belong together, in order. */
  readonly pairs: readonly (readonly [first: number, second: number])[];
  /** Places without a partner. */
  readonly onlyFirst: readonly number[];
  readonly onlySecond: readonly number[];
};

/** Distance of two spans in time; 0 where they touch. */
function apart(one: Span, other: Span): number {
  return Math.max(0, other.from - one.to, one.from - other.to);
}

/**
 * Pairs two lists in time order, keeping the order: the least total time difference, an element left alone counting half the
 * tolerance, so that two belong together exactly where that is cheaper than leaving both alone (the edit distance of event
 * times: Victor & Purpura 1996, Journal of Neurophysiology 76:1310-1326, with q = 2 / tolerance; dynamic programming after
 * Sellers 1974). No pair is farther apart than the tolerance. Time and memory grow with the product of the lengths.
 * @param tolerance above 0, in the unit of the times
 */
export function alignSpans(first: readonly Span[], second: readonly Span[], tolerance: number): Alignment {
  const alone = tolerance / 2;
  const width = second.length + 1;
  const cost = new Float64Array((first.length + 1) * width);
  for (let j = 1; j < width; j += 1) cost[j] = j * alone;
  for (const [i, one] of first.entries()) {
    const row = (i + 1) * width;
    cost[row] = (i + 1) * alone;
    for (const [j, other] of second.entries()) {
      const gap = apart(one, other);
      const paired = gap <= tolerance ? (cost[row - width + j] ?? 0) + gap : Number.POSITIVE_INFINITY;
      const left = Math.min(cost[row - width + j + 1] ?? 0, cost[row + j] ?? 0) + alone;
      cost[row + j + 1] = Math.min(paired, left);
    }
  }
  return trace(first, second, tolerance, cost);
}

/** Walks back from the end along the cheapest way; of equal ways the one that pairs. */
function trace(first: readonly Span[], second: readonly Span[], tolerance: number, cost: Float64Array): Alignment {
  const width = second.length + 1;
  const pairs: [number, number][] = [];
  const onlyFirst: number[] = [];
  const onlySecond: number[] = [];
  let i = first.length;
  let j = second.length;
  while (i > 0 || j > 0) {
    const one = first[i - 1];
    const other = second[j - 1];
    const here = cost[i * width + j] ?? 0;
    if (one !== undefined && other !== undefined) {
      const gap = apart(one, other);
      if (gap <= tolerance && (cost[(i - 1) * width + j - 1] ?? 0) + gap <= here) {
        i -= 1;
        j -= 1;
        pairs.push([i, j]);
        continue;
      }
    }
    if (other === undefined || (one !== undefined && (cost[(i - 1) * width + j] ?? 0) + tolerance / 2 <= here)) {
      i -= 1;
      onlyFirst.push(i);
    } else {
      j -= 1;
      onlySecond.push(j);
    }
  }
  return { pairs: pairs.reverse(), onlyFirst: onlyFirst.reverse(), onlySecond: onlySecond.reverse() };
}
