import type { EstimateWithInterval } from '../interval.ts';
import type { RunPart } from './replicates.ts';
import type { FaultCost, RunCost } from './report.ts';

/**
 * Cost by fault, dearest first: each no-rep's part of its run's cost, divided evenly among the faults named for it.
 *
 * @param total the set's cost, null where it is not estimable
 * @param around the estimate with interval of a weighted sum over runs; asked only where the total is known
 */
export function faultCosts(
  runs: readonly RunCost[],
  total: number | null,
  around: (parts: readonly RunPart[]) => EstimateWithInterval | null,
): FaultCost[] {
  const byFault = new Map<string | null, { noReps: number; parts: RunPart[] }>();
  runs.forEach((cost, run) => {
    for (const noRep of cost.noReps) {
      const faults = noRep.faults.length > 0 ? noRep.faults : [null];
      for (const fault of faults) {
        const entry = byFault.get(fault) ?? { noReps: 0, parts: [] };
        entry.noReps += 1 / faults.length;
        entry.parts.push({ run, weight: noRep.share / faults.length });
        byFault.set(fault, entry);
      }
    }
  });
  const noReps = runs.reduce((sum, run) => sum + run.noReps.length, 0);
  const costs = [...byFault].map(([fault, entry]) => {
    const seconds = total === null ? null : around(entry.parts);
    const share = seconds !== null && total !== null && total > 0 ? seconds.estimate / total : entry.noReps / noReps;
    return { fault, noReps: entry.noReps, seconds, share };
  });
  return costs.sort(
    (one, other) => weightOf(other) - weightOf(one) || (nameOf(one.fault) < nameOf(other.fault) ? -1 : 1),
  );
}

function weightOf(cost: FaultCost): number {
  return cost.seconds?.estimate ?? cost.noReps;
}

/** No-reps without a reason come last among equals. */
function nameOf(fault: string | null): string {
  return fault ?? '~';
}
