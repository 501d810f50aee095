import Papa from 'papaparse';
import type { SetRecord } from '../../../shared-types/contract/sets.ts';
import { foldSet } from '../../../shared-types/log/fold.ts';

const columns = [
  'set',
  'started_at',
  'athlete',
  'judge',
  'station',
  'sheet',
  'sheet_version',
  'goal',
  'load_kg',
  'height_m',
  'before',
  'tags',
  'practice',
  'attempt',
  'at_s',
  'verdict',
  'faults',
  'first_verdict',
  'first_faults',
  'withdrawn',
] as const;

/**
 * One row an attempt, withdrawn ones too, as RFC 4180 text (comma, CRLF, quotes doubled, a header line). A cell that a
 * spreadsheet would take for a formula begins with an apostrophe (OWASP, "CSV Injection"). `at_s` in seconds since go.
 */
export function attemptsCsv(records: readonly SetRecord[]): string {
  const rows = records.flatMap(attemptRows);
  return `${Papa.unparse({ fields: [...columns], data: rows }, { newline: '\r\n', escapeFormulae: true })}\r\n`;
}

function attemptRows(record: SetRecord): (string | number)[][] {
  const { setup, sheet } = record;
  const state = foldSet(setup.id, record.events);
  const head = [
    setup.id,
    state.startedAt === null ? '' : new Date(state.startedAt).toISOString(),
    record.athlete.name,
    record.judge.name,
    sheet.station,
    sheet.id,
    sheet.version,
    goalText(setup.goal),
    setup.loadKg ?? '',
    setup.heightM ?? '',
    setup.before,
    setup.tags.join(' | '),
    setup.practice ? 'yes' : 'no',
  ];
  let number = 0;
  return state.attempts.map((attempt) => [
    ...head,
    attempt.withdrawn ? '' : ++number,
    (attempt.at / 1_000).toFixed(3),
    attempt.verdict,
    attempt.faults.join(' '),
    attempt.first.verdict,
    attempt.first.faults.join(' '),
    attempt.withdrawn ? 'yes' : 'no',
  ]);
}

function goalText(goal: SetRecord['setup']['goal']): string {
  switch (goal.kind) {
    case 'reps':
      return `${goal.reps} reps`;
    case 'metres':
      return `${goal.metres} m`;
    case 'clock':
      return `${goal.milliseconds / 1_000} s`;
    case 'open':
      return 'open';
  }
}
