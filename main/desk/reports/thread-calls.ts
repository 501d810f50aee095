import { z } from 'zod';
import type { SetReport } from '../../../shared-types/contract/reports.ts';
import type { FactsOfSet } from '../../ledger/fact-writer.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { drillThreadCalls } from '../drills/thread.ts';
import { nightThreadCalls } from '../nights/thread.ts';
import { readRecord } from '../record.ts';
import { reviewThreadCalls } from '../review/thread.ts';
import { cycleHistory } from './cycle-history.ts';
import { factsOf } from './set-facts.ts';
import { setReportOf } from './set-report.ts';
import { sumSet } from './set-sums.ts';
import { threadOs } from './thread-os.ts';

/** Answers the desk's own calls inside the thread of the reports. */
export function threadCalls(ledger: LedgerReader) {
  return {
    facts: threadOs.input(z.object({ id: z.uuid(), appliedN: z.number().int() })).handler(({ input }): FactsOfSet => {
      const record = readRecord(ledger, input.id);
      return factsOf(sumSet(record, cycleHistory(ledger, record)), input.appliedN);
    }),
    set: threadOs.input(z.object({ id: z.uuid() })).handler(({ input }): SetReport => {
      const record = readRecord(ledger, input.id);
      return setReportOf(record, sumSet(record, cycleHistory(ledger, record)));
    }),
    review: reviewThreadCalls(threadOs, ledger),
    drills: drillThreadCalls(threadOs, ledger),
    nights: nightThreadCalls(threadOs, ledger),
  };
}

export type ThreadRouter = ReturnType<typeof threadCalls>;
