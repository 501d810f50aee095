import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { attemptsCsv } from '../../main/desk/exports/csv.ts';
import { setsJson, setsJsonSchema } from '../../main/desk/exports/json.ts';
import { setsFile } from '../../shared-types/contract/exchange.ts';
import { calls, logOf, recordOf, setupOf, somebody } from './fixtures.ts';

const setup = setupOf();
const record = recordOf(
  setup,
  logOf(setup, [...calls('.D.!'), { kind: 'slip', at: 9_000, of: { pad: 'pad-a', seq: 4 } }]),
);

describe('the attempts as CSV', () => {
  // RFC 4180 (Shafranovich 2005): section 2, rules 1 to 7: CRLF lines, header, quotes doubled inside quotes.
  test('is RFC 4180 text with a header, CRLF and a row an attempt, the withdrawn one marked', () => {
    const text = attemptsCsv([record]);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const rows = Papa.parse<Record<string, string>>(text.trimEnd(), { header: true }).data;
    expect(rows.map((row) => [row.attempt, row.verdict, row.faults, row.withdrawn])).toEqual([
      ['1', 'counted', '', 'no'],
      ['2', 'no-rep', 'depth', 'no'],
      ['', 'counted', '', 'yes'],
      ['3', 'caution', '', 'no'],
    ]);
    expect(rows[0]?.at_s).toBe('2.000');
  });

  test('doubles quotes and keeps commas and line breaks inside quotes', () => {
    const hostile = { ...record, athlete: somebody(3, 'A "quick", brown\r\nfox') };
    expect(attemptsCsv([hostile])).toContain('"A ""quick"", brown\r\nfox"');
  });

  // OWASP, "CSV Injection": cells that begin with = + - @ tab or carriage return are made harmless.
  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx'])('makes the formula %j harmless', (name) => {
    const text = attemptsCsv([{ ...record, athlete: somebody(3, name) }]);
    const cell = Papa.parse<Record<string, string>>(text.trimEnd(), { header: true }).data[0]?.athlete;
    expect(cell?.startsWith("'")).toBe(true);
  });
});

describe('the sets as JSON', () => {
  test('reads back as the same logs', () => {
    const file = setsFile.parse(JSON.parse(setsJson([record, record], 5)));
    expect(file.sets[0]).toEqual({ setup: record.setup, events: record.events });
    expect(file.people).toHaveLength(2);
    expect(file.sheets).toHaveLength(1);
  });

  test('has a JSON Schema that names its fields', () => {
    const schema = JSON.parse(setsJsonSchema()) as { $schema: string; required: string[] };
    expect(schema.$schema).toContain('2020-12');
    expect(schema.required).toEqual(['format', 'formatVersion', 'exportedAt', 'people', 'sheets', 'sets']);
  });
});
