import type { AttemptLine, Estimate, SetReport } from '../../../shared-types/contract/reports.ts';
import type { SetRecord } from '../../../shared-types/contract/sets.ts';
import { refKey } from '../../../shared-types/log/events.ts';
import { tally } from '../../../shared-types/log/fold.ts';
import type { EstimateWithInterval } from '../../analysis/interval.ts';
import { wilsonInterval } from '../../analysis/proportions/wilson.ts';
import type { SummedSet } from './set-sums.ts';
import { trainFirst } from './train-first.ts';

/** The report of one set, from its sums; every figure as the contract says. */
export function setReportOf(record: Pick<SetRecord, 'sheet'>, summed: SummedSet): SetReport {
  const { state, sums } = summed;
  const { ledger, cost } = sums;
  const counts = tally(state);
  const rate = wilsonInterval(counts.noReps, counts.attempts);
  return {
    clockMs: ledger.clock,
    resultMs: ledger.clock + Math.round(cost.addedSeconds * 1_000),
    counts,
    slips: state.slips,
    reversals: state.reversals,
    clashes: state.clashes.map((clash) => clash.message),
    rate: rate.ok ? asEstimate(rate.value) : null,
    reasons: cost.faults.map((line) => ({
      code: line.fault ?? '',
      name: record.sheet.faults.find((fault) => fault.code === line.fault)?.name ?? '',
      noReps: line.noReps,
      seconds: asEstimate(line.seconds),
    })),
    ledger: { startMs: ledger.start, workMs: ledger.work, noRepMs: ledger.noRep, breakMs: ledger.break },
    attempts: attemptLines(summed),
    cost: {
      method: cost.method,
      cleanCycles: cost.cleanCycles,
      total: asEstimate(cost.total),
      repeatS: cost.repeat,
      disruptionS: cost.disruption,
      repeatedMetresS: cost.repeatedMetres,
      addedS: cost.addedSeconds,
      repsLost: asEstimate(cost.repsLost),
      runs: cost.runs.map((run) => ({
        attempts: [...run.attempts],
        where: run.where,
        cost: asEstimate(run.cost),
        repeatS: run.repeat,
        disruptionS: run.disruption,
        unmarkedPauseS: run.unmarkedPause,
        flags: [...run.flags],
      })),
    },
    train: trainFirst(record.sheet, cost, counts.attempts),
  };
}

function asEstimate(given: EstimateWithInterval | null): Estimate | null {
  return given === null ? null : { value: given.estimate, low: given.lower, high: given.upper };
}

/** Every attempt in order, withdrawn ones too; the figures of those that stand come from the sums. */
function attemptLines({ state, sums }: SummedSet): AttemptLine[] {
  const rows = new Map(sums.attempts.map((row) => [refKey(row), row]));
  return state.attempts.map((attempt) => {
    const row = rows.get(refKey(attempt.ref));
    return {
      ref: attempt.ref,
      number: row?.number ?? null,
      at: attempt.at,
      verdict: attempt.verdict,
      faults: [...attempt.faults],
      first: { verdict: attempt.first.verdict, faults: [...attempt.first.faults] },
      withdrawn: attempt.withdrawn,
      reversed: attempt.changes.some((change) => change.event.kind === 'reverse' && !change.withdrawn),
      cycleS: row?.cycle ?? null,
      clean: row?.cleanCycle !== null && row?.cleanCycle !== undefined,
      expectedS: row?.expected ?? null,
      costS: row?.cost ?? null,
    };
  });
}
