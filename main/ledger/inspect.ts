import { closeSync, existsSync, openSync, readSync, rmSync, statSync } from 'node:fs';
import { APPLICATION_ID, openReadOnly, type ReadConnection } from './connection.ts';
import { LedgerError } from './errors.ts';
import { SCHEMA_VERSION } from './migrations/list.ts';
import { rowProblems } from './rows.ts';

/** What a database file turns out to be. `problems` are whole phrases for a person to read. */
export type Inspection =
  | { readonly kind: 'ours'; readonly version: number }
  | { readonly kind: 'not-ours'; readonly why: string }
  | { readonly kind: 'damaged'; readonly problems: readonly string[] };

/**
 * How closely to look: `opening` reads only what opening needs, `quick` every page, `integrity` compares the indexes with their
 * tables too, and `full` every record with its checksum.
 */
export type Depth = 'opening' | 'quick' | 'integrity' | 'full';

const MAGIC = 'SQLite format 3\0';
const HEADER_BYTES = 100;
const MOST_PROBLEMS = 20;
/** For another program to let go of a file that is not its own. */
const WAIT_MS = 1_000;

/**
 * Looks at the file at `path`, which must exist, and changes nothing in it nor in its -wal. Errors: `in-use`, `read-only`,
 * `disk`. Only while nobody in this process has the file open: closing a second handle would drop SQLite's locks on it.
 */
export function inspect(path: string, depth: Depth): Inspection {
  const problem = headerProblem(path);
  if (problem !== null) return { kind: 'damaged', problems: [problem] };
  const walWasThere = existsSync(`${path}-wal`);
  let connection: ReadConnection | null = null;
  try {
    connection = openReadOnly(path, WAIT_MS);
    const stranger = strangerWords(connection);
    return stranger === null ? inspectOurs(connection, depth, walWasThere) : { kind: 'not-ours', why: stranger };
  } catch (error) {
    if (error instanceof LedgerError && error.code === 'damaged') {
      return { kind: 'damaged', problems: [error.cause instanceof Error ? error.cause.message : error.message] };
    }
    throw error;
  } finally {
    connection?.close();
    if (!walWasThere) removeTraces(path);
  }
}

/** A reader makes an empty -wal; left there, it would look like the lost one. */
function removeTraces(path: string): void {
  if (existsSync(`${path}-wal`) && statSync(`${path}-wal`).size > 0) return;
  for (const trace of ['-wal', '-shm']) rmSync(path + trace, { force: true });
}

function headerProblem(path: string): string | null {
  const { size } = statSync(path);
  if (size === 0) return 'the file is empty';
  const header = Buffer.alloc(HEADER_BYTES);
  const file = openSync(path, 'r');
  try {
    readSync(file, header, 0, HEADER_BYTES, 0);
  } finally {
    closeSync(file);
  }
  if (header.toString('latin1', 0, MAGIC.length) !== MAGIC) return 'the file does not begin as a SQLite database does';
  const pageSize = header.readUInt16BE(16) === 1 ? 65_536 : header.readUInt16BE(16);
  if (size < pageSize || size % pageSize !== 0) return 'the file ends in the middle of a page';
  return null;
}

function strangerWords(connection: ReadConnection): string | null {
  const mark = Number(connection.pragma('application_id'));
  if (mark === APPLICATION_ID) return null;
  return mark === 0 ? 'it carries no mark of a program' : 'it carries the mark of another program';
}

function inspectOurs(connection: ReadConnection, depth: Depth, walWasThere: boolean): Inspection {
  const version = Number(connection.pragma('user_version'));
  const problems = structureProblems(connection, depth);
  if (problems.length === 0) problems.push(...versionProblems(connection, version));
  if (problems.length === 0 && !walWasThere && leftOpen(connection)) {
    problems.push('it was left open, and the -wal file that held its last records is gone');
  }
  if (problems.length === 0 && (depth === 'integrity' || depth === 'full'))
    problems.push(...foreignKeyProblems(connection));
  // A newer program may keep its rows in another way; what they mean is not ours to judge.
  if (problems.length === 0 && depth === 'full' && version <= SCHEMA_VERSION) problems.push(...rowProblems(connection));
  return problems.length === 0 ? { kind: 'ours', version } : { kind: 'damaged', problems };
}

function structureProblems(connection: ReadConnection, depth: Depth): string[] {
  if (depth === 'opening') return [];
  const pragma = depth === 'quick' ? 'quick_check' : 'integrity_check';
  return connection
    .prepare<[], Record<string, string>>(`PRAGMA ${pragma}(${MOST_PROBLEMS})`)
    .all()
    .map((row) => row[pragma] ?? 'SQLite gives no answer')
    .filter((line) => line !== 'ok');
}

function versionProblems(connection: ReadConnection, version: number): string[] {
  const hasRecord = connection.prepare(`SELECT 1 FROM sqlite_schema WHERE name = 'migrations'`).get() !== undefined;
  if (!hasRecord) return ['the record of the schema versions is missing'];
  const row = connection.prepare<[], { last: number | null }>('SELECT max(version) AS last FROM migrations').get();
  return row?.last === version
    ? []
    : [`the file says schema version ${version}, its own record says ${row?.last ?? 'none'}`];
}

/** Whether the last program to write here did not close the file. */
function leftOpen(connection: ReadConnection): boolean {
  const known = connection.prepare(`SELECT 1 FROM sqlite_schema WHERE name = 'sessions'`).get() !== undefined;
  if (!known) return false;
  const last = connection.prepare<[], { closed_at: number | null }>(
    'SELECT closed_at FROM sessions ORDER BY n DESC LIMIT 1',
  );
  return last.get()?.closed_at === null;
}

function foreignKeyProblems(connection: ReadConnection): string[] {
  const row = connection.prepare<[], { table: string }>('PRAGMA foreign_key_check').get();
  return row === undefined ? [] : [`a row of ${row.table} points at one that is not there`];
}
