import { readFileSync, writeFileSync } from 'node:fs';

/** A Markdown table; the first column is text, the others figures. */
export function markdownTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map((_, i) => (i === 0 ? '---' : '--:'))), ...rows.map(line)].join('\n');
}

/** Puts text between `<!-- name:begin -->` and `<!-- name:end -->` of a file. Throws where the markers are missing. */
export function writeBetweenMarkers(file: string, name: string, text: string): void {
  const [begin, end] = [`<!-- ${name}:begin -->`, `<!-- ${name}:end -->`];
  const old = readFileSync(file, 'utf8');
  const from = old.indexOf(begin);
  const to = old.indexOf(end);
  if (from < 0 || to < from) throw new Error(`${file} has no markers named ${name}`);
  writeFileSync(file, `${old.slice(0, from + begin.length)}\n${text}\n${old.slice(to)}`);
}

export function percent(share: number, digits = 1): string {
  return `${(100 * share).toFixed(digits)} %`;
}
