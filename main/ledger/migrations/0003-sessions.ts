import type { Migration } from './migration.ts';

/** When the database was opened and closed: a file left open whose -wal is gone has lost what that held. */
export const sessions: Migration = {
  version: 3,
  name: 'sessions',
  statements: [
    `CREATE TABLE sessions (
       n INTEGER PRIMARY KEY,
       opened_at INTEGER NOT NULL,
       closed_at INTEGER
     ) STRICT`,
  ],
};
