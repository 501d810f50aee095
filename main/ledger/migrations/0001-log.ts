import type { Migration } from './migration.ts';

const keepForever = (table: string, what: string) => [
  `CREATE TRIGGER ${table}_stay BEFORE UPDATE ON ${table}
   BEGIN SELECT RAISE(ABORT, '${what} never changes; what comes later is added'); END`,
  `CREATE TRIGGER ${table}_kept BEFORE DELETE ON ${table}
   BEGIN SELECT RAISE(ABORT, '${what} is never deleted'); END`,
];

/** What is recorded: people, standard sheets, the setups of sets, their logs, and the settings. */
export const log: Migration = {
  version: 1,
  name: 'log',
  statements: [
    `CREATE TABLE people (
       n INTEGER PRIMARY KEY,
       id TEXT NOT NULL UNIQUE,
       name TEXT NOT NULL CHECK (name <> ''),
       nickname TEXT NOT NULL,
       athlete INTEGER NOT NULL CHECK (athlete IN (0, 1)),
       judge INTEGER NOT NULL CHECK (judge IN (0, 1)),
       notes TEXT NOT NULL,
       archived_at INTEGER,
       created_at INTEGER NOT NULL,
       search TEXT NOT NULL
     ) STRICT`,
    `CREATE TRIGGER people_kept BEFORE DELETE ON people
     BEGIN SELECT RAISE(ABORT, 'a person is archived, never deleted'); END`,
    `CREATE TRIGGER people_same BEFORE UPDATE OF n, id, created_at ON people
     BEGIN SELECT RAISE(ABORT, 'the identity of a person never changes'); END`,
    `CREATE TABLE sheets (
       n INTEGER PRIMARY KEY,
       id TEXT NOT NULL,
       version INTEGER NOT NULL CHECK (version >= 1),
       station TEXT NOT NULL,
       shipped INTEGER NOT NULL CHECK (shipped IN (0, 1)),
       created_at INTEGER NOT NULL,
       search TEXT NOT NULL,
       body TEXT NOT NULL CHECK (json_valid(body)),
       crc INTEGER NOT NULL,
       UNIQUE (id, version)
     ) STRICT`,
    ...keepForever('sheets', 'a version of a standard sheet'),
    `CREATE TABLE sets (
       n INTEGER PRIMARY KEY,
       id TEXT NOT NULL UNIQUE,
       athlete TEXT NOT NULL REFERENCES people (id),
       judge TEXT NOT NULL REFERENCES people (id),
       sheet_id TEXT NOT NULL,
       sheet_version INTEGER NOT NULL,
       goal_kind TEXT NOT NULL,
       load_kg REAL,
       height_m REAL,
       before TEXT NOT NULL,
       role TEXT NOT NULL,
       practice INTEGER NOT NULL CHECK (practice IN (0, 1)),
       created_at INTEGER NOT NULL,
       search TEXT NOT NULL,
       body TEXT NOT NULL CHECK (json_valid(body)),
       crc INTEGER NOT NULL,
       FOREIGN KEY (sheet_id, sheet_version) REFERENCES sheets (id, version)
     ) STRICT`,
    ...keepForever('sets', 'the setup of a set'),
    `CREATE TABLE set_tags (
       set_n INTEGER NOT NULL REFERENCES sets (n),
       tag TEXT NOT NULL,
       PRIMARY KEY (tag, set_n)
     ) STRICT, WITHOUT ROWID`,
    ...keepForever('set_tags', 'a tag of a set'),
    `CREATE TABLE events (
       n INTEGER PRIMARY KEY,
       set_n INTEGER NOT NULL REFERENCES sets (n),
       pad TEXT NOT NULL,
       seq INTEGER NOT NULL CHECK (seq >= 1),
       at INTEGER NOT NULL CHECK (at >= 0),
       kind TEXT NOT NULL,
       body TEXT NOT NULL CHECK (json_valid(body)),
       crc INTEGER NOT NULL,
       recorded_at INTEGER NOT NULL,
       UNIQUE (pad, seq)
     ) STRICT`,
    'CREATE INDEX events_of_set ON events (set_n, n)',
    ...keepForever('events', 'an event of a log'),
    `CREATE TABLE settings (
       key TEXT PRIMARY KEY,
       value TEXT NOT NULL CHECK (json_valid(value)),
       changed_at INTEGER NOT NULL
     ) STRICT, WITHOUT ROWID`,
  ],
};
