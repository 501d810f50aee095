import { z } from 'zod';
import {
  type DrillReport,
  drillFilter,
  type JudgeDrills,
  type ReadyLine,
} from '../../../shared-types/contract/drills.ts';
import { readyCriteria } from '../../../shared-types/drills/ready.ts';
import type { threadOs } from '../reports/thread-os.ts';
import { readCriteria } from './criteria.ts';
import { drillsExport } from './export.ts';
import { judgeDrillsOf, readyLines } from './history.ts';
import { type DrillLines, drillLines } from './lines.ts';
import { type DrillLedger, readDrill } from './record.ts';
import { drillReportOf } from './report.ts';

const now = z.number();

/** The scores of drills, inside the thread of the reports. */
export function drillThreadCalls(calls: typeof threadOs, ledger: DrillLedger) {
  return {
    list: calls
      .input(z.object({ filter: drillFilter, after: z.string().nullable(), limit: z.number() }))
      .handler(({ input }): DrillLines => drillLines(ledger, input)),
    report: calls
      .input(z.object({ id: z.uuid() }))
      .handler(({ input }): DrillReport => drillReportOf(readDrill(ledger, input.id))),
    judge: calls
      .input(z.object({ judge: z.uuid(), sheet: z.string(), now }))
      .handler(({ input }): JudgeDrills => judgeDrillsOf(ledger, input.judge, input.sheet, input.now)),
    ready: calls
      .input(z.object({ criteria: readyCriteria.optional(), now }))
      .handler(({ input }): ReadyLine[] =>
        readyLines(ledger, input.criteria ?? readCriteria(ledger.settings), input.now),
      ),
    export: calls
      .input(
        z.object({
          asked: z.object({
            filter: drillFilter,
            ids: z.array(z.uuid()).optional(),
            format: z.enum(['csv', 'json', 'json-schema']),
          }),
          now,
        }),
      )
      .handler(({ input }) => drillsExport(ledger, input.asked, input.now)),
  };
}
