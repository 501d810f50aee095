import { readFileSync, writeFileSync } from 'node:fs';
import { allComparisons, type Comparison } from './compare-published.ts';
import { unanswered, unansweredFigures } from './our-values.ts';
import { publishedEntries } from './published-entry.ts';
import { compareWithR, type RDifference, rComparisons } from './r-comparison.ts';
import { startR } from './r-session.ts';

const document = new URL('../../main/analysis/README.md', import.meta.url);
const USAGE = `Prints our figures next to published ones and next to R.
  --write   also put the tables into main/analysis/README.md
  --figures print every single figure`;

const rounded = (value: number) => Number(value.toPrecision(8)).toString();
const powerOfTen = (value: number) => (value === 0 ? '0' : value.toExponential(0));

/** Largest of the differences, in units of what is allowed; a value above 1 is a miss. */
const share = ({ ours, reference, allowed }: Comparison) => Math.abs(ours - reference) / allowed;
const missed = (comparison: Comparison) => !(share(comparison) <= 1);
const relative = ({ ours, reference }: Comparison) => Math.abs(ours - reference) / Math.max(1e-3, Math.abs(reference));

function publishedTable(comparisons: readonly Comparison[]): string[] {
  const lines = [
    '| check | source | where | how the print was come by | figures | largest difference from the print (1 = half a unit of its last digit, or the stated tolerance) | largest relative difference from R |',
    '| --- | --- | --- | --- | --- | --- | --- |',
  ];
  for (const entry of publishedEntries) {
    const own = comparisons.filter((comparison) => comparison.entry === entry);
    if (own.length === 0) continue;
    const printed = own.filter(({ against }) => against === 'printed');
    const inR = own.filter(({ against }) => against === 'R');
    const digits = printed.length > 0 ? Math.max(...printed.map(share)).toFixed(2) : 'none printed';
    const fromR = inR.length > 0 ? powerOfTen(Math.max(...inR.map(relative))) : 'not given';
    const cells = [
      entry.id,
      entry.source,
      entry.page_or_table,
      entry.published_status,
      String(own.length),
      digits,
      fromR,
    ];
    lines.push(`| ${cells.map((cell) => cell.replaceAll('|', '/')).join(' | ')} |`);
  }
  return lines;
}

function rTable(differences: readonly RDifference[]): string[] {
  const lines = [
    '| method | next to | random cases | figures | largest relative difference | allowed |',
    '| --- | --- | --- | --- | --- | --- |',
  ];
  for (const { method, reference, cases, figures, largest, allowed } of differences) {
    lines.push(`| ${[method, reference, cases, figures, powerOfTen(largest), powerOfTen(allowed)].join(' | ')} |`);
  }
  return lines;
}

function notAnswered(): string[] {
  const whole = Object.entries(unanswered).map(([id, reason]) => `- \`${id}\`: ${reason}.`);
  const single = Object.entries(unansweredFigures).map(([figure, reason]) => `- \`${figure}\`: ${reason}.`);
  return [...whole, ...single];
}

/** Puts lines between the two comments that mark their place in the document. */
function replaceBetween(text: string, name: string, lines: readonly string[]): string {
  const [begin, end] = [`<!-- ${name}: written by check-values -->`, `<!-- end of ${name} -->`];
  const [start, stop] = [text.indexOf(begin), text.indexOf(end)];
  if (start < 0 || stop < start) throw new Error(`The document has no place marked "${name}".`);
  return `${text.slice(0, start + begin.length)}\n\n${lines.join('\n')}\n\n${text.slice(stop)}`;
}

async function main(): Promise<number> {
  const flags = process.argv.slice(2);
  if (flags.some((flag) => flag !== '--write' && flag !== '--figures')) {
    console.error(USAGE);
    return 2;
  }
  const comparisons = allComparisons();
  if (flags.includes('--figures')) {
    for (const { entry, figure, against, reference, ours, allowed } of comparisons) {
      const cells = [
        entry.id,
        figure,
        against,
        rounded(reference),
        rounded(ours),
        powerOfTen(ours - reference),
        powerOfTen(allowed),
      ];
      console.log(cells.join('  '));
    }
  }
  const r = await startR();
  const differences: RDifference[] = [];
  try {
    for (const comparison of rComparisons) differences.push(await compareWithR(r, comparison));
  } finally {
    r.close();
  }
  const tables = {
    'published examples': publishedTable(comparisons),
    'next to R': rTable(differences),
    'not compared': notAnswered(),
  };
  for (const lines of Object.values(tables)) console.log(`${lines.join('\n')}\n`);
  if (flags.includes('--write')) {
    let text = readFileSync(document, 'utf8');
    for (const [name, lines] of Object.entries(tables)) text = replaceBetween(text, name, lines);
    writeFileSync(document, text);
    console.log('Written to main/analysis/README.md.');
  }
  const misses = [
    ...comparisons
      .filter(missed)
      .map(({ entry, figure, reference, ours }) => `${entry.id} ${figure}: ${reference}, ours ${ours}`),
    ...differences
      .filter(({ largest, allowed }) => !(largest <= allowed))
      .map(({ method, worst }) => `${method}: ${worst}`),
  ];
  for (const miss of misses) console.error(`MISSED  ${miss}`);
  console.log(
    `${comparisons.length} figures of published examples, ${differences.length} methods next to R, ${misses.length} missed.`,
  );
  return misses.length > 0 ? 1 : 0;
}

process.exitCode = await main();
