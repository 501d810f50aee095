import { calls, type DeskParts } from './calls.ts';
import { CRITERIA_KEY, readCriteria } from './drills/criteria.ts';
import { readDrill } from './drills/record.ts';

/** Answers the calls about drills of the judge's eye; the scores are made in the reports' thread. */
export function drillsCalls({ ledger, changes, reports, now }: DeskParts) {
  const thread = reports.calls.drills;
  const until = (signal: AbortSignal | undefined) => (signal === undefined ? {} : { signal });
  const { drills } = calls;
  return drills.router({
    create: drills.create.handler(({ input }) => {
      const outcome = ledger.drills.create(input);
      if (outcome === 'new') changes.changed('drills', input.id);
      return { outcome };
    }),
    append: drills.append.handler(({ input }) => {
      const outcomes = ledger.drills.append(input.events);
      const grown = new Set(input.events.filter((_, i) => outcomes[i] === 'new').map((event) => event.drill));
      for (const id of grown) changes.changed('drills', id);
      return {
        acknowledgements: input.events.map(({ pad, seq }, i) => ({ pad, seq, outcome: outcomes[i] ?? 'conflict' })),
      };
    }),
    get: drills.get.handler(({ input }) => readDrill(ledger, input.id)),
    list: drills.list.handler(({ input, signal }) => thread.list(input, until(signal))),
    report: drills.report.handler(({ input, signal }) => thread.report(input, until(signal))),
    judge: drills.judge.handler(({ input, signal }) => thread.judge({ ...input, now: now() }, until(signal))),
    ready: drills.ready.handler(({ input, signal }) => thread.ready({ ...input, now: now() }, until(signal))),
    criteria: drills.criteria.handler(() => readCriteria(ledger.settings)),
    setCriteria: drills.setCriteria.handler(({ input }) => {
      ledger.settings.put(CRITERIA_KEY, input);
      changes.changed('settings', null);
      return input;
    }),
    export: drills.export.handler(({ input, signal }) => thread.export({ asked: input, now: now() }, until(signal))),
  });
}
