import type { Migration } from './migration.ts';

/**
 * The place of each set's last event stands beside its facts, so that sets whose facts lag, and sets that may still run, are
 * found by an index however long the log has grown. A no-rep with two faults counts half for each. The bins of a set are one
 * value a scale (`bins.ts`); they come back as the sets are summed again.
 */
export const lastEvents: Migration = {
  version: 4,
  name: 'last-events',
  statements: [
    'ALTER TABLE set_facts ADD COLUMN last_n INTEGER NOT NULL DEFAULT 0',
    `UPDATE set_facts SET last_n = coalesce((SELECT max(n) FROM events WHERE events.set_n = set_facts.set_n), 0)`,
    'CREATE INDEX set_facts_lagging ON set_facts (last_n) WHERE applied_n < last_n',
    'CREATE INDEX set_facts_by_projection ON set_facts (projection)',
    'CREATE TABLE whole_reasons AS SELECT set_n, fault, no_reps, seconds FROM set_reasons',
    'DROP TABLE set_reasons',
    `CREATE TABLE set_reasons (
       set_n INTEGER NOT NULL REFERENCES set_facts (set_n) ON DELETE CASCADE,
       fault TEXT NOT NULL,
       no_reps REAL NOT NULL,
       seconds REAL,
       PRIMARY KEY (set_n, fault)
     ) STRICT, WITHOUT ROWID`,
    'INSERT INTO set_reasons SELECT set_n, fault, no_reps, seconds FROM whole_reasons',
    'DROP TABLE whole_reasons',
    'DROP TABLE set_bins',
    `CREATE TABLE set_bins (
       set_n INTEGER NOT NULL REFERENCES set_facts (set_n) ON DELETE CASCADE,
       scale TEXT NOT NULL,
       counts BLOB NOT NULL,
       PRIMARY KEY (set_n, scale)
     ) STRICT, WITHOUT ROWID`,
  ],
};
