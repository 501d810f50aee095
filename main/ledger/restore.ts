import { copyFileSync, existsSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { check } from './check.ts';
import { openReadOnly, type ReadConnection } from './connection.ts';
import { type Copy, findCopy } from './copies.ts';
import { LedgerError, toLedgerError } from './errors.ts';
import { COMPANIONS, freeName, stamp, syncFile, syncFolder } from './files.ts';
import { SCHEMA_VERSION } from './migrations/list.ts';

/** How much a database holds. */
export interface Holdings {
  readonly people: number;
  readonly sheets: number;
  readonly sets: number;
  readonly events: number;
  /** Wall clock of the last recording, milliseconds since 1970 UTC; null in an empty log. */
  readonly lastRecordedAt: number | null;
}

export function holdings(connection: ReadConnection): Holdings {
  const row = connection
    .prepare<[], Holdings>(
      `SELECT (SELECT count(*) FROM people) AS people, (SELECT count(*) FROM sheets) AS sheets,
              (SELECT count(*) FROM sets) AS sets, (SELECT count(*) FROM events) AS events,
              (SELECT recorded_at FROM events ORDER BY n DESC LIMIT 1) AS lastRecordedAt`,
    )
    .get();
  if (row === undefined) throw new LedgerError('damaged', `The database ${connection.path} gives no answer.`);
  return row;
}

/** What a copy holds, whatever the version it was taken by. Errors: `unknown-copy`, `damaged`. */
export function holdingsOfCopy(path: string, copy: string): Holdings {
  const connection = openReadOnly(findCopy(path, copy).path);
  try {
    return holdings(connection);
  } finally {
    connection.close();
  }
}

/** The copy, once all of it has been read and found sound. Errors: `unknown-copy`, `damaged`, `newer`. */
export async function soundCopy(path: string, copy: string): Promise<Copy> {
  const found = findCopy(path, copy);
  const inspection = await check({ path: found.path, depth: 'full', seal: false });
  if (inspection.kind !== 'ours') {
    throw new LedgerError('damaged', `The copy ${found.path} is not sound. Choose another one.`);
  }
  if (inspection.version > SCHEMA_VERSION) {
    throw new LedgerError(
      'newer',
      `The copy ${found.path} was taken by a newer Plumbline. Install that version to restore it.`,
    );
  }
  return found;
}

/**
 * Puts a sound copy in the place of the database at `path`, which nobody may have open, in one atomic step: before it the old
 * file is there whole, after it the new one. Errors: `in-use` while a -wal shows that a reader is still open, `full`.
 */
export function putInPlace(path: string, copy: Copy): void {
  const fresh = `${path}.restoring`;
  if (COMPANIONS.some((companion) => existsSync(path + companion))) {
    throw new LedgerError('in-use', `A part of the program still reads ${path}. Close its reports and restore again.`);
  }
  try {
    rmSync(fresh, { force: true });
    copyFileSync(copy.path, fresh);
    syncFile(fresh);
    renameSync(fresh, path);
    syncFolder(dirname(path));
  } catch (error) {
    rmSync(fresh, { force: true });
    throw toLedgerError(error, path);
  }
}

/** Renames the database with everything that belongs to it; returns the new name. Nothing is deleted. */
export function setAside(path: string, at: number): string {
  const aside = freeName((name) => existsSync(name), `${path}.damaged-${stamp(at)}`);
  try {
    for (const companion of ['', ...COMPANIONS]) {
      if (existsSync(path + companion)) renameSync(path + companion, aside + companion);
    }
    syncFolder(dirname(path));
  } catch (error) {
    throw toLedgerError(error, path);
  }
  return aside;
}
