import { type SetsFile, setsFileSchema } from '../../../shared-types/contract/exchange.ts';
import type { SetRecord } from '../../../shared-types/contract/sets.ts';

/** The file of these sets: each person and sheet version once, the set-ups and the whole logs. */
function setsFileOf(records: readonly SetRecord[], exportedAt: number): SetsFile {
  const people = new Map(records.flatMap(({ athlete, judge }) => [athlete, judge]).map((who) => [who.id, who]));
  const sheets = new Map(records.map(({ sheet }) => [`${sheet.id} ${sheet.version}`, sheet]));
  return {
    format: 'plumbline-sets',
    formatVersion: 1,
    exportedAt,
    people: [...people.values()],
    sheets: [...sheets.values()],
    sets: records.map(({ setup, events }) => ({ setup, events })),
  };
}

export function setsJson(records: readonly SetRecord[], exportedAt: number): string {
  return `${JSON.stringify(setsFileOf(records, exportedAt), null, 2)}\n`;
}

export function setsJsonSchema(): string {
  return `${JSON.stringify(setsFileSchema(), null, 2)}\n`;
}
