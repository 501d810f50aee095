import Papa from 'papaparse';
import { setsJson } from '../exports/json.ts';
import { readRecord } from '../record.ts';
import { type NightLedger, readJudgedNight } from './lanes.ts';
import { resultsOf } from './results.ts';

export interface NightFile {
  readonly fileName: string;
  readonly mediaType: string;
  readonly text: string;
}

/** A night as a file's text. `json` holds the night, its log and, under `sets`, the file of its sets as that is elsewhere. */
export function exportNight(
  ledger: NightLedger,
  id: string,
  format: 'results-csv' | 'calls-csv' | 'json',
  now: number,
): NightFile {
  const { date } = ledger.nights.get(id);
  if (format === 'results-csv') {
    return { fileName: `results-${date}.csv`, mediaType: 'text/csv', text: resultsCsv(ledger, id) };
  }
  if (format === 'calls-csv') {
    return { fileName: `calls-${date}.csv`, mediaType: 'text/csv', text: callsCsv(ledger, id) };
  }
  return { fileName: `night-${date}.json`, mediaType: 'application/json', text: nightJson(ledger, id, now) };
}

function resultsCsv(ledger: NightLedger, id: string): string {
  const rows = resultsOf(ledger, readJudgedNight(ledger, id)).flatMap(({ station, lines }) =>
    lines.map((line) => ({
      station: station.name,
      place: line.place ?? '',
      tied: line.tied ? 'yes' : 'no',
      athlete: line.athlete.name,
      state: line.state,
      heat: line.heat ?? '',
      lane: line.lane ?? '',
      clock_s: (line.clockMs / 1_000).toFixed(3),
      result_s: (line.resultMs / 1_000).toFixed(3),
      counted: line.counted,
      metres: line.metres,
      no_reps: line.noReps,
      cost_s: line.costS === null ? '' : line.costS.toFixed(2),
    })),
  );
  const fields = 'station place tied athlete state heat lane clock_s result_s counted metres no_reps cost_s'.split(' ');
  return csv(fields, rows);
}

/** A row an attempt of a lane with two judges; empty cells where one of them did not call. */
function callsCsv(ledger: NightLedger, id: string): string {
  const { lanes, who } = readJudgedNight(ledger, id);
  const rows = lanes.flatMap(({ heat, place, sheet, attempts }) =>
    attempts.map(({ first, second }, index) => ({
      heat,
      lane: place.lane,
      station: sheet.station,
      athlete: who(place.athlete).name,
      attempt: index + 1,
      judge: who(place.judge).name,
      at_s: first === null ? '' : (first.at / 1_000).toFixed(3),
      verdict: first?.verdict ?? '',
      faults: first?.faults.join(' ') ?? '',
      shadow: place.shadow === null ? '' : who(place.shadow).name,
      shadow_at_s: second === null ? '' : (second.at / 1_000).toFixed(3),
      shadow_verdict: second?.verdict ?? '',
      shadow_faults: second?.faults.join(' ') ?? '',
    })),
  );
  const fields =
    'heat lane station athlete attempt judge at_s verdict faults shadow shadow_at_s shadow_verdict shadow_faults'.split(
      ' ',
    );
  return csv(fields, rows);
}

/** RFC 4180; a cell that a spreadsheet would take for a formula begins with an apostrophe. */
function csv(fields: string[], data: readonly object[]): string {
  return `${Papa.unparse({ fields, data: [...data] }, { newline: '\r\n', escapeFormulae: true })}\r\n`;
}

function nightJson(ledger: NightLedger, id: string, now: number): string {
  const { lanes } = readJudgedNight(ledger, id);
  const ids = lanes.flatMap(({ place }) => [place.set, place.shadowSet]).filter((set) => set !== null);
  const sets: unknown = JSON.parse(
    setsJson(
      ids.map((set) => readRecord(ledger, set)),
      now,
    ),
  );
  const file = {
    format: 'plumbline-night',
    formatVersion: 1,
    night: ledger.nights.get(id),
    events: ledger.nights.events(id),
    sets,
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}
