import type { SetRecord } from '../../../shared-types/contract/sets.ts';
import { foldSet } from '../../../shared-types/log/fold.ts';
import type { SetState } from '../../../shared-types/log/state.ts';
import type { CycleHistory } from '../../analysis/cost/expected-cycle.ts';
import { type SetSums, setSums } from '../../analysis/cost/set-sums.ts';

/** A set's state and all its sums, as report and facts both read them. */
export interface SummedSet {
  readonly state: SetState;
  readonly sums: SetSums;
}

/** Folds a set's log and computes its sums. `history`: the athlete's earlier clean cycles at this station and load, seconds. */
export function sumSet(record: Pick<SetRecord, 'setup' | 'sheet' | 'events'>, history: CycleHistory): SummedSet {
  const state = foldSet(record.setup.id, record.events);
  const sums = setSums(state, { goal: record.setup.goal, consequence: record.sheet.consequence, history });
  return { state, sums };
}
