import type { Migration } from './migration.ts';

const keepForever = (table: string, what: string) => [
  `CREATE TRIGGER ${table}_stay BEFORE UPDATE ON ${table}
   BEGIN SELECT RAISE(ABORT, '${what} never changes; what comes later is added'); END`,
  `CREATE TRIGGER ${table}_kept BEFORE DELETE ON ${table}
   BEGIN SELECT RAISE(ABORT, '${what} is never deleted'); END`,
];

/** Judging nights and their logs, kept by the same rules as sets; a set judged at one knows its heat and lane. */
export const nights: Migration = {
  version: 6,
  name: 'nights',
  statements: [
    `CREATE TABLE nights (
       n INTEGER PRIMARY KEY,
       id TEXT NOT NULL UNIQUE,
       date TEXT NOT NULL,
       created_at INTEGER NOT NULL,
       body TEXT NOT NULL CHECK (json_valid(body)),
       crc INTEGER NOT NULL
     ) STRICT`,
    'CREATE INDEX nights_by_date ON nights (date, n)',
    ...keepForever('nights', 'a night'),
    `CREATE TABLE night_events (
       n INTEGER PRIMARY KEY,
       night_n INTEGER NOT NULL REFERENCES nights (n),
       pad TEXT NOT NULL,
       seq INTEGER NOT NULL CHECK (seq >= 1),
       at INTEGER NOT NULL CHECK (at >= 0),
       kind TEXT NOT NULL,
       body TEXT NOT NULL CHECK (json_valid(body)),
       crc INTEGER NOT NULL,
       recorded_at INTEGER NOT NULL,
       UNIQUE (night_n, pad, seq)
     ) STRICT`,
    'CREATE INDEX night_events_of_night ON night_events (night_n, n)',
    ...keepForever('night_events', 'an event of a night'),
    `CREATE TABLE night_sets (
       set_n INTEGER PRIMARY KEY REFERENCES sets (n),
       night_n INTEGER NOT NULL REFERENCES nights (n),
       heat INTEGER NOT NULL CHECK (heat >= 1),
       lane TEXT NOT NULL,
       role TEXT NOT NULL CHECK (role IN ('main', 'shadow'))
     ) STRICT`,
    'CREATE INDEX night_sets_of_night ON night_sets (night_n, heat, lane)',
    ...keepForever('night_sets', 'the place of a set in a night'),
  ],
};
