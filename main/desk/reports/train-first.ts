import type { z } from 'zod';
import type { trainFirst as schema } from '../../../shared-types/contract/reports.ts';
import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import type { SetCost } from '../../analysis/cost/report.ts';

/** The fault of this set to train first, with its remedy; null without an explained no-rep. */
export function trainFirst(sheet: StandardSheet, cost: SetCost): z.infer<typeof schema> | null {
  // Dearest first; no-reps without a reason name nothing to train.
  const dearest = cost.faults.find((line) => line.fault !== null);
  const fault = sheet.faults.find((item) => item.code === dearest?.fault);
  if (dearest === undefined || fault === undefined) return null;
  return {
    code: fault.code,
    name: fault.name,
    remedy: fault.remedy,
    cue: fault.cue,
    noReps: dearest.noReps,
    seconds: dearest.seconds?.estimate ?? null,
    share: dearest.share,
    sure: null,
  };
}
