import { existsSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { openReadOnly, openWriter } from './connection.ts';
import { listCopies, takeCopy } from './copies.ts';
import { type DamagedLedger, damagedLedger } from './damaged.ts';
import { LedgerError, toLedgerError } from './errors.ts';
import { COMPANIONS, syncFolder, usablePath } from './files.ts';
import { type Depth, inspect } from './inspect.ts';
import { type Ledger, type LedgerReader, ledgerOn, readerOn } from './ledger.ts';
import { type Lock, takeLock } from './lock.ts';
import { type MigrateOptions, migrate } from './migrate.ts';
import { SCHEMA_VERSION } from './migrations/list.ts';

export interface OpenOptions extends MigrateOptions {
  /** Milliseconds since 1970 UTC; `Date.now` by default. */
  readonly now?: () => number;
  /** How long to wait for a program that is just closing, in milliseconds; half a second by default. */
  readonly lockWaitMs?: number;
}

/** Read whole in about a third of a second on a small machine. */
const SMALL_BYTES = 32 * 1024 * 1024;

export type Opened = { readonly state: 'open'; readonly ledger: Ledger } | DamagedLedger;

/**
 * Opens the database at `path` for this process alone, creating it where there is none and bringing an older one up to date
 * (a checked copy is taken first). A damaged or vanished one is answered as `damaged`, untouched, with what can be done.
 * Errors: `in-use`, `newer`, `not-ours`, `no-folder`, `not-a-file`, `read-only`, `full`, `disk`, `migration-failed`.
 */
export async function openLedger(path: string, options: OpenOptions = {}): Promise<Opened> {
  const real = usablePath(path);
  const now = options.now ?? Date.now;
  const lock = takeLock(real, options.lockWaitMs ?? 500);
  try {
    const problems = ready(real, now, options);
    if (problems.length > 0) {
      return await damagedLedger(real, problems, lock, () => createEmpty(real, now, options), now);
    }
    return { state: 'open', ledger: await openCurrent(real, lock, now, options) };
  } catch (error) {
    lock.release();
    throw toLedgerError(error, real);
  }
}

/** Opens a database that a `Ledger` of this program holds open, for reading only. Errors: `newer`, `older`, `not-ours`. */
export function openReader(path: string): LedgerReader {
  const connection = openReadOnly(path);
  try {
    const version = Number(connection.pragma('user_version'));
    if (version > SCHEMA_VERSION) throw newer(path);
    if (version < SCHEMA_VERSION) {
      throw new LedgerError('older', `The database ${path} is older than this program. Open it for writing first.`);
    }
    return readerOn(connection);
  } catch (error) {
    connection.close();
    throw error;
  }
}

/** Makes sure that there is a database of ours at `path`; what speaks against it is returned in words. */
function ready(path: string, now: () => number, options: MigrateOptions): readonly string[] {
  if (!existsSync(path)) {
    const traces = COMPANIONS.some((companion) => existsSync(path + companion)) || listCopies(path).length > 0;
    if (traces) return ['the database is not there, though what belongs to it is'];
    createEmpty(path, now, options);
    return [];
  }
  const found = inspect(path, depthFor(path));
  if (found.kind === 'damaged') return found.problems;
  if (found.kind === 'not-ours') {
    // With copies of ours beside it, a file without our mark is more likely damaged than another program's.
    if (listCopies(path).length > 0) return [found.why];
    throw new LedgerError(
      'not-ours',
      `${path} is a database, but ${found.why}. It was left alone; choose another file for Plumbline.`,
    );
  }
  if (found.version > SCHEMA_VERSION) throw newer(path);
  return [];
}

/**
 * A start must not take seconds: a small file is always read whole; a large one only when the last program did not close it,
 * as its -wal shows. The daily copy, which is read whole in a thread of its own, finds the rest.
 */
function depthFor(path: string): Depth {
  if (statSync(path).size <= SMALL_BYTES) return 'integrity';
  return existsSync(`${path}-wal`) ? 'quick' : 'opening';
}

/** Built beside its place and renamed into it when complete, so that an empty file always means damage. */
function createEmpty(path: string, now: () => number, options: MigrateOptions): void {
  const fresh = `${path}.new`;
  const clear = () => {
    for (const companion of ['', ...COMPANIONS]) rmSync(fresh + companion, { force: true });
  };
  clear();
  try {
    const connection = openWriter(fresh);
    try {
      migrate(connection, now(), options);
    } finally {
      connection.close();
    }
    renameSync(fresh, path);
    syncFolder(dirname(path));
  } catch (error) {
    clear();
    throw error;
  }
}

async function openCurrent(path: string, lock: Lock, now: () => number, options: MigrateOptions): Promise<Ledger> {
  const connection = openWriter(path);
  try {
    if (Number(connection.pragma('user_version')) < SCHEMA_VERSION) {
      await takeCopy(connection, 'migration', now());
      migrate(connection, now(), options);
    }
    return ledgerOn(connection, lock, now);
  } catch (error) {
    connection.close();
    throw error;
  }
}

function newer(path: string): LedgerError {
  return new LedgerError(
    'newer',
    `The database ${path} was written by a newer Plumbline. Install that version or a later one; nothing was changed.`,
  );
}
