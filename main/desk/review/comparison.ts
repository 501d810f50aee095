import type { AthleteFilter } from '../../../shared-types/contract/review/filter.ts';
import type { Comparison } from '../../../shared-types/contract/review/plans.ts';
import {
  type ClusteredProportion,
  clusteredDifference,
  clusteredProportion,
  clusteredStillNeeded,
} from '../../analysis/clusters/clustered-proportion.ts';
import { sampleMedian } from '../../analysis/distributions/sample-quantile.ts';
import type { ReviewSet } from '../../ledger/review.ts';
import { asEstimate } from './estimates.ts';
import { Stations } from './names.ts';
import { type ReviewLedger, readSelection } from './selection.ts';
import { costOf, totalsOf } from './totals.ts';

const LATEST = 50;

/** Two spans or conditions side by side. Errors: `unknown-person`, `unknown-sheet`. */
export function comparisonOf(
  ledger: ReviewLedger,
  filters: { readonly a: AthleteFilter; readonly b: AthleteFilter },
): Comparison {
  const stations = new Stations(ledger);
  const [a, b] = [filters.a, filters.b].map((filter) => {
    ledger.people.get(filter.athlete);
    stations.of(filter.sheet);
    return readSelection(ledger, filter).sets;
  });
  if (a === undefined || b === undefined) throw new Error('A comparison has two sides.');
  const inA = new Set(a.map((set) => set.n));
  const shared = b.filter((set) => inA.has(set.n)).length;
  const [rateA, rateB] = [proportionOf(a), proportionOf(b)];
  const sides = { a: sideOf(ledger, a), b: sideOf(ledger, b) };
  const difference = rateA === null || rateB === null ? null : asEstimate(clusteredDifference(rateA, rateB));
  return {
    ...sides,
    shared,
    difference,
    per100S: lessOf(sides.a.cost.per100S, sides.b.cost.per100S),
    verdict: verdictOf({ a, b, rateA, rateB, shared, difference }),
  };
}

function proportionOf(sets: readonly ReviewSet[]): ClusteredProportion | null {
  const rate = clusteredProportion({
    counts: sets.map((set) => set.noReps),
    totals: sets.map((set) => set.attempts),
  });
  return rate.ok ? rate.value : null;
}

function sideOf(ledger: ReviewLedger, sets: readonly ReviewSet[]): Comparison['a'] {
  const latest = sets.slice(-LATEST).toReversed();
  const ids = ledger.reports.setIds(latest.map((set) => set.n));
  const clean = sampleMedian(sets.flatMap((set) => set.cleanMs ?? []));
  return {
    totals: totalsOf(sets),
    cost: costOf(sets),
    cleanS: clean === undefined ? null : clean / 1_000,
    latest: latest.flatMap((set) => ids.get(set.n) ?? []),
  };
}

/** Two independent estimates, one less the other: the distances to their bounds squared and added. */
function lessOf(a: Comparison['per100S'], b: Comparison['per100S']): Comparison['per100S'] {
  if (a === null || b === null) return null;
  const value = a.value - b.value;
  return {
    value,
    low: value - Math.hypot(a.value - a.low, b.high - b.value),
    high: value + Math.hypot(a.high - a.value, b.value - b.low),
  };
}

function verdictOf(given: {
  a: readonly ReviewSet[];
  b: readonly ReviewSet[];
  rateA: ClusteredProportion | null;
  rateB: ClusteredProportion | null;
  shared: number;
  difference: Comparison['difference'];
}): Comparison['verdict'] {
  const { a, b, rateA, rateB, shared, difference } = given;
  const none = (sets: readonly ReviewSet[]) => (sets.length === 0 ? 'no-sets' : 'no-attempts');
  if (rateA === null) return { kind: 'too-few', side: 'a', why: none(a) };
  if (rateB === null || difference === null) return { kind: 'too-few', side: 'b', why: none(b) };
  if (shared > 0) return { kind: 'shared-sets' };
  if (difference.high < 0) return { kind: 'fewer-in-a' };
  if (difference.low > 0) return { kind: 'fewer-in-b' };
  const needed = clusteredStillNeeded(rateA, rateB);
  return { kind: 'unclear', stillNeeded: needed.ok ? needed.value : null };
}
