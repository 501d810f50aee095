import type { SetRecord } from '../../../shared-types/contract/sets.ts';
import type { CycleHistory } from '../../analysis/cost/expected-cycle.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';

/** Earlier sets looked at; the athlete's pace of long ago says little of today. */
const EARLIER_SETS = 10;

/** The athlete's clean cycles of earlier sets at this station and load, seconds, one list a set. */
export function cycleHistory(ledger: Pick<LedgerReader, 'reports'>, { setup }: Pick<SetRecord, 'setup'>): CycleHistory {
  const earlier = {
    athletes: [setup.athlete],
    sheets: [{ id: setup.sheet.id }],
    loadsKg: [setup.loadKg],
    to: setup.createdAt,
  };
  return ledger.reports
    .attempts(earlier, EARLIER_SETS)
    .map(({ attempts }) =>
      attempts.flatMap(({ clean, cycleMs }) => (clean && cycleMs !== null ? [cycleMs / 1_000] : [])),
    )
    .filter((cycles) => cycles.length > 0);
}
