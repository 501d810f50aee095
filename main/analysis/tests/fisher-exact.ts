import { logGamma } from '../distributions/gamma-functions.ts';
import { type Computed, computed, failed } from '../result.ts';
import { type CountTable, countTableError, tableMargins, withoutEmptyLines } from './count-table.ts';

export type FisherExactOptions = {
  /** Give up (typed error) when more partial tables than this would have to be held. */
  readonly mostTables?: number;
};

// Tables as likely as the observed one up to rounding count as such.
const TIE = 1e-7;

/**
 * Fisher's exact test of independence in an r x c table of counts, two-sided: the summed probability, with all margins
 * fixed, of every table no likelier than the observed one (Freeman & Halton 1951, Biometrika 38:141-149). Columns are
 * filled one after the other and equal states (row totals left) joined, as in the network of Mehta & Patel (1983, JASA
 * 78:427-434); the last two columns of a state are listed once and shared by all the ways that lead to it.
 *
 * @returns the p-value
 * Errors: `no-data`, `one-category` (fewer than two rows or columns hold counts), `out-of-reach` (too large: use the
 * chi-square test), `invalid-input`.
 */
export function fisherExact(table: CountTable, { mostTables = 2_000_000 }: FisherExactOptions = {}): Computed<number> {
  const error = countTableError(table);
  if (error) return error;
  const kept = longSideAsColumns(withoutEmptyLines(table));
  const { rows, columns, total } = tableMargins(kept);
  if (rows.length < 2 || columns.length < 2) {
    return failed('one-category', 'Fewer than two rows or two columns hold counts, so there is nothing to compare.');
  }
  const logFactorials = Float64Array.from({ length: total + 1 }, (_, n) => logGamma(n + 1));
  const sumOfLogs: SumOfLogs = (counts) => counts.reduce((sum, count) => sum + (logFactorials[count] ?? 0), 0);
  const constant = sumOfLogs(rows) + sumOfLogs(columns) - sumOfLogs([total]);
  const limit = constant - kept.reduce((sum, row) => sum + sumOfLogs(row), 0) + TIE;
  const inOrder = columns.sort((a, b) => a - b);

  let pValue = 0;
  let states: States = new Map([[rows.join(','), { left: rows, paths: new Map([[constant, 1]]) }]]);
  for (const [index, column] of inOrder.slice(0, -2).entries()) {
    const remaining = inOrder.slice(index + 1);
    const next: States = new Map();
    let held = 0;
    for (const { left, paths } of states.values()) {
      if (numberOfWays(left, column) > mostTables) return tooLarge();
      for (const fill of waysToFill(left, column)) {
        const rest = left.map((count, i) => count - (fill[i] ?? 0)).sort((a, b) => a - b);
        const key = rest.join(',');
        const state = next.get(key) ?? { left: rest, paths: new Map<number, number>() };
        const cost = sumOfLogs(fill);
        // All ways on from here together; when even their sum is within the limit, each of them is.
        const onward =
          sumOfLogs([rest.reduce((sum, count) => sum + count, 0)]) - sumOfLogs(rest) - sumOfLogs(remaining);
        for (const [path, ways] of paths) {
          if (path - cost + onward <= limit) {
            pValue += ways * Math.exp(path - cost + onward);
            continue;
          }
          // Rounded so that paths of equal probability fall together.
          const joined = Math.round((path - cost) * 1e10) / 1e10;
          if (!state.paths.has(joined)) held += 1;
          state.paths.set(joined, (state.paths.get(joined) ?? 0) + ways);
        }
        if (state.paths.size > 0) next.set(key, state);
        if (held > mostTables) return tooLarge();
      }
    }
    states = next;
  }

  let listed = 0;
  for (const { left, paths } of states.values()) {
    listed += numberOfWays(left, inOrder.at(-2) ?? 0);
    if (listed > mostTables) return tooLarge();
    const fills = waysToFill(left, inOrder.at(-2) ?? 0);
    const endings = Float64Array.from(
      fills,
      (fill) => -sumOfLogs(fill) - sumOfLogs(left.map((count, i) => count - (fill[i] ?? 0))),
    ).sort();
    const summed = new Float64Array(endings.length + 1);
    for (let i = 0; i < endings.length; i += 1)
      summed[i + 1] = (summed[i] ?? 0) + Math.exp((endings[i] ?? 0) - (endings.at(-1) ?? 0));
    for (const [path, ways] of paths) {
      const within = numberUpTo(endings, limit - path);
      pValue += ways * Math.exp(path + (endings.at(-1) ?? 0)) * (summed[within] ?? 0);
    }
  }
  return computed(Math.min(1, pValue));
}

/** Row totals still to fill, and the ways there: log probability so far, and how many ways have it. */
type States = Map<string, { left: readonly number[]; paths: Map<number, number> }>;

type SumOfLogs = (counts: readonly number[]) => number;

function tooLarge(): Computed<never> {
  return failed('out-of-reach', 'The table is too large for the exact test; the chi-square test will do.');
}

function longSideAsColumns(table: CountTable): CountTable {
  const first = table[0] ?? [];
  return table.length <= first.length ? table : first.map((_, j) => table.map((row) => row[j] ?? 0));
}

/** How many ways `waysToFill` lists, without listing them. */
function numberOfWays(most: readonly number[], sum: number): number {
  let ways = new Float64Array(sum + 1);
  ways[0] = 1;
  for (const limit of most) {
    const next = new Float64Array(sum + 1);
    let window = 0;
    for (let i = 0; i <= sum; i += 1) {
      window += ways[i] ?? 0;
      if (i > limit) window -= ways[i - limit - 1] ?? 0;
      next[i] = window;
    }
    ways = next;
  }
  return ways[sum] ?? 0;
}

/** Every way to spread `sum` over places that hold at most `most[i]` each. */
function waysToFill(most: readonly number[], sum: number): number[][] {
  const [head, ...tail] = most;
  if (head === undefined) return sum === 0 ? [[]] : [];
  const room = tail.reduce((all, count) => all + count, 0);
  const ways: number[][] = [];
  for (let here = Math.max(0, sum - room); here <= Math.min(head, sum); here += 1) {
    for (const rest of waysToFill(tail, sum - here)) ways.push([here, ...rest]);
  }
  return ways;
}

/** How many of the rising values are at most `limit`. */
function numberUpTo(rising: Float64Array, limit: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] ?? 0) <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
