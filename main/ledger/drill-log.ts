import type { DrillEvent } from '../../shared-types/drills/events.ts';
import { canonicalJson } from './canonical.ts';
import type { ReadConnection, WriteConnection } from './connection.ts';
import { LedgerError } from './errors.ts';
import { DRILL_EVENT_COLUMNS, damagedRow, type EventRow, eventChecksum } from './rows.ts';

/** What became of one event of a drill. */
export type DrillAppended = 'new' | 'already' | 'conflict';

export interface DrillLogReads {
  /** The log of a drill in the order of recording. Errors: `unknown-drill`, `damaged`. */
  events(drill: string): DrillEvent[];
}

export interface DrillLog extends DrillLogReads {
  /**
   * Appends a batch as one transaction, by the rules of the log of sets. One outcome for each event, in order. Errors, with
   * nothing written: `unknown-drill`, `bad-text`, `full`, `disk`.
   */
  append(events: readonly DrillEvent[]): DrillAppended[];
}

export function drillLogReads(connection: ReadConnection): DrillLogReads {
  return {
    events: (drill) => {
      const number = drillNumber(connection, drill);
      return connection
        .prepare<[number], EventRow>(`SELECT ${DRILL_EVENT_COLUMNS} FROM drill_events WHERE drill_n = ? ORDER BY n`)
        .all(number)
        .map((row) => asEvent(drill, row, connection.path));
    },
  };
}

export function drillLogWrites(connection: WriteConnection, now: () => number): DrillLog {
  const byName = connection.prepare<[string, number], EventRow>(
    `SELECT ${DRILL_EVENT_COLUMNS} FROM drill_events WHERE pad = ? AND seq = ?`,
  );
  const insert = connection.prepare<[number, string, number, number, string, string, number, number]>(
    `INSERT INTO drill_events (drill_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (pad, seq) DO NOTHING`,
  );
  const appendOne = (event: DrillEvent, recordedAt: number): DrillAppended => {
    const drillN = drillNumber(connection, event.drill);
    if (!event.pad.isWellFormed()) throw new LedgerError('bad-text', 'The name of a pad must be well-formed text.');
    const { drill: _drill, pad, seq, at, kind, ...rest } = event;
    const row = { set_n: drillN, pad, seq, at, kind, body: canonicalJson(rest) };
    const { changes } = insert.run(drillN, pad, seq, at, kind, row.body, eventChecksum(row), recordedAt);
    if (changes === 1) return 'new';
    const stored = byName.get(pad, seq);
    if (stored === undefined) throw damagedRow(`Event ${seq} of pad ${pad}`, connection.path);
    const same = stored.set_n === drillN && stored.at === at && stored.kind === kind && stored.body === row.body;
    return same ? 'already' : 'conflict';
  };
  return {
    ...drillLogReads(connection),
    append: (events) => {
      const recordedAt = now();
      return connection.transaction(() => events.map((event) => appendOne(event, recordedAt)));
    },
  };
}

function drillNumber(connection: ReadConnection, drill: string): number {
  const row = connection.prepare<[string], { n: number }>('SELECT n FROM drills WHERE id = ?').get(drill);
  if (row === undefined) throw unknownDrill(drill, connection.path);
  return row.n;
}

/** The event that a row holds. Only events that the schema of drills has let in are ever written, so the type stands. */
function asEvent(drill: string, row: EventRow, path: string): DrillEvent {
  if (eventChecksum(row) !== row.crc) throw damagedRow(`Event ${row.seq} of pad ${row.pad}`, path);
  const { pad, seq, at, kind } = row;
  return { drill, pad, seq, at, kind, ...JSON.parse(row.body) } as DrillEvent;
}

export function unknownDrill(id: string, path: string): LedgerError {
  return new LedgerError('unknown-drill', `The database ${path} has no drill ${id}.`);
}
