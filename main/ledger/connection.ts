import Database from 'better-sqlite3';
import { LedgerError, toLedgerError } from './errors.ts';
import type { Query } from './query.ts';

/** The mark in bytes 68 to 71 of the file that says it is ours: "PLMB". */
export const APPLICATION_ID = 0x504c4d42;

/** What a reader may do. A reader is never a writer: the two are told apart by type and by the connection itself. */
export interface ReadConnection {
  readonly path: string;
  all<Row>(query: Query<Row>): Row[];
  first<Row>(query: Query<Row>): Row | undefined;
  /** Rows as arrays, in the order of the query's columns. */
  rows(query: Query<unknown>): unknown[][];
  /** A prepared statement of SQL written by hand, for the hot paths. */
  prepare<Parameters extends unknown[], Row = unknown>(sql: string): Prepared<Parameters, Row>;
  pragma(source: string): unknown;
  close(): void;
}

export interface WriteConnection extends ReadConnection {
  readonly writes: true;
  run(query: Query<unknown>): { changes: number; id: number };
  /** Runs `work` as one transaction: all of it is durable when this returns, or nothing of it is there. */
  transaction<Result>(work: () => Result): Result;
  /** Rows changed on this connection since it was opened. */
  changes(): number;
  /** Copies the open database to a new file by SQLite's backup API, a few pages at a time between other work. */
  backup(to: string): Promise<void>;
}

export interface Prepared<Parameters extends unknown[], Row> {
  get(...values: Parameters): Row | undefined;
  all(...values: Parameters): Row[];
  run(...values: Parameters): { changes: number; id: number };
}

/** better-sqlite3 is built with NORMAL for WAL, so FULL has to be asked for again on every connection, and looked at. */
const WRITER_PRAGMAS: readonly [string, string | number][] = [
  ['journal_mode', 'wal'],
  ['synchronous', 2],
  ['foreign_keys', 1],
  ['recursive_triggers', 1],
  ['fullfsync', 1],
  ['checkpoint_fullfsync', 1],
];
const BUSY_MS = 5_000;
/** More different queries than a program has; a bound, so that searches with many terms cannot fill the memory. */
const MOST_STATEMENTS = 300;

/** Opens `path`, creating it if missing, and sets and checks the pragmas. Errors: `LedgerError` naming the path. */
export function openWriter(path: string): WriteConnection {
  return guard(path, () => {
    const database = new Database(path, { timeout: BUSY_MS });
    try {
      for (const [name, value] of WRITER_PRAGMAS) setPragma(database, name, value);
    } catch (error) {
      database.close();
      throw error;
    }
    return writer(path, database);
  });
}

/** Opens `path` for reading only; it must exist. `waitMs` bounds the wait for a lock. */
export function openReadOnly(path: string, waitMs = BUSY_MS): ReadConnection {
  return guard(path, () => {
    const database = new Database(path, { readonly: true, fileMustExist: true, timeout: waitMs });
    try {
      setPragma(database, 'query_only', 1);
    } catch (error) {
      database.close();
      throw error;
    }
    return reader(path, database);
  });
}

function setPragma(database: Database.Database, name: string, value: string | number): void {
  database.pragma(`${name} = ${value}`);
  const now = database.pragma(name, { simple: true });
  if (now !== value) throw new Error(`SQLite keeps ${name} at ${String(now)} where ${value} was asked for.`);
}

function guard<Result>(path: string, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    throw toLedgerError(error, path);
  }
}

function reader(path: string, database: Database.Database): ReadConnection {
  const statements = new Map<string, Database.Statement<unknown[], unknown>>();
  const statement = (sql: string) => {
    const known = statements.get(sql);
    if (known !== undefined) return known;
    if (statements.size >= MOST_STATEMENTS) statements.clear();
    const fresh = database.prepare<unknown[], unknown>(sql);
    statements.set(sql, fresh);
    return fresh;
  };
  return {
    path,
    // The row's type is Kysely's reading of the query; the columns are declared in tables.ts and checked by STRICT.
    all: <Row>(query: Query<Row>) =>
      guard(path, () => {
        const { sql, parameters } = query.compile();
        return statement(sql).all(...parameters) as Row[];
      }),
    first: <Row>(query: Query<Row>) =>
      guard(path, () => {
        const { sql, parameters } = query.compile();
        return statement(sql).get(...parameters) as Row | undefined;
      }),
    rows: (query) =>
      guard(path, () => {
        const { sql, parameters } = query.compile();
        return database
          .prepare<unknown[], unknown[]>(sql)
          .raw()
          .all(...parameters);
      }),
    prepare: (sql) => guard(path, () => prepared(path, database, sql)),
    pragma: (source) => guard(path, () => database.pragma(source, { simple: true })),
    close: () => guard(path, () => void database.close()),
  };
}

function writer(path: string, database: Database.Database): WriteConnection {
  const reads = reader(path, database);
  return {
    ...reads,
    writes: true,
    run: (query) =>
      guard(path, () => {
        const { sql, parameters } = query.compile();
        const { changes, lastInsertRowid } = database.prepare(sql).run(...parameters);
        return { changes, id: Number(lastInsertRowid) };
      }),
    changes: () => guard(path, () => Number(database.prepare('SELECT total_changes()').pluck().get())),
    transaction: (work) => guard(path, () => database.transaction(work).immediate()),
    backup: async (to) => {
      try {
        await database.backup(to);
      } catch (error) {
        throw database.open
          ? toLedgerError(error, to)
          : new LedgerError('closed', `The database ${path} was closed while it was being copied.`, { cause: error });
      }
    },
  };
}

function prepared<Parameters extends unknown[], Row>(
  path: string,
  database: Database.Database,
  sql: string,
): Prepared<Parameters, Row> {
  const objects = database.prepare<unknown[], Row>(sql);
  return {
    get: (...values) => guard(path, () => objects.get(...values)),
    all: (...values) => guard(path, () => objects.all(...values)),
    run: (...values) =>
      guard(path, () => {
        const { changes, lastInsertRowid } = objects.run(...values);
        return { changes, id: Number(lastInsertRowid) };
      }),
  };
}
