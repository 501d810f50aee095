import type { Migration } from './migration.ts';

/** What the reports read: sums derived from the logs. All of it can be thrown away and built again. */
export const facts: Migration = {
  version: 2,
  name: 'facts',
  statements: [
    // The columns of the setup stand here a second time, because an index must hold them beside the time of the set.
    `CREATE TABLE set_facts (
       set_n INTEGER PRIMARY KEY REFERENCES sets (n),
       happened_at INTEGER NOT NULL,
       athlete TEXT NOT NULL,
       judge TEXT NOT NULL,
       sheet_id TEXT NOT NULL,
       sheet_version INTEGER NOT NULL,
       load_kg REAL,
       height_m REAL,
       before TEXT NOT NULL,
       role TEXT NOT NULL,
       practice INTEGER NOT NULL,
       phase TEXT NOT NULL DEFAULT 'ready',
       started_at INTEGER,
       clock_ms INTEGER NOT NULL DEFAULT 0,
       attempts INTEGER NOT NULL DEFAULT 0,
       counted INTEGER NOT NULL DEFAULT 0,
       cautions INTEGER NOT NULL DEFAULT 0,
       no_reps INTEGER NOT NULL DEFAULT 0,
       unexplained INTEGER NOT NULL DEFAULT 0,
       metres REAL NOT NULL DEFAULT 0,
       reversals INTEGER NOT NULL DEFAULT 0,
       slips INTEGER NOT NULL DEFAULT 0,
       breaks INTEGER NOT NULL DEFAULT 0,
       start_ms INTEGER,
       work_ms INTEGER,
       no_rep_ms INTEGER,
       break_ms INTEGER,
       clean_cycles INTEGER NOT NULL DEFAULT 0,
       clean_median_ms REAL,
       cost_s REAL,
       cost_low_s REAL,
       cost_high_s REAL,
       repeat_s REAL,
       disruption_s REAL,
       applied_n INTEGER NOT NULL DEFAULT 0,
       projection INTEGER NOT NULL DEFAULT 0
     ) STRICT`,
    'CREATE INDEX set_facts_by_time ON set_facts (happened_at, set_n)',
    'CREATE INDEX set_facts_by_athlete ON set_facts (athlete, happened_at, set_n)',
    'CREATE INDEX set_facts_by_judge ON set_facts (judge, happened_at, set_n)',
    'CREATE INDEX set_facts_by_sheet ON set_facts (sheet_id, happened_at, set_n)',
    `CREATE INDEX set_facts_not_ended ON set_facts (phase, set_n) WHERE phase IN ('ready', 'running')`,
    `CREATE TABLE set_reasons (
       set_n INTEGER NOT NULL REFERENCES set_facts (set_n) ON DELETE CASCADE,
       fault TEXT NOT NULL,
       no_reps INTEGER NOT NULL,
       seconds REAL,
       PRIMARY KEY (set_n, fault)
     ) STRICT, WITHOUT ROWID`,
    `CREATE TABLE attempts (
       set_n INTEGER NOT NULL REFERENCES set_facts (set_n) ON DELETE CASCADE,
       number INTEGER NOT NULL,
       at INTEGER NOT NULL,
       verdict TEXT NOT NULL,
       faults TEXT NOT NULL,
       cycle_ms INTEGER,
       expected_ms REAL,
       clean INTEGER NOT NULL,
       progress REAL NOT NULL,
       cost_s REAL,
       PRIMARY KEY (set_n, number)
     ) STRICT, WITHOUT ROWID`,
    `CREATE TABLE set_bins (
       set_n INTEGER NOT NULL REFERENCES set_facts (set_n) ON DELETE CASCADE,
       scale TEXT NOT NULL,
       bin INTEGER NOT NULL,
       attempts INTEGER NOT NULL,
       no_reps INTEGER NOT NULL,
       PRIMARY KEY (scale, set_n, bin)
     ) STRICT, WITHOUT ROWID`,
    'CREATE INDEX set_bins_of_set ON set_bins (set_n)',
    `INSERT INTO set_facts (set_n, happened_at, athlete, judge, sheet_id, sheet_version, load_kg, height_m, before, role, practice)
     SELECT n, created_at, athlete, judge, sheet_id, sheet_version, load_kg, height_m, before, role, practice FROM sets`,
  ],
};
