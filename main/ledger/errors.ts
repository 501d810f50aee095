import { existsSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';

/**
 * What can go wrong with the ledger. `in-use`, `newer`, `not-ours`, `no-folder`, `not-a-file`, `read-only`, `full` and
 * `damaged` concern the file; the others concern what was asked of it.
 */
export type LedgerErrorCode =
  | 'in-use'
  | 'newer'
  | 'older'
  | 'not-ours'
  | 'no-folder'
  | 'not-a-file'
  | 'read-only'
  | 'full'
  | 'damaged'
  | 'disk'
  | 'closed'
  | 'conflict'
  | 'unknown-set'
  | 'unknown-person'
  | 'unknown-sheet'
  | 'unknown-copy'
  | 'unknown-drill'
  | 'unknown-night'
  | 'version-not-next'
  | 'bad-text'
  | 'migration-failed';

/** An error the program can tell its user: `message` is a whole sentence that names the file and says what to do. */
export class LedgerError extends Error {
  override readonly name = 'LedgerError';
  readonly code: LedgerErrorCode;

  constructor(code: LedgerErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.code = code;
  }
}

/** Turns what SQLite or the file system reports about the file at `path` into a `LedgerError`; passes others through. */
export function toLedgerError(error: unknown, path: string): unknown {
  if (error instanceof LedgerError) return error;
  const code = codeOf(error);
  if (code === null) return error;
  const told = wordsFor(code, path);
  return told === null ? error : new LedgerError(told[0], told[1], { cause: error });
}

function codeOf(error: unknown): string | null {
  // A flipped bit in the schema's own text shows up as a table or column that is not there.
  if (error instanceof Database.SqliteError) {
    return /^no such (table|column)/.test(error.message) ? 'SQLITE_CORRUPT' : error.code;
  }
  if (error instanceof TypeError && /database connection is not open/.test(error.message)) return 'CLOSED';
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') return error.code;
  return null;
}

function wordsFor(code: string, path: string): [LedgerErrorCode, string] | null {
  if (code === 'SQLITE_FULL' || code === 'ENOSPC' || code === 'EDQUOT') {
    return [
      'full',
      `There is no room left on the disk for ${path}. Nothing of the last step was kept; free some space and repeat it.`,
    ];
  }
  if (code.startsWith('SQLITE_CORRUPT') || code === 'SQLITE_NOTADB') {
    return [
      'damaged',
      `The database ${path} is damaged. Close the program and start it again: it will offer the last good copy and overwrite nothing.`,
    ];
  }
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) {
    return ['in-use', `The database ${path} is held by another program. Close that program and try again.`];
  }
  // SQLite says the same of a folder that is missing and of one that it may not use.
  const unusable = code.startsWith('SQLITE_CANTOPEN') && existsSync(dirname(path));
  if (unusable || code.startsWith('SQLITE_READONLY') || code === 'EROFS' || code === 'EACCES' || code === 'EPERM') {
    return [
      'read-only',
      `${path} may not be read or written. Give this user the right to write the file and its folder, or choose another folder.`,
    ];
  }
  if (code.startsWith('SQLITE_CANTOPEN') || code === 'ENOENT' || code === 'ENOTDIR') {
    return ['no-folder', `${path} cannot be opened. Check that its folder exists and that this user may write there.`];
  }
  if (code.startsWith('SQLITE_IOERR') || code === 'EIO' || code === 'EFBIG') {
    return [
      'disk',
      `The disk refused a read or a write of ${path}. Nothing of the last step was kept; check the disk, then repeat it.`,
    ];
  }
  if (code === 'CLOSED') return ['closed', `The database ${path} has been closed.`];
  return null;
}
