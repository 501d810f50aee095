import type { ReviewCost, ReviewTotals } from '../../../shared-types/contract/review/figures.ts';
import { clusteredProportion } from '../../analysis/clusters/clustered-proportion.ts';
import { ratioOfSums } from '../../analysis/clusters/ratio.ts';
import type { ReviewSet } from '../../ledger/review.ts';
import { asEstimate, combined, estimateOrNull, scaled } from './estimates.ts';
import { sum } from './selection.ts';

/** Below this many sets their spread says too little, and the sets' own intervals are combined instead. */
export const FEWEST_FOR_SPREAD = 5;

export function totalsOf(sets: readonly ReviewSet[]): ReviewTotals {
  const rate = clusteredProportion({
    counts: sets.map((set) => set.noReps),
    totals: sets.map((set) => set.attempts),
  });
  return {
    sets: sets.length,
    firstAt: sets[0]?.at ?? null,
    lastAt: sets.at(-1)?.at ?? null,
    attempts: sum(sets, (set) => set.attempts),
    counted: sum(sets, (set) => set.counted),
    cautions: sum(sets, (set) => set.cautions),
    noReps: sum(sets, (set) => set.noReps),
    unexplained: sum(sets, (set) => set.unexplained),
    reversals: sum(sets, (set) => set.reversals),
    slips: sum(sets, (set) => set.slips),
    breaks: sum(sets, (set) => set.breaks),
    clockMs: sum(sets, (set) => set.clockMs),
    ledger: {
      startMs: sum(sets, (set) => set.startMs ?? 0),
      workMs: sum(sets, (set) => set.workMs ?? 0),
      noRepMs: sum(sets, (set) => set.noRepMs ?? 0),
      breakMs: sum(sets, (set) => set.breakMs ?? 0),
    },
    rate: rate.ok ? asEstimate(rate.value) : null,
    designEffect: rate.ok ? rate.value.designEffect : 1,
  };
}

export type CostedSet = ReviewSet & { readonly costS: number };

export function costedSets(sets: readonly ReviewSet[]): CostedSet[] {
  return sets.filter((set): set is CostedSet => set.costS !== null);
}

export function costOf(sets: readonly ReviewSet[]): ReviewCost {
  const costed = costedSets(sets);
  const total = combined(
    costed.map(({ costS, costLowS, costHighS }) => ({
      value: costS,
      low: costLowS ?? costS,
      high: costHighS ?? costS,
    })),
  );
  const noReps = sum(costed, (set) => set.noReps);
  const per = (of: (set: ReviewSet) => number, times: number) => {
    const all = sum(costed, of);
    if (all === 0 || noReps === 0) return null;
    if (costed.length < FEWEST_FOR_SPREAD) return scaled(total, times / all);
    const ratio = ratioOfSums(
      costed.map((set) => set.costS),
      costed.map(of),
    );
    return estimateOrNull(ratio, times);
  };
  const known = costed.length > 0;
  return {
    setsWithCost: costed.length,
    totalS: known ? total : null,
    per100S: per((set) => set.counted, 100),
    perNoRepS: per((set) => set.noReps, 1),
    repeatS: known ? sum(costed, (set) => set.repeatS ?? 0) : null,
    disruptionS: known ? sum(costed, (set) => set.disruptionS ?? 0) : null,
  };
}
