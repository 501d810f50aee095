// `npm run simulate`: proves the sums on invented sets whose truth is known, and prints the tables; `-- --write` also puts
// them into the READMEs beside the sums; `-- 200` takes 200 sets a line instead of 2,000, for a quick look; `-- cost`,
// `-- forecast` or `-- drills` makes the one table only (of drills half as many runs a line).

import path from 'node:path';
import { GOAL_SCENARIOS, type ProofLine, proveCost, RATES, SCENARIOS, SHORT_SCENARIOS } from './cost-proof.ts';
import { drillTables } from './drills.ts';
import { FORECAST_CASES, proveForecast } from './forecast-proof.ts';
import { markdownTable, percent, writeBetweenMarkers } from './table.ts';

const analysis = path.join(import.meta.dirname, '../../main/analysis');
const given = process.argv.slice(2);
const sets = Number(given.find((word) => /^\d+$/.test(word)) ?? 2_000);
const SEED = 1_000_000;

function costRow(line: ProofLine): string[] {
  return [
    line.scenario,
    percent(line.rate, 0),
    percent(line.realRate),
    line.meanTruth.toFixed(1),
    `${percent(line.bias, 2)} ± ${(100 * line.biasError).toFixed(2)}`,
    percent(line.coverage),
    percent(line.runCoverage),
    line.width.toFixed(2),
  ];
}

function costTable(): string {
  const rows: string[][] = [];
  for (const scenario of [...SCENARIOS, ...SHORT_SCENARIOS, ...GOAL_SCENARIOS]) {
    for (const rate of RATES) {
      const row = costRow(proveCost(scenario, rate, sets, SEED));
      console.error(row.join('  '));
      rows.push(row);
    }
  }
  const head = ['sets', 'asked', 'no-reps', 'true cost s', 'bias ± s.e.', 'covered', 'runs covered', 'width s'];
  return markdownTable(head, rows);
}

function forecastTable(): string {
  const rows = FORECAST_CASES.map((one) => {
    const line = proveForecast(one, Math.ceil(sets / 2), SEED);
    return [
      one.name,
      percent(one.rate, 0),
      percent(line.noRepsCovered),
      percent(line.secondsCovered),
      line.meanSeconds.toFixed(1),
      line.width.toFixed(1),
      String(line.withoutSeconds),
    ];
  });
  const head = [
    'earlier sets',
    'no-reps',
    'no-reps covered',
    'seconds covered',
    'true cost s',
    'width s',
    'no seconds',
  ];
  return markdownTable(head, rows);
}

const tables = [
  { name: 'cost', file: path.join(analysis, 'cost/README.md'), make: costTable },
  { name: 'forecast', file: path.join(analysis, 'forecast/README.md'), make: forecastTable },
  { name: 'drills', file: path.join(analysis, 'drills/README.md'), make: () => drillTables(Math.ceil(sets / 2)) },
];
const chosen = tables.filter(({ name }) => given.includes(name));
for (const { name, file, make } of chosen.length > 0 ? chosen : tables) {
  const text = make();
  console.log(`\n${name}\n\n${text}`);
  if (given.includes('--write')) writeBetweenMarkers(file, `${name}-proof`, text);
}
