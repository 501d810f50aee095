import type { SetSetup } from '../../shared-types/log/setup.ts';
import type { ReadConnection } from './connection.ts';
import { asFacts, type FactColumns, factColumns, type SetFacts } from './facts.ts';
import { matching, type SetFilter } from './filter.ts';
import { build } from './query.ts';
import { checkedBody } from './rows.ts';

/** Where a page ended; hand it back for the next one. */
export interface SetCursor {
  readonly happenedAt: number;
  readonly n: number;
}

export interface SetPageRequest {
  readonly filter?: SetFilter;
  /** Rows a page, 1 to 500. */
  readonly limit: number;
  readonly after?: SetCursor;
}

interface Named {
  readonly name: string;
  readonly nickname: string;
}

export interface SetRow {
  readonly setup: SetSetup;
  /** The set's go, or its setup before go; milliseconds since 1970 UTC. */
  readonly happenedAt: number;
  readonly athlete: Named;
  readonly judge: Named;
  readonly station: string;
  readonly facts: SetFacts;
  /** Place in the log up to which `facts` were computed; 0 before the first time. */
  readonly appliedN: number;
}

export interface SetPage {
  readonly rows: readonly SetRow[];
  /** All sets that match, on every page together. */
  readonly total: number;
  /** Null on the last page. */
  readonly next: SetCursor | null;
}

export interface UnfinishedSet {
  readonly setup: SetSetup;
  /** Wall clock of the recording of its last event, milliseconds since 1970 UTC. */
  readonly lastRecordedAt: number;
}

const MOST_ROWS = 500;

export function listSets(connection: ReadConnection, request: SetPageRequest): SetPage {
  const filter = request.filter ?? {};
  const limit = Math.min(MOST_ROWS, Math.max(1, Math.trunc(request.limit)));
  let query = build
    .selectFrom('set_facts')
    .innerJoin('sets', 'sets.n', 'set_facts.set_n')
    .innerJoin('people as a', 'a.id', 'set_facts.athlete')
    .innerJoin('people as j', 'j.id', 'set_facts.judge')
    .innerJoin('sheets', (join) =>
      join.onRef('sheets.id', '=', 'set_facts.sheet_id').onRef('sheets.version', '=', 'set_facts.sheet_version'),
    )
    .select(factColumns)
    .select(['set_facts.set_n', 'happened_at', 'applied_n', 'sets.body', 'sets.crc', 'sheets.station'])
    .select(['a.name as a_name', 'a.nickname as a_nickname', 'j.name as j_name', 'j.nickname as j_nickname'])
    .where('set_facts.set_n', 'in', pageNumbers(filter, limit + 1, request.after))
    .orderBy('happened_at', 'desc')
    .orderBy('set_facts.set_n', 'desc');
  query = query.limit(limit + 1);
  const found = connection.all(query);
  const shown = found.slice(0, limit);
  const last = shown.at(-1);
  return {
    rows: shown.map((row) => asSetRow(row, connection.path)),
    total: countSets(connection, filter),
    next: found.length > limit && last !== undefined ? { happenedAt: last.happened_at, n: last.set_n } : null,
  };
}

/** The page is chosen on `set_facts` alone, along an index; only its few rows are joined with names. */
function pageNumbers(filter: SetFilter, limit: number, after: SetCursor | undefined) {
  let query = build.selectFrom('set_facts').select('set_facts.set_n').where(matching(filter));
  if (after !== undefined) {
    query = query.where((eb) =>
      eb(eb.refTuple('set_facts.happened_at', 'set_facts.set_n'), '<', eb.tuple(after.happenedAt, after.n)),
    );
  }
  return query.orderBy('set_facts.happened_at', 'desc').orderBy('set_facts.set_n', 'desc').limit(limit);
}

function countSets(connection: ReadConnection, filter: SetFilter): number {
  const query = build
    .selectFrom('set_facts')
    .select((eb) => eb.fn.countAll<number>().as('total'))
    .where(matching(filter));
  return connection.first(query)?.total ?? 0;
}

function asSetRow(
  row: FactColumns & {
    happened_at: number;
    applied_n: number;
    body: string;
    crc: number;
    station: string;
    a_name: string;
    a_nickname: string;
    j_name: string;
    j_nickname: string;
  },
  path: string,
): SetRow {
  return {
    setup: JSON.parse(checkedBody(row, 'The setup of a set', path)),
    happenedAt: row.happened_at,
    athlete: { name: row.a_name, nickname: row.a_nickname },
    judge: { name: row.j_name, nickname: row.j_nickname },
    station: row.station,
    facts: asFacts(row),
    appliedN: row.applied_n,
  };
}

/** Facts may lag behind a log, and a finish can be withdrawn: a set whose facts lag may be running, whatever they say. */
export function unfinishedSets(connection: ReadConnection): UnfinishedSet[] {
  return connection
    .prepare<[], { body: string; crc: number; last: number }>(
      `SELECT s.body, s.crc, e.recorded_at AS last
       FROM (SELECT set_n, last_n FROM set_facts WHERE phase IN ('ready', 'running') AND last_n > 0
             UNION SELECT set_n, last_n FROM set_facts WHERE applied_n < last_n) l
       JOIN sets s ON s.n = l.set_n JOIN events e ON e.n = l.last_n
       ORDER BY l.last_n DESC`,
    )
    .all()
    .map((row) => ({
      setup: JSON.parse(checkedBody(row, 'The setup of a set', connection.path)),
      lastRecordedAt: row.last,
    }));
}
