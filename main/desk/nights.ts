import { ORPCError } from '@orpc/server';
import type { NightLine } from '../../shared-types/contract/nights.ts';
import type { NightPlan } from '../../shared-types/night/night.ts';
import { rosterOf } from '../../shared-types/night/roster.ts';
import { checkPlan } from '../../shared-types/night/rules.ts';
import { calledName } from '../../shared-types/people.ts';
import { calls, type DeskParts } from './calls.ts';
import { watchBoard } from './nights/board.ts';
import type { NightBook } from './nights/book.ts';

/** Answers the calls about judging nights; plans and debriefs are made in the reports' thread. */
export function nightsCalls(parts: DeskParts, book: NightBook) {
  const { ledger, changes, reports, now } = parts;
  const { nights } = calls;
  const thread = reports.calls.nights;
  const until = (signal: AbortSignal | undefined) => (signal === undefined ? {} : { signal });
  const breachesOf = (id: string, heats: NightPlan) => {
    const roster = rosterOf(book.get(id).state);
    if (roster === null) return [];
    const known = new Map(roster.arrangement.people.map((person) => [person.id, person]));
    // A plan by hand may name whom the night does not have; that is what is told.
    const nameOf = (person: string) => (known.has(person) ? calledName(ledger.people.get(person)) : 'Somebody else');
    return checkPlan(roster, heats, nameOf).map((breach) => ({ ...breach, people: [...breach.people] }));
  };
  return nights.router({
    create: nights.create.handler(({ input }) => ({ outcome: book.create(input.night, input.arrangement) })),
    list: nights.list.handler(() => ledger.nights.list().map(({ id }) => lineOf(parts, book, id))),
    get: nights.get.handler(({ input }) => {
      const { night, events, state } = book.get(input.id);
      const { people = [], stations = [] } = state.arrangement ?? {};
      return {
        night,
        events: [...events],
        people: people.map(({ id }) => ledger.people.get(id)),
        sheets: stations.map(({ sheet }) => ledger.sheets.get(sheet.id, sheet.version)),
      };
    }),
    append: nights.append.handler(({ input: { id, entry } }) => {
      const breaches = entry.kind === 'plan' ? breachesOf(id, entry.heats) : [];
      const unknown = breaches.find(({ rule }) => rule === 'unknown-name');
      if (unknown !== undefined) {
        throw new ORPCError('NOT_ALLOWED', { status: 403, message: unknown.message, data: { what: unknown.rule } });
      }
      return { events: book.append(id, entry), breaches };
    }),
    plan: nights.plan.handler(({ input, signal }) => thread.plan(input, until(signal))),
    check: nights.check.handler(({ input }) => breachesOf(input.id, input.heats)),
    watch: nights.watch.handler(async function* ({ input, signal }) {
      // Listening begins before reading: a batch written meanwhile comes twice, and the same event twice is one event.
      const coming = changes.watchNight(input.id, signal);
      yield { events: [...book.get(input.id).events] };
      yield* coming;
    }),
    board: nights.board.handler(({ input, signal }) => watchBoard(parts, book, input.id, signal)),
    debrief: nights.debrief.handler(({ input, signal }) => thread.debrief(input, until(signal))),
    export: nights.export.handler(({ input, signal }) => thread.export({ ...input, now: now() }, until(signal))),
  });
}

function lineOf({ ledger }: DeskParts, book: NightBook, id: string): NightLine {
  const { night, state } = book.get(id);
  const { people = [], stations = [] } = state.arrangement ?? {};
  return {
    night,
    phase: state.phase,
    athletes: people.filter(({ athlete }) => athlete).length,
    judges: people.filter(({ judge }) => judge).length,
    stations: stations.map(({ sheet }) => ledger.sheets.get(sheet.id, sheet.version).station),
    heats: state.heats.length,
    heatsClosed: state.heats.filter(({ phase }) => phase === 'closed').length,
  };
}
