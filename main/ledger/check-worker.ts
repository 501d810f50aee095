import { parentPort, workerData } from 'node:worker_threads';
import Database from 'better-sqlite3';
import { LedgerError, toLedgerError } from './errors.ts';
import { type Depth, inspect } from './inspect.ts';

/** What the thread is asked: to look at a file nobody has open; `seal` first makes a fresh copy one file without a -wal. */
export interface CheckRequest {
  readonly path: string;
  readonly depth: Depth;
  readonly seal: boolean;
}

function seal(path: string): void {
  const database = new Database(path);
  try {
    database.pragma('journal_mode = delete');
    // The original is open while it is copied; the copy is not.
    if (database.prepare(`SELECT 1 FROM sqlite_schema WHERE name = 'sessions'`).get() !== undefined) {
      database.exec('UPDATE sessions SET closed_at = opened_at WHERE closed_at IS NULL');
    }
  } finally {
    database.close();
  }
}

function answer({ path, depth, seal: sealing }: CheckRequest) {
  try {
    if (sealing) seal(path);
    return { inspection: inspect(path, depth) };
  } catch (error) {
    const told = toLedgerError(error, path);
    // An error loses its class on the way between threads; its code and its sentence are carried by hand.
    if (told instanceof LedgerError) return { error: { code: told.code, message: told.message } };
    throw error;
  }
}

parentPort?.postMessage(answer(workerData));
