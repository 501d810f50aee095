import type { Trend } from '../../../shared-types/contract/review/figures.ts';
import type { ProportionChart } from '../../analysis/charts/p-chart.ts';
import { type RateTrend, rateTrend } from '../../analysis/trends/rate-trend.ts';
import { trialsStillNeeded } from '../../analysis/trends/still-needed.ts';
import type { ReviewSet } from '../../ledger/review.ts';
import { asEstimate, whyNot } from './estimates.ts';
import { sum } from './selection.ts';

/** Chance of a false alarm that a verdict may have. */
export const SIGNIFICANCE = 0.05;

/** The rate over time with its verdict. `chart` gives the centre line. */
export function trendOf(sets: readonly ReviewSet[], chart: ProportionChart | null): Trend {
  const noReps = sum(sets, (set) => set.noReps);
  const attempts = sum(sets, (set) => set.attempts);
  const found = rateTrend(
    sets.map((set) => set.noReps),
    sets.map((set) => set.attempts),
    sets.map((set) => set.at),
  );
  const lines = { centre: chart?.centre ?? null, sigmaZ: chart?.sigmaZ ?? null };
  if (!found.ok) {
    const why = whyNot(found.error.kind, { sets: sets.length, noReps });
    return { ...lines, curve: [], fitted: null, verdict: { kind: 'too-few', why } };
  }
  const fit = found.value;
  return {
    ...lines,
    curve: [...fit.curve],
    fitted: {
      method: methodName(fit.method),
      fromAt: fit.first,
      toAt: fit.last,
      from: asEstimate(fit.from),
      to: asEstimate(fit.to),
      difference: asEstimate(fit.difference),
      dispersion: fit.dispersion,
      pValue: fit.pValue,
      checkPValue: fit.checkPValue,
    },
    verdict: verdictOf(fit, attempts),
  };
}

function verdictOf(fit: RateTrend, attempts: number): Trend['verdict'] {
  if (fit.pValue < SIGNIFICANCE) return { kind: fit.statistic < 0 ? 'fewer' : 'more' };
  return { kind: 'unclear', stillNeeded: trialsStillNeeded(attempts, fit.statistic) };
}

export function methodName(method: RateTrend['method']): 'maximum-likelihood' | 'penalised-likelihood' {
  return method === 'maximum likelihood' ? 'maximum-likelihood' : 'penalised-likelihood';
}
