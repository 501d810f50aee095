import type { ExpressionBuilder } from 'kysely';
import type { Drill, DrillKind } from '../../shared-types/drills/drill.ts';
import { canonicalJson, checksum } from './canonical.ts';
import type { ReadConnection, WriteConnection } from './connection.ts';
import { type DrillLog, type DrillLogReads, drillLogReads, drillLogWrites, unknownDrill } from './drill-log.ts';
import { LedgerError } from './errors.ts';
import { build } from './query.ts';
import { checkedBody } from './rows.ts';
import type { Tables } from './tables.ts';

/** Which drills are meant; an absent field does not narrow. Milliseconds since 1970 UTC, `to` exclusive. */
export interface DrillFilter {
  readonly ids?: readonly string[];
  readonly judge?: string;
  readonly sheet?: string;
  readonly kind?: DrillKind;
  readonly from?: number;
  readonly to?: number;
  readonly practice?: 'no' | 'also' | 'only';
}

/** Where a page ended; hand it back for the next one. */
export interface DrillCursor {
  readonly createdAt: number;
  readonly n: number;
}

export interface DrillPage {
  readonly drills: readonly Drill[];
  /** All drills that match, on every page together. */
  readonly total: number;
  /** Null on the last page. */
  readonly next: DrillCursor | null;
}

export interface DrillReads extends DrillLogReads {
  /** Errors: `unknown-drill`, `damaged`. */
  get(id: string): Drill;
  /** The drills that match, latest first, a page at a time. */
  list(request: { readonly filter: DrillFilter; readonly limit: number; readonly after?: DrillCursor }): DrillPage;
}

export interface Drills extends DrillReads, DrillLog {
  /**
   * Records a drill. `already` where the same one is there to the byte. Errors: `conflict` where the id carries another
   * drill, `unknown-person`, `unknown-sheet`.
   */
  create(drill: Drill): 'new' | 'already';
}

export function drillReads(connection: ReadConnection): DrillReads {
  return {
    ...drillLogReads(connection),
    get: (id) => {
      const row = connection.first(build.selectFrom('drills').select(['body', 'crc']).where('id', '=', id));
      if (row === undefined) throw unknownDrill(id, connection.path);
      return asDrill(id, row, connection.path);
    },
    list: ({ filter, limit, after }) => {
      const where = matching(filter);
      let query = build.selectFrom('drills').select(['n', 'id', 'created_at', 'body', 'crc']).where(where);
      if (after !== undefined) {
        query = query.where((eb) => eb(eb.refTuple('created_at', 'n'), '<', eb.tuple(after.createdAt, after.n)));
      }
      const found = connection.all(
        query
          .orderBy('created_at', 'desc')
          .orderBy('n', 'desc')
          .limit(limit + 1),
      );
      const shown = found.slice(0, limit);
      const last = shown.at(-1);
      const counted = build
        .selectFrom('drills')
        .select((eb) => eb.fn.countAll<number>().as('total'))
        .where(where);
      return {
        drills: shown.map((row) => asDrill(row.id, row, connection.path)),
        total: connection.first(counted)?.total ?? 0,
        next: found.length > limit && last !== undefined ? { createdAt: last.created_at, n: last.n } : null,
      };
    },
  };
}

function matching(filter: DrillFilter) {
  return (eb: ExpressionBuilder<Tables, 'drills'>) => {
    const practice = filter.practice ?? 'no';
    return eb.and([
      ...(filter.ids === undefined ? [] : [eb('id', 'in', filter.ids.length === 0 ? [''] : filter.ids)]),
      ...(filter.judge === undefined ? [] : [eb('judge', '=', filter.judge)]),
      ...(filter.sheet === undefined ? [] : [eb('sheet_id', '=', filter.sheet)]),
      ...(filter.kind === undefined ? [] : [eb('kind', '=', filter.kind)]),
      ...(filter.from === undefined ? [] : [eb('created_at', '>=', filter.from)]),
      ...(filter.to === undefined ? [] : [eb('created_at', '<', filter.to)]),
      ...(practice === 'also' ? [] : [eb('practice', '=', practice === 'only' ? 1 : 0)]),
    ]);
  };
}

function asDrill(id: string, row: { body: string; crc: number }, path: string): Drill {
  return JSON.parse(checkedBody(row, `The drill ${id}`, path));
}

export function drillWrites(connection: WriteConnection, now: () => number): Drills {
  return {
    ...drillReads(connection),
    ...drillLogWrites(connection, now),
    create: (drill) => connection.transaction(() => createDrill(connection, drill)),
  };
}

function createDrill(connection: WriteConnection, drill: Drill): 'new' | 'already' {
  const body = canonicalJson(drill);
  const stored = connection.first(build.selectFrom('drills').select('body').where('id', '=', drill.id));
  if (stored !== undefined) {
    if (stored.body === body) return 'already';
    throw new LedgerError('conflict', `The drill ${drill.id} is already there and differs. A drill never changes.`);
  }
  if (connection.first(build.selectFrom('people').select('n').where('id', '=', drill.judge)) === undefined) {
    throw new LedgerError('unknown-person', `The database ${connection.path} has no person ${drill.judge}.`);
  }
  const { id: sheetId, version } = drill.sheet;
  const sheet = build.selectFrom('sheets').select('n').where('id', '=', sheetId).where('version', '=', version);
  if (connection.first(sheet) === undefined) {
    throw new LedgerError(
      'unknown-sheet',
      `The database ${connection.path} has no standard sheet ${sheetId}, version ${version}.`,
    );
  }
  connection.run(
    build.insertInto('drills').values({
      id: drill.id,
      judge: drill.judge,
      kind: drill.task.kind,
      sheet_id: sheetId,
      sheet_version: version,
      practice: Number(drill.practice),
      created_at: drill.createdAt,
      body,
      crc: checksum(body),
    }),
  );
  return 'new';
}
