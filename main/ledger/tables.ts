import type { Generated } from 'kysely';

/**
 * The columns of every table, for Kysely. Booleans are 0 or 1; times without a unit in their name are milliseconds since
 * 1970 UTC, but for `events.at` and `attempts.at`, milliseconds since the set's go, and `drill_events.at`, since the drill's
 * beginning. README.md says what each table is.
 */
export interface Tables {
  migrations: { version: number; name: string; applied_at: number };
  people: PeopleTable;
  sheets: SheetsTable;
  sets: SetsTable;
  set_tags: { set_n: number; tag: string };
  events: EventsTable;
  drills: DrillsTable;
  drill_events: DrillEventsTable;
  nights: { n: Generated<number>; id: string; date: string; created_at: number; body: string; crc: number };
  night_events: NightEventsTable;
  night_sets: { set_n: number; night_n: number; heat: number; lane: string; role: string };
  settings: { key: string; value: string; changed_at: number };
  sessions: { n: Generated<number>; opened_at: number; closed_at: number | null };
  set_facts: SetFactsTable;
  set_reasons: { set_n: number; fault: string; no_reps: number; seconds: number | null };
  attempts: AttemptsTable;
  set_bins: { set_n: number; scale: string; counts: Buffer };
}

interface PeopleTable {
  n: Generated<number>;
  id: string;
  name: string;
  nickname: string;
  athlete: number;
  judge: number;
  notes: string;
  archived_at: number | null;
  created_at: number;
  search: string;
}

interface SheetsTable {
  n: Generated<number>;
  id: string;
  version: number;
  station: string;
  shipped: number;
  created_at: number;
  search: string;
  body: string;
  crc: number;
}

interface SetsTable {
  n: Generated<number>;
  id: string;
  athlete: string;
  judge: string;
  sheet_id: string;
  sheet_version: number;
  goal_kind: string;
  load_kg: number | null;
  height_m: number | null;
  before: string;
  role: string;
  practice: number;
  created_at: number;
  search: string;
  body: string;
  crc: number;
}

interface EventsTable {
  n: Generated<number>;
  set_n: number;
  pad: string;
  seq: number;
  at: number;
  kind: string;
  body: string;
  crc: number;
  recorded_at: number;
}

interface DrillsTable {
  n: Generated<number>;
  id: string;
  judge: string;
  kind: string;
  sheet_id: string;
  sheet_version: number;
  practice: number;
  created_at: number;
  body: string;
  crc: number;
}

interface DrillEventsTable {
  n: Generated<number>;
  drill_n: number;
  pad: string;
  seq: number;
  at: number;
  kind: string;
  body: string;
  crc: number;
  recorded_at: number;
}

interface NightEventsTable {
  n: Generated<number>;
  night_n: number;
  pad: string;
  seq: number;
  at: number;
  kind: string;
  body: string;
  crc: number;
  recorded_at: number;
}

interface SetFactsTable {
  set_n: number;
  happened_at: number;
  athlete: string;
  judge: string;
  sheet_id: string;
  sheet_version: number;
  load_kg: number | null;
  height_m: number | null;
  before: string;
  role: string;
  practice: number;
  phase: Generated<string>;
  started_at: number | null;
  clock_ms: Generated<number>;
  attempts: Generated<number>;
  counted: Generated<number>;
  cautions: Generated<number>;
  no_reps: Generated<number>;
  unexplained: Generated<number>;
  metres: Generated<number>;
  reversals: Generated<number>;
  slips: Generated<number>;
  breaks: Generated<number>;
  start_ms: number | null;
  work_ms: number | null;
  no_rep_ms: number | null;
  break_ms: number | null;
  clean_cycles: Generated<number>;
  clean_median_ms: number | null;
  cost_s: number | null;
  cost_low_s: number | null;
  cost_high_s: number | null;
  repeat_s: number | null;
  disruption_s: number | null;
  applied_n: Generated<number>;
  projection: Generated<number>;
  last_n: Generated<number>;
}

interface AttemptsTable {
  set_n: number;
  number: number;
  at: number;
  verdict: string;
  faults: string;
  cycle_ms: number | null;
  expected_ms: number | null;
  clean: number;
  progress: number;
  cost_s: number | null;
}
