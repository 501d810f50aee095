import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { check } from './check.ts';
import type { WriteConnection } from './connection.ts';
import { LedgerError, toLedgerError } from './errors.ts';
import { COMPANIONS, freeName, stamp, syncFile, syncFolder } from './files.ts';
import { toRotateOut } from './rotation.ts';

/** Why a copy was taken: by the day, because somebody asked, before a migration, or before a restore. */
export type CopyKind = 'daily' | 'asked' | 'migration' | 'restore';

export interface Copy {
  readonly path: string;
  readonly kind: CopyKind;
  /** Milliseconds since 1970 UTC, to the second. */
  readonly takenAt: number;
  readonly bytes: number;
}

const NAME = /^(\d{4}-\d{2}-\d{2})T(\d{2})-(\d{2})-(\d{2})Z-(daily|asked|migration|restore)(?:-\d+)?\.db$/;

/** The folder of the copies of the database at `path`, beside it. */
function copiesFolder(path: string): string {
  return `${path}-copies`;
}

/** The copies of the database at `path`, newest first, whether or not that database is still there. */
export function listCopies(path: string): Copy[] {
  const folder = copiesFolder(path);
  if (!existsSync(folder)) return [];
  const copies = readdirSync(folder).flatMap((name): Copy[] => {
    const match = NAME.exec(name);
    if (match === null) return [];
    const [, day, hour, minute, second, kind] = match;
    const takenAt = Date.parse(`${day}T${hour}:${minute}:${second}Z`);
    const file = join(folder, name);
    return [{ path: file, kind: kind as CopyKind, takenAt, bytes: statSync(file).size }];
  });
  return copies.sort((one, other) => other.takenAt - one.takenAt || (other.path > one.path ? 1 : -1));
}

/**
 * Copies the open database beside it by SQLite's backup API, checks the copy by opening and reading all of it, and only
 * then gives it its name. `at` is now, in milliseconds since 1970 UTC. Errors, with no copy left behind: `full`,
 * `read-only`, `disk`, `damaged` (the database itself is, then: the copy says how).
 */
export async function takeCopy(connection: WriteConnection, kind: CopyKind, at: number): Promise<Copy> {
  const folder = copiesFolder(connection.path);
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw toLedgerError(error, folder);
  }
  const base = freeName((name) => existsSync(join(folder, `${name}.db`)), `${stamp(at)}-${kind}`);
  const path = join(folder, `${base}.db`);
  await copyChecked(connection, path);
  return { path, kind, takenAt: Math.floor(at / 1000) * 1000, bytes: statSync(path).size };
}

/** As `takeCopy`, to a file of the caller's choice, which must not exist. Errors: also `conflict` where it does. */
export async function copyChecked(connection: WriteConnection, path: string): Promise<void> {
  if (!existsSync(dirname(path))) {
    throw new LedgerError('no-folder', `The folder of ${path} is not there. Create it, or choose another one.`);
  }
  if (existsSync(path))
    throw new LedgerError('conflict', `${path} is already there. Choose another name for the copy.`);
  const part = `${path}.part`;
  try {
    removeDatabase(part);
    await connection.backup(part);
    const found = await check({ path: part, depth: 'full', seal: true });
    if (found.kind !== 'ours') {
      const problems = found.kind === 'damaged' ? found.problems.join('; ') : found.why;
      throw new LedgerError(
        'damaged',
        `The copy of ${connection.path} is not sound (${problems}), so it was not kept. Restore the last good copy.`,
      );
    }
    syncFile(part);
    renameSync(part, path);
    syncFolder(dirname(path));
  } catch (error) {
    removeDatabase(part);
    throw toLedgerError(error, path);
  }
}

/** Removes daily copies that newer ones have made needless by now (`at`); of the other kinds none. */
export function rotate(path: string, at: number): Copy[] {
  const out = toRotateOut(listCopies(path), at);
  for (const copy of out) rmSync(copy.path, { force: true });
  return out;
}

/** The copy of that name. Errors: `unknown-copy`, so that no path from outside is ever opened. */
export function findCopy(path: string, copy: string): Copy {
  const found = listCopies(path).find((item) => item.path === copy || basename(item.path) === copy);
  if (found === undefined) {
    throw new LedgerError('unknown-copy', `There is no copy ${basename(copy)} of ${path}. Choose one from the list.`);
  }
  return found;
}

function removeDatabase(path: string): void {
  for (const companion of ['', ...COMPANIONS]) rmSync(path + companion, { force: true });
}
