import { z } from 'zod';
import type { Debrief } from '../../../shared-types/contract/nights/debrief.ts';
import type { PlanAnswer } from '../../../shared-types/contract/nights.ts';
import { foldNight } from '../../../shared-types/night/fold.ts';
import { rosterOf } from '../../../shared-types/night/roster.ts';
import { calledName } from '../../../shared-types/people.ts';
import { planNight } from '../../analysis/rotation/plan-night.ts';
import { loadSolver } from '../../analysis/rotation/solver.ts';
import type { threadOs } from '../reports/thread-os.ts';
import { debriefOf } from './debrief.ts';
import { exportNight, type NightFile } from './export.ts';
import type { NightLedger } from './lanes.ts';

const id = z.uuid();
/** For one model of the solver; a night takes a few. */
const SECONDS = 3;

/** Long sums of nights, inside the thread of the reports. */
export function nightThreadCalls(calls: typeof threadOs, ledger: NightLedger) {
  return {
    plan: calls.input(z.object({ id })).handler(async ({ input }): Promise<PlanAnswer> => planOf(ledger, input.id)),
    debrief: calls.input(z.object({ id })).handler(({ input }): Debrief => debriefOf(ledger, input.id)),
    export: calls
      .input(z.object({ id, format: z.enum(['results-csv', 'calls-csv', 'json']), now: z.number() }))
      .handler(({ input }): NightFile => exportNight(ledger, input.id, input.format, input.now)),
  };
}

async function planOf(ledger: NightLedger, night: string): Promise<PlanAnswer> {
  const roster = rosterOf(foldNight(night, ledger.nights.events(night)));
  if (roster === null) {
    return { outcome: 'not-found', heats: null, breaches: [], reasons: ['The night has not been arranged yet.'] };
  }
  const nameOf = (person: string) => calledName(ledger.people.get(person));
  const planned = planNight(await loadSolver(), roster, { nameOf, seed: 1, seconds: SECONDS });
  return {
    outcome: planned.outcome,
    heats: planned.heats === null ? null : planned.heats.map((heat) => [...heat]),
    breaches: planned.breaches.map((breach) => ({ ...breach, people: [...breach.people] })),
    reasons: planned.outcome === 'planned' ? [] : [...planned.reasons],
  };
}
