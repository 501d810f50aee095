import type { z } from 'zod';
import type { trainFirst as schema } from '../../../shared-types/contract/reports.ts';
import type { StandardSheet } from '../../../shared-types/sheets/sheet.ts';
import type { SetCost } from '../../analysis/cost/report.ts';
import { whatToTrain } from '../../analysis/forecast/what-to-train.ts';

/** Enough for a probability to the nearest hundredth. */
const DRAWS = 2_000;

/** The fault of this set to train first, with its remedy; null without an explained no-rep. `attempts`: those that stand. */
export function trainFirst(sheet: StandardSheet, cost: SetCost, attempts: number): z.infer<typeof schema> | null {
  const noReps = cost.runs
    .flatMap((run) => run.noReps)
    .map((noRep) => ({ faults: noRep.faults, cost: noRep.seconds?.estimate ?? null }));
  const candidates = sheet.faults.map((fault) => fault.code);
  const found = whatToTrain(noReps, attempts, { candidates, draws: DRAWS });
  if (!found.ok) return null;
  const { first } = found.value;
  const fault = sheet.faults.find((item) => item.code === first.fault);
  if (fault === undefined) return null;
  return {
    code: fault.code,
    name: fault.name,
    remedy: fault.remedy,
    cue: fault.cue,
    noReps: first.noReps,
    seconds: first.seconds,
    share: first.share,
    sure: first.sure,
  };
}
