import { tally } from '../../../shared-types/log/fold.ts';
import { sampleMedian } from '../../analysis/distributions/sample-quantile.ts';
import type { FactsOfSet } from '../../ledger/fact-writer.ts';
import type { SummedSet } from './set-sums.ts';

/** Raise it when the sums change, and every set's facts are computed again. */
export const PROJECTION = 3;

/** What the ledger keeps of a set for lists and reports. `appliedN`: the place of the last event that the log held. */
export function factsOf({ state, sums }: SummedSet, appliedN: number): FactsOfSet {
  const { ledger, cost, attempts } = sums;
  const counts = tally(state);
  const clean = attempts.flatMap((row) => (row.cleanCycle === null ? [] : [row.cleanCycle]));
  const median = sampleMedian(clean);
  const ended = state.phase === 'finished' || state.phase === 'abandoned';
  return {
    facts: {
      phase: state.phase,
      startedAt: state.startedAt,
      clockMs: ledger.clock,
      attempts: counts.attempts,
      counted: counts.counted,
      cautions: counts.cautions,
      noReps: counts.noReps,
      unexplained: counts.unexplained,
      metres: counts.metres,
      reversals: state.reversals,
      slips: state.slips,
      breaks: state.breaks.length,
      ledger: ended
        ? { startMs: ledger.start, workMs: ledger.work, noRepMs: ledger.noRep, breakMs: ledger.break }
        : null,
      cleanCycles: clean.length,
      cleanMedianMs: median === undefined ? null : Math.round(median * 1_000),
      cost:
        cost.total === null
          ? null
          : {
              seconds: cost.total.estimate,
              low: cost.total.lower,
              high: cost.total.upper,
              repeatSeconds: cost.repeat ?? 0,
              disruptionSeconds: cost.disruption ?? 0,
            },
    },
    reasons: cost.faults.map((fault) => ({
      fault: fault.fault ?? '',
      noReps: fault.noReps,
      seconds: fault.seconds?.estimate ?? null,
    })),
    attempts: attempts.map((row) => ({
      number: row.number,
      at: row.at,
      verdict: row.verdict,
      faults: row.faults,
      cycleMs: row.cycle === null ? null : Math.round(row.cycle * 1_000),
      expectedMs: row.expected === null ? null : Math.round(row.expected * 1_000),
      clean: row.cleanCycle !== null,
      progress: row.progress,
      costSeconds: row.cost,
    })),
    appliedN,
    projection: PROJECTION,
  };
}
