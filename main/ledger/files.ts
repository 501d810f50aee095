import { accessSync, closeSync, constants, existsSync, fsyncSync, openSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { LedgerError, toLedgerError } from './errors.ts';

/** What SQLite keeps beside a database; they travel together or not at all. */
export const COMPANIONS = ['-wal', '-shm', '-journal'] as const;

/**
 * The real path of a database whose folder exists and may be written; links are followed, so that one file has one name and
 * one lock. Errors: `no-folder`, `not-a-file`, `read-only`.
 */
export function usablePath(given: string): string {
  const absolute = resolve(given);
  const folder = dirname(absolute);
  if (!existsSync(folder) || !statSync(folder).isDirectory()) {
    throw new LedgerError(
      'no-folder',
      `The folder ${folder} is not there. Create it, or choose another folder for the database.`,
    );
  }
  const path = existsSync(absolute) ? realpathSync(absolute) : join(realpathSync(folder), basename(absolute));
  if (existsSync(path) && !statSync(path).isFile()) {
    throw new LedgerError('not-a-file', `${path} is not a file. Choose another name for the database.`);
  }
  try {
    accessSync(dirname(path), constants.W_OK | constants.R_OK);
    if (existsSync(path)) accessSync(path, constants.W_OK | constants.R_OK);
  } catch (error) {
    throw toLedgerError(error, path);
  }
  return path;
}

/** Makes a rename or a new file in `folder` durable. Windows cannot open a folder and does not need it. */
export function syncFolder(folder: string): void {
  if (process.platform !== 'win32') syncPath(folder, 'r');
}

export function syncFile(path: string): void {
  syncPath(path, 'r+');
}

function syncPath(path: string, flags: string): void {
  const handle = openSync(path, flags);
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** A moment as part of a file name, in UTC: 2026-11-25T10-30-00Z. */
export function stamp(at: number): string {
  return new Date(at)
    .toISOString()
    .replace(/\.\d+Z$/, 'Z')
    .replaceAll(':', '-');
}

/** `name`, or `name-2`, `name-3`, … where that is taken. */
export function freeName(taken: (name: string) => boolean, name: string): string {
  let free = name;
  for (let number = 2; taken(free); number += 1) free = `${name}-${number}`;
  return free;
}
