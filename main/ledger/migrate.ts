import { APPLICATION_ID, type WriteConnection } from './connection.ts';
import { LedgerError, toLedgerError } from './errors.ts';
import { migrations as ours } from './migrations/list.ts';
import type { Migration } from './migrations/migration.ts';

export interface MigrateOptions {
  readonly migrations?: readonly Migration[];
  /** Called before every statement; a test throws from it to interrupt the migration there. */
  readonly beforeStatement?: (sql: string) => void;
}

/**
 * Brings the schema up to the program's version. All pending steps, their records, the version number and the checks are
 * one transaction: after an interruption anywhere the database is as it was. `at` is milliseconds since 1970 UTC.
 * Errors: `migration-failed`, `full`, `disk`.
 */
export function migrate(connection: WriteConnection, at: number, options: MigrateOptions = {}): void {
  const run = (sql: string, ...values: unknown[]) => {
    options.beforeStatement?.(sql);
    return connection.prepare<unknown[]>(sql).run(...values);
  };
  try {
    connection.transaction(() => {
      const version = Number(connection.pragma('user_version'));
      if (version === 0) {
        run(
          'CREATE TABLE migrations (version INTEGER PRIMARY KEY, name TEXT NOT NULL, applied_at INTEGER NOT NULL) STRICT',
        );
        pragmaInTransaction(connection, 'application_id', APPLICATION_ID, options);
      }
      for (const migration of options.migrations ?? ours) {
        if (migration.version <= version) continue;
        for (const statement of migration.statements) run(statement);
        run(
          'INSERT INTO migrations (version, name, applied_at) VALUES (?, ?, ?)',
          migration.version,
          migration.name,
          at,
        );
        pragmaInTransaction(connection, 'user_version', migration.version, options);
      }
      // Foreign keys are enforced on every statement here (the pragma is on, and cannot change inside a transaction);
      // this looks at the rows that a step has rewritten as well.
      options.beforeStatement?.('PRAGMA foreign_key_check');
      if (connection.pragma('foreign_key_check') !== undefined) {
        throw new LedgerError('migration-failed', 'a row points at one that is not there');
      }
    });
  } catch (error) {
    const told = toLedgerError(error, connection.path);
    if (told instanceof LedgerError && told.code !== 'migration-failed') throw told;
    const why = told instanceof Error ? told.message : String(told);
    throw new LedgerError(
      'migration-failed',
      `The database ${connection.path} could not be brought to this version of Plumbline, and is unchanged: ${why}. Go on with the version you had, and report this.`,
      { cause: error },
    );
  }
}

/** Both pragmas write the file's first page and are part of the transaction. */
function pragmaInTransaction(connection: WriteConnection, name: string, value: number, options: MigrateOptions): void {
  options.beforeStatement?.(`PRAGMA ${name}`);
  connection.pragma(`${name} = ${value}`);
}
