import { ORPCError } from '@orpc/server';
import Papa from 'papaparse';
import { type DrillsFile, drillsFileSchema } from '../../../shared-types/contract/drills/exchange.ts';
import type { DrillFilter as AskedFilter, DrillRecord } from '../../../shared-types/contract/drills.ts';
import { toleranceOf } from '../../../shared-types/drills/range.ts';
import type { FaultCode } from '../../../shared-types/motion/specification.ts';
import type { JudgedTrial } from '../../analysis/drills/outcomes.ts';
import { allDrills } from './history.ts';
import { asFilter } from './lines.ts';
import { type DrillLedger, judgedRecord, readDrill } from './record.ts';

/** Drills that one export may hold; more is asked for in narrower filters. */
const MOST_EXPORTED = 2_000;

export interface AskedExport {
  readonly filter: AskedFilter;
  readonly ids?: string[] | undefined;
  readonly format: 'csv' | 'json' | 'json-schema';
}

/** Drills as a file's text. `now`: milliseconds since 1970 UTC. Errors: `unknown-drill`, NOT_ALLOWED for too many. */
export function drillsExport(ledger: DrillLedger, { filter, ids, format }: AskedExport, now: number) {
  const day = new Date(now).toISOString().slice(0, 10);
  if (format === 'json-schema') {
    const text = `${JSON.stringify(drillsFileSchema(), null, 2)}\n`;
    return { fileName: 'drills.schema.json', mediaType: 'application/schema+json', text };
  }
  const wanted = ids ?? allDrills(ledger, asFilter(filter)).map((drill) => drill.id);
  if (wanted.length > MOST_EXPORTED) {
    const message = `${wanted.length} drills are more than one file holds (${MOST_EXPORTED}). Narrow the filter, by dates for example, and export in parts.`;
    throw new ORPCError('NOT_ALLOWED', { status: 403, message, data: { what: 'export' } });
  }
  const records = wanted.map((id) => readDrill(ledger, id));
  return format === 'csv'
    ? { fileName: `drill-reps-${day}.csv`, mediaType: 'text/csv', text: repsCsv(records) }
    : { fileName: `drills-${day}.json`, mediaType: 'application/json', text: drillsJson(records, now) };
}

function drillsJson(records: readonly DrillRecord[], exportedAt: number): string {
  const people = new Map(records.map(({ judge }) => [judge.id, judge]));
  const sheets = new Map(records.map(({ sheet }) => [`${sheet.id} ${sheet.version}`, sheet]));
  const file: DrillsFile = {
    format: 'plumbline-drills',
    formatVersion: 1,
    exportedAt,
    people: [...people.values()],
    sheets: [...sheets.values()],
    drills: records.map(({ drill, events }) => ({ drill, events })),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

const COLUMNS = [
  'drill',
  'created_at',
  'judge',
  'station',
  'sheet',
  'sheet_version',
  'kind',
  'practice',
  'rep',
  'place',
  'true_faults',
  'margins',
  'verdict',
  'faults',
  'outcome',
  'reaction_s',
] as const;

/**
 * One row a rep, as RFC 4180 text; cells that a spreadsheet would take for a formula begin with an apostrophe (OWASP, "CSV
 * Injection"). `margins`: `fault=value` from the sheet's tolerance, in the fault's unit.
 */
function repsCsv(records: readonly DrillRecord[]): string {
  const data = records.flatMap((record) => judgedRecord(record).trials.map((one) => repRow(record, one)));
  return `${Papa.unparse({ fields: [...COLUMNS], data }, { newline: '\r\n', escapeFormulae: true })}\r\n`;
}

function repRow({ drill, sheet, judge }: DrillRecord, one: JudgedTrial): (string | number)[] {
  const margins = (Object.entries(one.trial.margins) as [FaultCode, number | null][]).flatMap(([code, margin]) =>
    margin === null ? [] : [`${code}=${(margin + toleranceOf(drill, code)).toFixed(2)}`],
  );
  return [
    drill.id,
    new Date(drill.createdAt).toISOString(),
    judge.name,
    sheet.station,
    sheet.id,
    sheet.version,
    drill.task.kind,
    drill.practice ? 'yes' : 'no',
    one.trial.trial + 1,
    one.place,
    one.trial.broken.join(' '),
    margins.join(' '),
    one.call?.verdict ?? '',
    one.call?.faults.join(' ') ?? '',
    one.outcome,
    one.reaction === null ? '' : (one.reaction / 1_000).toFixed(3),
  ];
}
