import { checksum } from './canonical.ts';
import type { ReadConnection } from './connection.ts';
import { LedgerError } from './errors.ts';

/** A row of `events` as it is stored; `body` holds the fields that have no column of their own. */
export interface EventRow {
  readonly n: number;
  readonly set_n: number;
  readonly pad: string;
  readonly seq: number;
  readonly at: number;
  readonly kind: string;
  readonly body: string;
  readonly crc: number;
}

export const EVENT_COLUMNS = 'n, set_n, pad, seq, at, kind, body, crc';
/** The columns of the other logs under the names of `events`, so that all are checked alike. */
export const DRILL_EVENT_COLUMNS = 'n, drill_n AS set_n, pad, seq, at, kind, body, crc';
export const NIGHT_EVENT_COLUMNS = 'n, night_n AS set_n, pad, seq, at, kind, body, crc';

export function eventChecksum(row: Omit<EventRow, 'n' | 'crc'>): number {
  return checksum(`${row.set_n}\n${row.pad}\n${row.seq}\n${row.at}\n${row.kind}\n${row.body}`);
}

/** The body of a sheet or of a setup, once its checksum is right. Errors: `damaged`. */
export function checkedBody(row: { body: string; crc: number }, what: string, path: string): string {
  if (checksum(row.body) !== row.crc) throw damagedRow(what, path);
  return row.body;
}

export function damagedRow(what: string, path: string): LedgerError {
  return new LedgerError(
    'damaged',
    `${what} in ${path} is not as it was written: the disk or another program has changed it. Restore the last good copy.`,
  );
}

const ROWS_AT_ONCE = 5_000;

/** Compares every record that carries a checksum with it; one phrase for each table with damage. */
export function rowProblems(connection: ReadConnection): string[] {
  const tables: [string, string, (row: EventRow) => boolean][] = [
    ['events', EVENT_COLUMNS, (row) => eventChecksum(row) === row.crc],
    ['sets', 'n, body, crc', (row) => checksum(row.body) === row.crc],
    ['sheets', 'n, body, crc', (row) => checksum(row.body) === row.crc],
    ['drill_events', DRILL_EVENT_COLUMNS, (row) => eventChecksum(row) === row.crc],
    ['night_events', NIGHT_EVENT_COLUMNS, (row) => eventChecksum(row) === row.crc],
    ['nights', 'n, body, crc', (row) => checksum(row.body) === row.crc],
    ['drills', 'n, body, crc', (row) => checksum(row.body) === row.crc],
  ];
  const there = connection.prepare<[string]>("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?");
  return tables.flatMap(([table, columns, matches]) => {
    // A copy taken by an older version has fewer tables.
    if (there.get(table) === undefined) return [];
    const page = connection.prepare<[number], EventRow>(
      `SELECT ${columns} FROM ${table} WHERE n > ? ORDER BY n LIMIT ${ROWS_AT_ONCE}`,
    );
    let wrong = 0;
    for (let rows = page.all(0), last = 0; rows.length > 0; rows = page.all(last)) {
      wrong += rows.filter((row) => !matches(row)).length;
      last = rows.at(-1)?.n ?? Number.MAX_SAFE_INTEGER;
    }
    return wrong === 0 ? [] : [`${wrong} rows of ${table} are not as they were written`];
  });
}
