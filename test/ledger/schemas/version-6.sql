-- A database of schema version 6 with a few invented rows, as that version left it. Frozen: never change it.
PRAGMA foreign_keys = OFF;
PRAGMA journal_mode = WAL;
BEGIN;
PRAGMA application_id = 1347177794;
PRAGMA user_version = 6;
CREATE TABLE migrations (version INTEGER PRIMARY KEY, name TEXT NOT NULL, applied_at INTEGER NOT NULL) STRICT;
CREATE TABLE people (
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
     ) STRICT;
CREATE TABLE sheets (
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
     ) STRICT;
CREATE TABLE sets (
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
     ) STRICT;
CREATE TABLE set_tags (
       set_n INTEGER NOT NULL REFERENCES sets (n),
       tag TEXT NOT NULL,
       PRIMARY KEY (tag, set_n)
     ) STRICT, WITHOUT ROWID;
CREATE TABLE events (
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
     ) STRICT;
CREATE TABLE settings (
       key TEXT PRIMARY KEY,
       value TEXT NOT NULL CHECK (json_valid(value)),
       changed_at INTEGER NOT NULL
     ) STRICT, WITHOUT ROWID;
CREATE TABLE set_facts (
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
     , last_n INTEGER NOT NULL DEFAULT 0) STRICT;
CREATE TABLE attempts (
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
     ) STRICT, WITHOUT ROWID;
CREATE TABLE sessions (
       n INTEGER PRIMARY KEY,
       opened_at INTEGER NOT NULL,
       closed_at INTEGER
     ) STRICT;
CREATE TABLE set_reasons (
       set_n INTEGER NOT NULL REFERENCES set_facts (set_n) ON DELETE CASCADE,
       fault TEXT NOT NULL,
       no_reps REAL NOT NULL,
       seconds REAL,
       PRIMARY KEY (set_n, fault)
     ) STRICT, WITHOUT ROWID;
CREATE TABLE set_bins (
       set_n INTEGER NOT NULL REFERENCES set_facts (set_n) ON DELETE CASCADE,
       scale TEXT NOT NULL,
       counts BLOB NOT NULL,
       PRIMARY KEY (set_n, scale)
     ) STRICT, WITHOUT ROWID;
CREATE TABLE drills (
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
     ) STRICT;
CREATE TABLE drill_events (
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
     ) STRICT;
INSERT INTO migrations (version, name, applied_at) VALUES (1, 'log', 1760000000000);
INSERT INTO migrations (version, name, applied_at) VALUES (2, 'facts', 1760000000000);
INSERT INTO migrations (version, name, applied_at) VALUES (3, 'sessions', 1760000000000);
INSERT INTO migrations (version, name, applied_at) VALUES (4, 'last-events', 1760000000000);
CREATE TABLE nights (
       n INTEGER PRIMARY KEY,
       id TEXT NOT NULL UNIQUE,
       date TEXT NOT NULL,
       created_at INTEGER NOT NULL,
       body TEXT NOT NULL CHECK (json_valid(body)),
       crc INTEGER NOT NULL
     ) STRICT;
CREATE TABLE night_events (
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
     ) STRICT;
CREATE TABLE night_sets (
       set_n INTEGER PRIMARY KEY REFERENCES sets (n),
       night_n INTEGER NOT NULL REFERENCES nights (n),
       heat INTEGER NOT NULL CHECK (heat >= 1),
       lane TEXT NOT NULL,
       role TEXT NOT NULL CHECK (role IN ('main', 'shadow'))
     ) STRICT;
INSERT INTO migrations (version, name, applied_at) VALUES (5, 'drills', 1760000000000);
INSERT INTO migrations (version, name, applied_at) VALUES (6, 'nights', 1760000000000);
INSERT INTO people (n, id, name, nickname, athlete, judge, notes, archived_at, created_at, search) VALUES (1, '00000000-0000-4000-8000-000000000001', 'Ada Lind', 'Addie', 1, 1, '', NULL, 1001, 'ada lind addie');
INSERT INTO people (n, id, name, nickname, athlete, judge, notes, archived_at, created_at, search) VALUES (2, '00000000-0000-4000-8000-000000000002', 'Bo ''Zoë'' Marsh', '', 1, 1, 'two
lines', 9000, 1002, 'bo ''zoe'' marsh ');
INSERT INTO sheets (n, id, version, station, shipped, created_at, search, body, crc) VALUES (1, 'lunge', 1, 'Lunge', 0, 5000, 'lunge', '{"cautions":[],"consequence":{"kind":"repeat"},"createdAt":5000,"equipment":[],"faults":[{"bodyHeight":0.3,"code":"knee","cue":"Down!","initial":"K","look":"The knee.","margin":null,"name":"knee","remedy":"Slow ones.","stand":"Beside.","standard":"It is met."},{"bodyHeight":0.3,"code":"tall","cue":"Down!","initial":"T","look":"The knee.","margin":null,"name":"tall","remedy":"Slow ones.","stand":"Beside.","standard":"It is met."}],"goals":["reps","open"],"heightName":"","heightsM":[],"id":"lunge","loadsKg":[10,20],"markEveryM":null,"movement":"other","repsName":"lunges","shipped":false,"station":"Lunge","summary":"Knee to the floor, stand tall.","usualGoal":{"amount":50,"kind":"reps"},"version":1}', 395160695);
INSERT INTO sheets (n, id, version, station, shipped, created_at, search, body, crc) VALUES (2, 'lunge', 2, 'Long lunge', 0, 5000, 'long lunge', '{"cautions":[],"consequence":{"kind":"repeat"},"createdAt":5000,"equipment":[],"faults":[{"bodyHeight":0.3,"code":"knee","cue":"Down!","initial":"K","look":"The knee.","margin":null,"name":"knee","remedy":"Slow ones.","stand":"Beside.","standard":"It is met."},{"bodyHeight":0.3,"code":"tall","cue":"Down!","initial":"T","look":"The knee.","margin":null,"name":"tall","remedy":"Slow ones.","stand":"Beside.","standard":"It is met."}],"goals":["reps","open"],"heightName":"","heightsM":[],"id":"lunge","loadsKg":[10,20],"markEveryM":null,"movement":"other","repsName":"lunges","shipped":false,"station":"Long lunge","summary":"Knee to the floor, stand tall.","usualGoal":{"amount":50,"kind":"reps"},"version":2}', 410170003);
INSERT INTO sets (n, id, athlete, judge, sheet_id, sheet_version, goal_kind, load_kg, height_m, before, role, practice, created_at, search, body, crc) VALUES (1, '00000000-0000-4000-8000-000050000001', '00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000002', 'lunge', 1, 'reps', 10.0, NULL, 'fresh', 'main', 0, 100001, 'heat late after a run', '{"athlete":"00000000-0000-4000-8000-000000000001","before":"fresh","createdAt":100001,"goal":{"kind":"reps","reps":50},"heightM":null,"id":"00000000-0000-4000-8000-000050000001","judge":"00000000-0000-4000-8000-000000000002","loadKg":10,"note":"after a run","practice":false,"role":"main","sheet":{"id":"lunge","version":1},"tags":["heat","late"]}', 4291198058);
INSERT INTO sets (n, id, athlete, judge, sheet_id, sheet_version, goal_kind, load_kg, height_m, before, role, practice, created_at, search, body, crc) VALUES (2, '00000000-0000-4000-8000-000050000002', '00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000002', 'lunge', 2, 'reps', NULL, NULL, 'fresh', 'main', 0, 100002, ' ', '{"athlete":"00000000-0000-4000-8000-000000000001","before":"fresh","createdAt":100002,"goal":{"kind":"reps","reps":50},"heightM":null,"id":"00000000-0000-4000-8000-000050000002","judge":"00000000-0000-4000-8000-000000000002","loadKg":null,"note":"","practice":false,"role":"main","sheet":{"id":"lunge","version":2},"tags":[]}', 1780773222);
INSERT INTO set_tags (set_n, tag) VALUES (1, 'heat');
INSERT INTO set_tags (set_n, tag) VALUES (1, 'late');
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (1, 1, 'pad-a', 1, 0, 'go', '{"wallClock":200000}', 1811289470, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (2, 1, 'pad-a', 2, 4000, 'call', '{"faults":[],"verdict":"counted"}', 4199958501, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (3, 1, 'pad-a', 3, 6000, 'call', '{"faults":[],"verdict":"counted"}', 3622273631, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (4, 1, 'pad-a', 4, 8000, 'call', '{"faults":[],"verdict":"counted"}', 401791609, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (5, 1, 'pad-a', 5, 10000, 'call', '{"faults":["knee"],"verdict":"no-rep"}', 2618016366, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (6, 1, 'pad-a', 6, 12000, 'call', '{"faults":[],"verdict":"counted"}', 3555867615, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (7, 1, 'pad-a', 7, 14000, 'call', '{"faults":[],"verdict":"counted"}', 3844247575, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (8, 1, 'pad-a', 8, 16000, 'call', '{"faults":[],"verdict":"counted"}', 2275830083, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (9, 1, 'pad-a', 9, 18000, 'call', '{"faults":[],"verdict":"counted"}', 3833233296, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (10, 1, 'pad-a', 10, 20000, 'call', '{"faults":["knee"],"verdict":"no-rep"}', 3143754654, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (11, 1, 'pad-a', 11, 22000, 'call', '{"faults":[],"verdict":"counted"}', 3205337566, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (12, 1, 'pad-a', 12, 24000, 'finish', '{}', 941085713, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (13, 1, 'pad-b', 1, 40000, 'reverse', '{"by":"00000000-0000-4000-8000-000000000002","faults":[],"of":{"pad":"pad-a","seq":5},"reason":"seen on “film”","verdict":"counted"}', 3025249902, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (14, 2, 'pad-c', 1, 0, 'go', '{"wallClock":200000}', 640325935, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (15, 2, 'pad-c', 2, 4000, 'call', '{"faults":[],"verdict":"counted"}', 2882372076, 1760000000000);
INSERT INTO events (n, set_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (16, 2, 'pad-c', 3, 6000, 'call', '{"faults":[],"verdict":"counted"}', 2256290902, 1760000000000);
INSERT INTO settings (key, value, changed_at) VALUES ('theme', '{"hall":true}', 1760000000000);
INSERT INTO set_facts (set_n, happened_at, athlete, judge, sheet_id, sheet_version, load_kg, height_m, before, role, practice, phase, started_at, clock_ms, attempts, counted, cautions, no_reps, unexplained, metres, reversals, slips, breaks, start_ms, work_ms, no_rep_ms, break_ms, clean_cycles, clean_median_ms, cost_s, cost_low_s, cost_high_s, repeat_s, disruption_s, applied_n, projection, last_n) VALUES (1, 3605000, '00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000002', 'lunge', 1, 10.0, NULL, 'fresh', 'main', 0, 'finished', 3605000, 20009, 10, 9, 0, 1, 0, 0.0, 1, 0, 0, 2000, 17109, 900, 0, 9, 2000.0, 2.5, 1.0, 9.0, 1.0, 1.0, 12, 1, 13);
INSERT INTO set_facts (set_n, happened_at, athlete, judge, sheet_id, sheet_version, load_kg, height_m, before, role, practice, phase, started_at, clock_ms, attempts, counted, cautions, no_reps, unexplained, metres, reversals, slips, breaks, start_ms, work_ms, no_rep_ms, break_ms, clean_cycles, clean_median_ms, cost_s, cost_low_s, cost_high_s, repeat_s, disruption_s, applied_n, projection, last_n) VALUES (2, 100002, '00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000002', 'lunge', 2, NULL, NULL, 'fresh', 'main', 0, 'ready', NULL, 0, 0, 0, 0, 0, 0, 0.0, 0, 0, 0, NULL, NULL, NULL, NULL, 0, NULL, NULL, NULL, NULL, NULL, NULL, 0, 0, 16);
INSERT INTO attempts (set_n, number, at, verdict, faults, cycle_ms, expected_ms, clean, progress, cost_s) VALUES (1, 1, 2000, 'counted', '', 2001, 2100.0, 1, 0.0, NULL);
INSERT INTO attempts (set_n, number, at, verdict, faults, cycle_ms, expected_ms, clean, progress, cost_s) VALUES (1, 2, 4001, 'counted', '', 2002, 2100.0, 1, 0.1, NULL);
INSERT INTO attempts (set_n, number, at, verdict, faults, cycle_ms, expected_ms, clean, progress, cost_s) VALUES (1, 3, 6002, 'counted', '', 2003, 2100.0, 1, 0.2, NULL);
INSERT INTO attempts (set_n, number, at, verdict, faults, cycle_ms, expected_ms, clean, progress, cost_s) VALUES (1, 4, 8003, 'counted', '', 2004, 2100.0, 1, 0.3, NULL);
INSERT INTO attempts (set_n, number, at, verdict, faults, cycle_ms, expected_ms, clean, progress, cost_s) VALUES (1, 5, 10004, 'counted', '', 2005, 2100.0, 1, 0.4, NULL);
INSERT INTO attempts (set_n, number, at, verdict, faults, cycle_ms, expected_ms, clean, progress, cost_s) VALUES (1, 6, 12005, 'counted', '', 2006, 2100.0, 1, 0.5, NULL);
INSERT INTO attempts (set_n, number, at, verdict, faults, cycle_ms, expected_ms, clean, progress, cost_s) VALUES (1, 7, 14006, 'counted', '', 2007, 2100.0, 1, 0.6, NULL);
INSERT INTO attempts (set_n, number, at, verdict, faults, cycle_ms, expected_ms, clean, progress, cost_s) VALUES (1, 8, 16007, 'no-rep', 'knee', 2008, 2100.0, 0, 0.7, 2.5);
INSERT INTO attempts (set_n, number, at, verdict, faults, cycle_ms, expected_ms, clean, progress, cost_s) VALUES (1, 9, 18008, 'counted', '', 2009, 2100.0, 1, 0.8, NULL);
INSERT INTO attempts (set_n, number, at, verdict, faults, cycle_ms, expected_ms, clean, progress, cost_s) VALUES (1, 10, 20009, 'counted', '', 2010, 2100.0, 1, 0.9, NULL);
INSERT INTO sessions (n, opened_at, closed_at) VALUES (1, 1760000000000, 1760000000000);
INSERT INTO set_reasons (set_n, fault, no_reps, seconds) VALUES (1, 'knee', 1.0, 2.5);
INSERT INTO set_bins (set_n, scale, counts) VALUES (1, 'pace', X'130000000800000001000000');
INSERT INTO set_bins (set_n, scale, counts) VALUES (1, 'progress', X'0000000001000000000000000200000001000000000000000400000001000000000000000600000001000000000000000800000001000000000000000A00000001000000000000000C00000001000000000000000E0000000100000001000000100000000100000000000000120000000100000000000000');
INSERT INTO drills (n, id, judge, kind, sheet_id, sheet_version, practice, created_at, body, crc) VALUES (1, '00000000-0000-4000-8000-000060000001', '00000000-0000-4000-8000-000000000002', 'line', 'lunge', 1, 0, 200000, '{"athlete":null,"cadence":24,"createdAt":200000,"id":"00000000-0000-4000-8000-000060000001","judge":"00000000-0000-4000-8000-000000000002","movement":"wall-throw","numbers":{"ballMass":6,"ballRadius":0.17,"boxDepth":0.5,"boxHeight":0.6,"boxWidth":0.75,"creepAllowance":5,"handsAllowance":30,"lineHeight":3,"tallAllowance":15,"tallAsked":true,"targetWidth":0.4,"togetherAllowance":60,"tolerance":{}},"practice":false,"seed":9,"sheet":{"id":"lunge","version":1},"task":{"fault":"depth","kind":"line","leastTrials":20,"mostTrials":60,"narrow":1,"place":{"bearing":90,"distance":2.6,"height":0.6,"name":"advised"}},"variation":1}', 532691426);
INSERT INTO drill_events (n, drill_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (1, 1, 'pad-d', 1, 1000, 'begin', '{"wallClock":200100}', 3402123209, 1760000000000);
INSERT INTO drill_events (n, drill_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (2, 1, 'pad-d', 2, 2000, 'rep', '{"dueMs":710,"durationMs":2700,"margins":{"aim":16,"bounce":null,"depth":-3.002,"line":16.3,"stand":7.4},"place":{"bearing":90,"distance":2.6,"height":0.6,"name":"advised"},"seenMs":1740,"specification":{"athlete":{"build":"medium","stature":1.7},"cadence":24,"fatigue":0,"first":true,"margins":{"depth":-3},"seed":5,"styleSeed":5,"variation":1},"trial":0}', 3108523825, 1760000000000);
INSERT INTO drill_events (n, drill_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (3, 1, 'pad-d', 3, 3000, 'call', '{"afterMs":1300,"faults":["depth"],"place":null,"trial":0,"verdict":"no-rep"}', 645463607, 1760000000000);
INSERT INTO nights (n, id, date, created_at, body, crc) VALUES (1, '00000000-0000-4000-8000-000070000001', '2026-09-07', 300000, '{"createdAt":300000,"date":"2026-09-07","id":"00000000-0000-4000-8000-000070000001","name":"First night"}', 3841689423);
INSERT INTO night_events (n, night_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (1, 1, 'desk', 1, 300001, 'presence', '{"person":"00000000-0000-4000-8000-000000000001","state":"arrived"}', 4144845921, 1760000000000);
INSERT INTO night_events (n, night_n, pad, seq, at, kind, body, crc, recorded_at) VALUES (2, 1, 'desk', 2, 300002, 'set', '{"heat":1,"lane":"1","role":"main","set":"00000000-0000-4000-8000-000050000001"}', 3057861618, 1760000000000);
INSERT INTO night_sets (set_n, night_n, heat, lane, role) VALUES (1, 1, 1, '1', 'main');
CREATE INDEX nights_by_date ON nights (date, n);
CREATE INDEX night_events_of_night ON night_events (night_n, n);
CREATE INDEX night_sets_of_night ON night_sets (night_n, heat, lane);
CREATE INDEX drills_by_time ON drills (created_at, n);
CREATE INDEX drills_by_judge ON drills (judge, sheet_id, created_at, n);
CREATE INDEX drill_events_of_drill ON drill_events (drill_n, n);
CREATE INDEX events_of_set ON events (set_n, n);
CREATE INDEX set_facts_by_time ON set_facts (happened_at, set_n);
CREATE INDEX set_facts_by_athlete ON set_facts (athlete, happened_at, set_n);
CREATE INDEX set_facts_by_judge ON set_facts (judge, happened_at, set_n);
CREATE INDEX set_facts_by_sheet ON set_facts (sheet_id, happened_at, set_n);
CREATE INDEX set_facts_not_ended ON set_facts (phase, set_n) WHERE phase IN ('ready', 'running');
CREATE INDEX set_facts_lagging ON set_facts (last_n) WHERE applied_n < last_n;
CREATE INDEX set_facts_by_projection ON set_facts (projection);
CREATE TRIGGER people_kept BEFORE DELETE ON people
     BEGIN SELECT RAISE(ABORT, 'a person is archived, never deleted'); END;
CREATE TRIGGER people_same BEFORE UPDATE OF n, id, created_at ON people
     BEGIN SELECT RAISE(ABORT, 'the identity of a person never changes'); END;
CREATE TRIGGER sheets_stay BEFORE UPDATE ON sheets
   BEGIN SELECT RAISE(ABORT, 'a version of a standard sheet never changes; what comes later is added'); END;
CREATE TRIGGER sheets_kept BEFORE DELETE ON sheets
   BEGIN SELECT RAISE(ABORT, 'a version of a standard sheet is never deleted'); END;
CREATE TRIGGER sets_stay BEFORE UPDATE ON sets
   BEGIN SELECT RAISE(ABORT, 'the setup of a set never changes; what comes later is added'); END;
CREATE TRIGGER sets_kept BEFORE DELETE ON sets
   BEGIN SELECT RAISE(ABORT, 'the setup of a set is never deleted'); END;
CREATE TRIGGER set_tags_stay BEFORE UPDATE ON set_tags
   BEGIN SELECT RAISE(ABORT, 'a tag of a set never changes; what comes later is added'); END;
CREATE TRIGGER set_tags_kept BEFORE DELETE ON set_tags
   BEGIN SELECT RAISE(ABORT, 'a tag of a set is never deleted'); END;
CREATE TRIGGER events_stay BEFORE UPDATE ON events
   BEGIN SELECT RAISE(ABORT, 'an event of a log never changes; what comes later is added'); END;
CREATE TRIGGER events_kept BEFORE DELETE ON events
   BEGIN SELECT RAISE(ABORT, 'an event of a log is never deleted'); END;
CREATE TRIGGER drills_stay BEFORE UPDATE ON drills
   BEGIN SELECT RAISE(ABORT, 'a drill never changes; what comes later is added'); END;
CREATE TRIGGER drills_kept BEFORE DELETE ON drills
   BEGIN SELECT RAISE(ABORT, 'a drill is never deleted'); END;
CREATE TRIGGER drill_events_stay BEFORE UPDATE ON drill_events
   BEGIN SELECT RAISE(ABORT, 'an event of a drill never changes; what comes later is added'); END;
CREATE TRIGGER drill_events_kept BEFORE DELETE ON drill_events
   BEGIN SELECT RAISE(ABORT, 'an event of a drill is never deleted'); END;
CREATE TRIGGER nights_stay BEFORE UPDATE ON nights
   BEGIN SELECT RAISE(ABORT, 'a night never changes; what comes later is added'); END;
CREATE TRIGGER nights_kept BEFORE DELETE ON nights
   BEGIN SELECT RAISE(ABORT, 'a night is never deleted'); END;
CREATE TRIGGER night_events_stay BEFORE UPDATE ON night_events
   BEGIN SELECT RAISE(ABORT, 'an event of a night never changes; what comes later is added'); END;
CREATE TRIGGER night_events_kept BEFORE DELETE ON night_events
   BEGIN SELECT RAISE(ABORT, 'an event of a night is never deleted'); END;
CREATE TRIGGER night_sets_stay BEFORE UPDATE ON night_sets
   BEGIN SELECT RAISE(ABORT, 'the place of a set in a night never changes; what comes later is added'); END;
CREATE TRIGGER night_sets_kept BEFORE DELETE ON night_sets
   BEGIN SELECT RAISE(ABORT, 'the place of a set in a night is never deleted'); END;
COMMIT;
