import { os } from '@orpc/server';
import { z } from 'zod';
import type { SetReport } from '../../../shared-types/contract/reports.ts';
import type { FactsOfSet } from '../../ledger/fact-writer.ts';
import type { LedgerReader } from '../../ledger/ledger.ts';
import { asFailure } from '../failures.ts';
import { readRecord } from '../record.ts';
import { cycleHistory } from './cycle-history.ts';
import { factsOf } from './set-facts.ts';
import { setReportOf } from './set-report.ts';
import { sumSet } from './set-sums.ts';

/** Answers the desk's own calls inside the thread of the reports. */
export function threadCalls(ledger: LedgerReader) {
  const calls = os.use(async ({ next }) => {
    try {
      return await next();
    } catch (error) {
      throw asFailure(error);
    }
  });
  return {
    facts: calls.input(z.object({ id: z.uuid(), appliedN: z.number().int() })).handler(({ input }): FactsOfSet => {
      const record = readRecord(ledger, input.id);
      return factsOf(sumSet(record, cycleHistory(ledger, record)), input.appliedN);
    }),
    set: calls.input(z.object({ id: z.uuid() })).handler(({ input }): SetReport => {
      const record = readRecord(ledger, input.id);
      return setReportOf(record, sumSet(record, cycleHistory(ledger, record)));
    }),
  };
}

export type ThreadRouter = ReturnType<typeof threadCalls>;
