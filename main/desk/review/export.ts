import Papa from 'papaparse';
import { z } from 'zod';
import { estimate } from '../../../shared-types/contract/reports.ts';
import type { ReviewExport } from '../../../shared-types/contract/review.ts';

type Cell = string | number;
type Row = [part: string, item: string, figure: string, value: Cell, low: Cell, high: Cell];

const figureShape = estimate.strict();
const fields = ['part', 'item', 'figure', 'value', 'low', 'high'];

/** The figures of a view as a file. `exportedAt`: milliseconds since 1970 UTC. */
export function exportText(asked: ReviewExport, figures: object, exportedAt: number) {
  const day = new Date(exportedAt).toISOString().slice(0, 10);
  const name = `review-${asked.of.view}-${day}`;
  if (asked.format === 'json') {
    const body = { format: 'plumbline-review', formatVersion: 1, exportedAt, of: asked.of, figures };
    return { fileName: `${name}.json`, mediaType: 'application/json', text: `${JSON.stringify(body, null, 2)}\n` };
  }
  return { fileName: `${name}.csv`, mediaType: 'text/csv', text: figuresCsv(figures) };
}

/**
 * One row a figure, RFC 4180: the part of the view, the item in it (an id or code, else a number from 1), the figure's name,
 * its value and, where it has one, its interval. What cannot be told is left empty. Formulas are defused (OWASP, "CSV
 * Injection").
 */
function figuresCsv(figures: object): string {
  const data = Object.entries(figures).flatMap(([part, value]) => rowsOf(part, '', [], value));
  return `${Papa.unparse({ fields, data }, { newline: '\r\n', escapeFormulae: true })}\r\n`;
}

function rowsOf(part: string, item: string, path: readonly string[], value: unknown): Row[] {
  const figure = path.join('.');
  if (value === null || value === undefined) return [[part, item, figure, '', '', '']];
  const interval = figureShape.safeParse(value);
  if (interval.success) {
    const { value: middle, low, high } = interval.data;
    return [[part, item, figure, middle, low, high]];
  }
  if (Array.isArray(value)) {
    if (value.every((entry) => entry === null || typeof entry !== 'object')) {
      return [[part, item, figure, value.map((entry) => entry ?? '').join(' '), '', '']];
    }
    return value.flatMap((entry, index) => {
      const own = nameOf(entry) ?? String(index + 1);
      return rowsOf(part, item === '' ? own : `${item}/${own}`, path, entry);
    });
  }
  if (typeof value === 'object') {
    return Object.entries(value).flatMap(([key, inner]) => rowsOf(part, item, [...path, key], inner));
  }
  const cell = typeof value === 'number' || typeof value === 'string' ? value : value === true ? 'yes' : 'no';
  return [[part, item, figure, cell, '', '']];
}

const id = z.object({ id: z.string() });
const code = z.object({ sheet: z.string(), code: z.string() });

function nameOf(entry: unknown): string | undefined {
  const named = id.safeParse(entry);
  if (named.success) return named.data.id;
  const fault = code.safeParse(entry);
  return fault.success ? `${fault.data.sheet}/${fault.data.code}` : undefined;
}
