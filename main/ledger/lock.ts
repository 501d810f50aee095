import Database from 'better-sqlite3';
import { LedgerError, toLedgerError } from './errors.ts';

export interface Lock {
  release(): void;
}

/**
 * Takes the right to write the database at `path`, or throws `in-use`. The lock is an open exclusive transaction on an
 * empty database beside it: the operating system lets go of it when the process dies, however it dies, and readers of the
 * real database are not held up. `waitMs` leaves time for a program that is just closing.
 */
export function takeLock(path: string, waitMs: number): Lock {
  let database: Database.Database | null = null;
  try {
    database = new Database(`${path}-lock`, { timeout: waitMs });
    // Nothing is ever written, so no journal is needed on the disk.
    database.pragma('journal_mode = memory');
    database.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    database?.close();
    if (error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY')) {
      throw new LedgerError(
        'in-use',
        `The database ${path} is already open in another running Plumbline. Go on there, or close it first.`,
        { cause: error },
      );
    }
    throw toLedgerError(error, path);
  }
  const held = database;
  return { release: () => void held.close() };
}
