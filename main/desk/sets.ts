import { ORPCError } from '@orpc/server';
import type { SetFilter as ListFilter, SetLine, SetRecord } from '../../shared-types/contract/sets.ts';
import { foldSet } from '../../shared-types/log/fold.ts';
import { calledName } from '../../shared-types/people.ts';
import type { SetFilter } from '../ledger/filter.ts';
import type { SetCursor, SetRow } from '../ledger/set-list.ts';
import { appendEvents } from './append-events.ts';
import { calls, type DeskParts } from './calls.ts';
import { attemptsCsv } from './exports/csv.ts';
import { setsJson, setsJsonSchema } from './exports/json.ts';
import { type DeskReads, readRecord } from './record.ts';
import { ribbonText } from './ribbon-text.ts';
import { watchSet } from './watch-set.ts';

/** Sets that one export may hold; more is asked for in narrower filters. */
const MOST_EXPORTED = 5_000;

/** Answers the calls about sets and their logs. */
export function setsCalls({ ledger, changes, facts, now }: DeskParts) {
  return calls.sets.router({
    create: calls.sets.create.handler(({ input }) => {
      const outcome = ledger.sets.create(input);
      if (outcome === 'new') changes.changed('sets', input.id);
      return { outcome };
    }),
    append: calls.sets.append.handler(({ input }) => ({
      acknowledgements: appendEvents({ ledger, changes, facts }, input.events),
    })),
    get: calls.sets.get.handler(({ input }) => readRecord(ledger, input.id)),
    list: calls.sets.list.handler(({ input }) => {
      const after = input.after === null ? {} : { after: asCursor(input.after) };
      const page = ledger.sets.list({ filter: asFilter(input.filter), limit: input.limit, ...after });
      return {
        lines: lines(ledger, page.rows),
        total: page.total,
        next: page.next === null ? null : `${page.next.happenedAt} ${page.next.n}`,
      };
    }),
    unfinished: calls.sets.unfinished.handler(() =>
      ledger.sets.unfinished().flatMap(({ setup }) => {
        // The facts may lag behind the log; the log itself decides what still runs.
        const record = readRecord(ledger, setup.id);
        return foldSet(setup.id, record.events).phase === 'running' ? [unsummedLine(record)] : [];
      }),
    ),
    watch: calls.sets.watch.handler(({ input, signal }) => watchSet(ledger.log, changes, input.id, signal)),
    export: calls.sets.export.handler(({ input }) => {
      const day = new Date(now()).toISOString().slice(0, 10);
      if (input.format === 'json-schema') {
        return { fileName: 'sets.schema.json', mediaType: 'application/schema+json', text: setsJsonSchema() };
      }
      const records = (input.ids ?? idsOf(ledger, asFilter(input.filter))).map((id) => readRecord(ledger, id));
      return input.format === 'csv'
        ? { fileName: `attempts-${day}.csv`, mediaType: 'text/csv', text: attemptsCsv(records) }
        : { fileName: `sets-${day}.json`, mediaType: 'application/json', text: setsJson(records, now()) };
    }),
  });
}

function idsOf(ledger: DeskReads, filter: SetFilter): string[] {
  const ids: string[] = [];
  let after: SetCursor | undefined;
  do {
    const page = ledger.sets.list({ filter, limit: 500, ...(after === undefined ? {} : { after }) });
    if (page.total > MOST_EXPORTED) {
      const message = `${page.total} sets are more than one file holds (${MOST_EXPORTED}). Narrow the filter, by dates for example, and export in parts.`;
      throw new ORPCError('NOT_ALLOWED', { status: 403, message, data: { what: 'export' } });
    }
    ids.push(...page.rows.map((row) => row.setup.id));
    after = page.next ?? undefined;
  } while (after !== undefined);
  return ids;
}

function asCursor(text: string): SetCursor {
  const [happenedAt, n] = text.split(' ').map(Number);
  if (!Number.isSafeInteger(happenedAt) || !Number.isSafeInteger(n)) {
    const message = 'This is not the end of a page of sets; ask for the first page.';
    throw new ORPCError('BAD_REQUEST', { status: 400, message, data: { issues: [{ path: 'after', message }] } });
  }
  return { happenedAt: happenedAt ?? 0, n: n ?? 0 };
}

/** The filter of the contract as the ledger's. */
function asFilter(given: ListFilter): SetFilter {
  return {
    practice: ({ without: 'no', with: 'also', only: 'only' } as const)[given.practice ?? 'without'],
    ...(given.search === undefined ? {} : { search: given.search }),
    ...(given.athlete === undefined ? {} : { athletes: [given.athlete] }),
    ...(given.judge === undefined ? {} : { judges: [given.judge] }),
    ...(given.sheet === undefined ? {} : { sheets: [{ id: given.sheet }] }),
    ...(given.loadKg === undefined ? {} : { loadsKg: [given.loadKg] }),
    ...(given.before === undefined ? {} : { before: [given.before] }),
    ...(given.tag === undefined ? {} : { tags: [given.tag] }),
    ...(given.from === undefined ? {} : { from: given.from }),
    ...(given.to === undefined ? {} : { to: given.to }),
    ...(given.phase === undefined ? {} : { phases: [given.phase] }),
    ...(given.unexplained === undefined ? {} : { unexplained: given.unexplained }),
  };
}

function lines(ledger: DeskReads, rows: readonly SetRow[]): SetLine[] {
  const marks = ledger.ribbons.of(rows.map((row) => row.setup.id));
  return rows.map((row) => {
    // Not summed yet, a moment after go or while an older computation is being replaced: the log itself tells.
    if (row.appliedN === 0) return unsummedLine(readRecord(ledger, row.setup.id));
    const { id, version } = row.setup.sheet;
    return lineOf(row, ribbonText(ledger.sheets.get(id, version), marks.get(row.setup.id) ?? []));
  });
}

function lineOf({ setup, athlete, judge, station, facts }: SetRow, ribbon: string): SetLine {
  return {
    ...setupPart(setup),
    athlete: { id: setup.athlete, name: calledName(athlete) },
    judge: { id: setup.judge, name: calledName(judge) },
    sheet: { ...setup.sheet, station },
    phase: facts.phase,
    startedAt: facts.startedAt,
    clockMs: facts.clockMs,
    attempts: facts.attempts,
    counted: facts.counted,
    noReps: facts.noReps,
    unexplained: facts.unexplained,
    costS: facts.cost?.seconds ?? null,
    ribbon,
  };
}

function unsummedLine({ setup, athlete, judge, sheet, events }: SetRecord): SetLine {
  const state = foldSet(setup.id, events);
  const standing = state.attempts.filter((attempt) => !attempt.withdrawn);
  const noReps = standing.filter((attempt) => attempt.verdict === 'no-rep');
  return {
    ...setupPart(setup),
    athlete: { id: athlete.id, name: calledName(athlete) },
    judge: { id: judge.id, name: calledName(judge) },
    sheet: { ...setup.sheet, station: sheet.station },
    phase: state.phase,
    startedAt: state.startedAt,
    clockMs: state.endedAt ?? state.lastAt,
    attempts: standing.length,
    counted: standing.length - noReps.length,
    noReps: noReps.length,
    unexplained: noReps.filter((attempt) => attempt.faults.length === 0).length,
    costS: null,
    ribbon: ribbonText(sheet, standing),
  };
}

function setupPart(setup: SetRecord['setup']) {
  const { id, loadKg, heightM, before, tags, practice, createdAt } = setup;
  return { id, loadKg, heightM, before, tags, practice, createdAt };
}
