import type { SetEvent } from '../../shared-types/log/events.ts';
import { canonicalJson } from './canonical.ts';
import type { ReadConnection, WriteConnection } from './connection.ts';
import { LedgerError } from './errors.ts';
import { damagedRow, EVENT_COLUMNS, type EventRow, eventChecksum } from './rows.ts';

/** What became of one event: written now, there already to the byte, or refused because its name carries other contents. */
export type Appended =
  | { readonly outcome: 'new'; readonly n: number }
  | { readonly outcome: 'already'; readonly n: number }
  | { readonly outcome: 'conflict'; readonly kept: SetEvent };

/** An event with its place in this database and the wall clock of its recording. */
export interface Recorded {
  readonly n: number;
  readonly recordedAt: number;
  readonly event: SetEvent;
}

export interface LogReads {
  /** The log of a set in the order of recording. Errors: `unknown-set`, `damaged`. */
  events(set: string): SetEvent[];
  /** Up to `limit` events of all sets after place `n`, in the order of recording. */
  after(n: number, limit: number): Recorded[];
  /** The highest running number this database has of a pad; 0 where it has none. */
  lastSeq(pad: string): number;
  /** The place of the last event of all; 0 in an empty database. */
  lastN(): number;
}

export interface Log extends LogReads {
  /**
   * Appends a batch as one transaction; when this returns, it is on the disk. One outcome for each event, in order. A
   * conflicting event is not written; the others are. Errors, with nothing written: `unknown-set`, `bad-text`, `full`,
   * `disk`.
   */
  append(events: readonly SetEvent[]): Appended[];
}

type StoredRow = EventRow & { set_id: string; recorded_at: number };

const STORED = `SELECT ${EVENT_COLUMNS.split(', ')
  .map((column) => `e.${column}`)
  .join(', ')}, e.recorded_at, s.id AS set_id FROM events e JOIN sets s ON s.n = e.set_n`;

export function logReads(connection: ReadConnection): LogReads {
  const setNumber = connection.prepare<[string], { n: number }>('SELECT n FROM sets WHERE id = ?');
  const ofSet = connection.prepare<[number], StoredRow>(`${STORED} WHERE e.set_n = ? ORDER BY e.n`);
  const after = connection.prepare<[number, number], StoredRow>(`${STORED} WHERE e.n > ? ORDER BY e.n LIMIT ?`);
  const lastSeq = connection.prepare<[string], { seq: number | null }>(
    'SELECT max(seq) AS seq FROM events WHERE pad = ?',
  );
  const lastN = connection.prepare<[], { n: number | null }>('SELECT max(n) AS n FROM events');
  return {
    events: (set) => {
      const row = setNumber.get(set);
      if (row === undefined) throw unknownSet(set, connection.path);
      return ofSet.all(row.n).map((stored) => asEvent(stored, connection.path));
    },
    after: (n, limit) =>
      after
        .all(n, limit)
        .map((row) => ({ n: row.n, recordedAt: row.recorded_at, event: asEvent(row, connection.path) })),
    lastSeq: (pad) => lastSeq.get(pad)?.seq ?? 0,
    lastN: () => lastN.get()?.n ?? 0,
  };
}

export function logWrites(connection: WriteConnection, now: () => number): Log {
  const setNumber = connection.prepare<[string], { n: number }>('SELECT n FROM sets WHERE id = ?');
  const byName = connection.prepare<[string, number], StoredRow>(`${STORED} WHERE e.pad = ? AND e.seq = ?`);
  const insert = connection.prepare<[number, string, number, number, string, string, number, number]>(
    `INSERT INTO events (set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (pad, seq) DO NOTHING`,
  );
  const lastEvent = connection.prepare<[number, number]>('UPDATE set_facts SET last_n = ? WHERE set_n = ?');
  const appendOne = (event: SetEvent, recordedAt: number): Appended => {
    const setN = setNumber.get(event.set)?.n;
    if (setN === undefined) throw unknownSet(event.set, connection.path);
    if (!event.pad.isWellFormed()) throw new LedgerError('bad-text', 'The name of a pad must be well-formed text.');
    const { set: _set, pad, seq, at, kind, ...rest } = event;
    const row = { set_n: setN, pad, seq, at, kind, body: canonicalJson(rest) };
    const { changes, id } = insert.run(setN, pad, seq, at, kind, row.body, eventChecksum(row), recordedAt);
    if (changes === 1) {
      lastEvent.run(id, setN);
      return { outcome: 'new', n: id };
    }
    const stored = byName.get(pad, seq);
    if (stored === undefined) throw damagedRow(`Event ${seq} of pad ${pad}`, connection.path);
    const same = stored.set_n === setN && stored.at === at && stored.kind === kind && stored.body === row.body;
    return same ? { outcome: 'already', n: stored.n } : { outcome: 'conflict', kept: asEvent(stored, connection.path) };
  };
  return {
    ...logReads(connection),
    append: (events) => {
      const recordedAt = now();
      return connection.transaction(() => events.map((event) => appendOne(event, recordedAt)));
    },
  };
}

/** The event that a row holds. Only events that the schema of the log has let in are ever written, so the type stands. */
function asEvent(row: StoredRow, path: string): SetEvent {
  if (eventChecksum(row) !== row.crc) throw damagedRow(`Event ${row.seq} of pad ${row.pad}`, path);
  const { set_id: set, pad, seq, at, kind } = row;
  return { set, pad, seq, at, kind, ...JSON.parse(row.body) } as SetEvent;
}

export function unknownSet(set: string, path: string): LedgerError {
  return new LedgerError('unknown-set', `The database ${path} has no set ${set}.`);
}
