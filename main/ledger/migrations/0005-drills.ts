import type { Migration } from './migration.ts';

const keepForever = (table: string, what: string) => [
  `CREATE TRIGGER ${table}_stay BEFORE UPDATE ON ${table}
   BEGIN SELECT RAISE(ABORT, '${what} never changes; what comes later is added'); END`,
  `CREATE TRIGGER ${table}_kept BEFORE DELETE ON ${table}
   BEGIN SELECT RAISE(ABORT, '${what} is never deleted'); END`,
];

/** Drills of the judge's eye and their logs, kept by the same rules as sets. */
export const drills: Migration = {
  version: 5,
  name: 'drills',
  statements: [
    `CREATE TABLE drills (
       n INTEGER PRIMARY KEY,
       id TEXT NOT NULL UNIQUE,
       judge TEXT NOT NULL REFERENCES people (id),
       kind TEXT NOT NULL,
       sheet_id TEXT NOT NULL,
       sheet_version INTEGER NOT NULL,
       practice INTEGER NOT NULL CHECK (practice IN (0, 1)),
       created_at INTEGER NOT NULL,
       body TEXT NOT NULL CHECK (json_valid(body)),
       crc INTEGER NOT NULL,
       FOREIGN KEY (sheet_id, sheet_version) REFERENCES sheets (id, version)
     ) STRICT`,
    'CREATE INDEX drills_by_time ON drills (created_at, n)',
    'CREATE INDEX drills_by_judge ON drills (judge, sheet_id, created_at, n)',
    ...keepForever('drills', 'a drill'),
    `CREATE TABLE drill_events (
       n INTEGER PRIMARY KEY,
       drill_n INTEGER NOT NULL REFERENCES drills (n),
       pad TEXT NOT NULL,
       seq INTEGER NOT NULL CHECK (seq >= 1),
       at INTEGER NOT NULL CHECK (at >= 0),
       kind TEXT NOT NULL,
       body TEXT NOT NULL CHECK (json_valid(body)),
       crc INTEGER NOT NULL,
       recorded_at INTEGER NOT NULL,
       UNIQUE (pad, seq)
     ) STRICT`,
    'CREATE INDEX drill_events_of_drill ON drill_events (drill_n, n)',
    ...keepForever('drill_events', 'an event of a drill'),
  ],
};
