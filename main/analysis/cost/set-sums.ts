import type { SetState } from '../../../shared-types/log/state.ts';
import { type AttemptRow, tableOfReading } from './attempt-table.ts';
import type { SetCost } from './report.ts';
import { costOfReading, readSet, type SetCostOptions } from './set-cost.ts';
import { ledgerOfReading, type TimeLedger } from './time-ledger.ts';

/** Ledger, cost and table of a set together, from one reading of its state. */
export type SetSums = { readonly ledger: TimeLedger; readonly cost: SetCost; readonly attempts: readonly AttemptRow[] };

/** All sums of one set; see `timeLedger`, `setCost` and `attemptTable`. */
export function setSums(state: SetState, options: SetCostOptions = {}): SetSums {
  const reading = readSet(state, options);
  const cost = costOfReading(reading, options);
  return { ledger: ledgerOfReading(reading), cost, attempts: tableOfReading(reading, cost, options.goal) };
}
